using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Figures;

namespace Catalogue.Domain.Tests.Identification;

public sealed class FigureForecastTests
{
    private static readonly KnownRating[] FortyVolts = [Known(RatingKind.RatedVoltage, 40)];

    [Fact]
    public void Of_ARatingThatAFigureLacks_MakesItComputable()
    {
        var facts = Switch([]);
        var change = Assert.Single(Of(facts, null, FortyVolts), change => change.Rule == VoltageMargin.Rule);
        Assert.Equal((Verdict.Unknown, "X1", facts.Components[0].Id), (change.From!.Value, change.Subject, change.Component!.Value));
        Assert.NotEqual(Verdict.Unknown, change.To);
        Assert.True(change.BecomesComputable);
        Assert.Null(change.ValueFrom);
        Assert.Equal(Recomputed(facts, 40), change.ValueTo);
    }

    [Fact]
    public void Of_AWorseRating_ChangesTheVerdict()
    {
        var change = Assert.Single(Of(Switch([Bench.Rating(RatingKind.RatedVoltage, 100)]), null, [Known(RatingKind.RatedVoltage, 22)]), change => change.Rule == VoltageMargin.Rule);
        Assert.True(change.To < change.From, $"{change.From} to {change.To}");
        Assert.False(change.BecomesComputable);
    }

    [Fact]
    public void Of_AClassWhereNoneWas_BringsItsFigures()
    {
        var facts = Switch([Bench.Rating(RatingKind.RatedVoltage, 40)]);
        facts.Components[0].FunctionClass = null;
        var change = Assert.Single(Of(facts, FunctionClass.Switch, []), change => change.Rule == VoltageMargin.Rule);
        Assert.Null(change.From);
        Assert.NotNull(change.To);
        Assert.Null(facts.Components[0].FunctionClass);
    }

    [Fact]
    public void Of_AClassWhereOneWas_ChangesNothing() => Assert.Empty(Of(Switch([]), FunctionClass.Rectifier, []));

    [Fact]
    public void Of_ARatingThatNoFigureTakes_ChangesNothing() => Assert.Empty(Of(Switch([Bench.Rating(RatingKind.RatedVoltage, 40)]), null, [Known(RatingKind.BreakingCurrent, 35)]));

    [Fact]
    public void Of_APartThatIsNotThere_ChangesNothing() => Assert.Empty(new FigureForecast(Switch([]), LineTable.Default).Of(ComponentId.New(), FunctionClass.Switch, FortyVolts));

    [Fact]
    public void Of_APlaceLeftEmpty_ChangesNothing()
    {
        var facts = Switch([]);
        facts.Components[0].IsFitted = false;
        Assert.Empty(Of(facts, null, FortyVolts));
    }

    private static RevisionFacts Switch(IEnumerable<Rating> ratings) => Bench.Part(FunctionClass.Switch, Bench.Rail(max: 20), ratings, CircuitPosition.AcrossRail);

    private static IReadOnlyList<FigureChange> Of(RevisionFacts facts, FunctionClass? functionClass, IReadOnlyList<KnownRating> ratings) =>
        new FigureForecast(facts, LineTable.Default).Of(facts.Components[0].Id, functionClass, ratings);

    private static Interval Recomputed(RevisionFacts facts, double volts)
    {
        var rating = Known(RatingKind.RatedVoltage, volts).Of(facts.Components[0]);
        return Bench.Computed(facts with { Ratings = [.. facts.Ratings, rating] }, VoltageMargin.Rule).Value;
    }

    private static KnownRating Known(RatingKind kind, double value) => new(kind, Interval.Exactly(value), null, Evidence.ReadOnPart, "family 808-7A");
}
