using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Tests.Figures;

/// <summary>A bipolar power transistor in the rules: margins of its own, nothing that hangs on an on-resistance.</summary>
public sealed class BipolarTransistorTests
{
    [Fact]
    public void Compute_AllRatingsKnown_HasBothMarginsAndNoLoss()
    {
        var facts = Part([Bench.Rating(RatingKind.RatedVoltage, 400), Bench.Rating(RatingKind.RatedCurrent, 4), Bench.Rating(RatingKind.RmsCurrent, 1), Bench.Rating(RatingKind.OnResistance, 0.5), Bench.Rating(RatingKind.TemperatureFactor, 1.5), Bench.Rating(RatingKind.ThermalResistance, 40), Bench.Rating(RatingKind.AmbientTemperature, 50)]);
        Assert.Equal(
            [CurrentMargin.Rule, VoltageMargin.Rule],
            RevisionFigures.Compute(RevisionId.New(), facts, LineTable.Default).Where(figure => figure.ComponentId is not null).Select(figure => figure.Rule).Order());
        Assert.Equal(0.75, Bench.Computed(facts, CurrentMargin.Rule).Value.Nominal);
    }

    [Fact]
    public void Compute_VoltageMargin_IsHeldToTheRatingAloneAndNotToAMosfetsGuideline()
    {
        var figure = Bench.Computed(Part([Bench.Rating(RatingKind.RatedVoltage, 400)]), VoltageMargin.Rule);
        Assert.Equal("Line at 0.00: the rating alone; the derating practice has no guideline for it.", figure.Working.Lines[0]);
        Assert.Equal("rated collector-emitter voltage, V_CEO, of one bipolar power transistor", figure.Working.Inputs[0].Name);
    }

    [Fact]
    public void Compute_NothingRated_AsksForTheRatingsOfABipolarPart()
    {
        Assert.Equal("the bipolar power transistor's collector-emitter voltage rating, V_CEO", Bench.Unknown(Part([]), VoltageMargin.Rule).Missing[0].Words);
        Assert.Equal("the bipolar power transistor's rated collector current, I_C", Bench.Unknown(Part([]), CurrentMargin.Rule).Missing[0].Words);
    }

    private static RevisionFacts Part(IEnumerable<Rating> ratings) => Bench.Part(FunctionClass.BipolarTransistor, Bench.Rail(max: 325), ratings, CircuitPosition.Bridge);
}
