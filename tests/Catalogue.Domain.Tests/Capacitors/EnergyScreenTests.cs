using Catalogue.Domain.Capacitors;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Tests.Samples;
using Catalogue.Domain.Text;
using CsCheck;
using static Catalogue.Domain.Tests.Quantities.Reckoned;

namespace Catalogue.Domain.Tests.Capacitors;

public sealed class EnergyScreenTests
{
    public static TheoryData<string[]> WorkedExamples => FigureDocument.Theory("capacitors.md", "### Bands by voltage and capacitance");

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Of_WorkedExample_GivesTheDocumentedBand(string[] row)
    {
        var screen = EnergyScreen.Of(FigureDocument.Known(row[0]), FigureDocument.Known(row[1], 1e-6), row[2] == "yes");

        Assert.Equal(row[3], SnakeCase.Code(screen.Band));
        Assert.Equal(screen.Band is EnergyBand.Note, screen.TextKey is null);
        Assert.NotEmpty(screen.Reason);
    }

    [Fact]
    public void Of_MoreVoltageOrCapacitance_NeverAMilderBand() =>
        Gen.Select(Gen.Double[-1, 3], Gen.Double[-10, -1], Gen.Double[1, 10], Gen.Bool).Sample((volts, farads, more, isBattery) =>
        {
            var (v, c) = (Math.Pow(10, volts), Math.Pow(10, farads));
            var band = EnergyScreen.Of(Exactly(v), Exactly(c), isBattery).Band;
            return EnergyScreen.Of(Exactly(v * more), Exactly(c), isBattery).Band >= band
                && EnergyScreen.Of(Exactly(v), Exactly(c * more), isBattery).Band >= band
                && EnergyScreen.Of(Exactly(v), Exactly(c), true).Band >= band;
        });

    [Fact]
    public void Of_ValueTakenAway_NeverBelowWarningWhereItMatters()
    {
        Gen.Double[60.001, 1000].Sample(volts => EnergyScreen.Of(Exactly(volts), null, false).Band >= EnergyBand.Warning);
        Gen.Double[1e-12, 1].Sample(farads => EnergyScreen.Of(null, Exactly(farads), false).Band >= EnergyBand.Warning);
        Gen.Double[0, 60].Sample(volts => EnergyScreen.Of(Exactly(volts), null, false).Band >= EnergyBand.Burn);
    }

    [Fact]
    public void Of_Spread_TakesTheHighestCase() =>
        Assert.Equal(EnergyBand.Danger, EnergyScreen.Of(Interval.Create(0, 12, 400), Interval.Create(0, 1e-6, 470e-6), false).Band);

    [Theory]
    [InlineData(-400)]
    [InlineData(1e300)]
    [InlineData(-1e300)]
    public void Of_OddVoltages_AreNeverHarmless(double volts) => Assert.True(EnergyScreen.Of(Exactly(volts), Exactly(1e-4), false).Band >= EnergyBand.Warning);

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void Of_CapacitanceThatCannotBe_CountsAsNotKnown(double farads) =>
        Assert.Equal(EnergyScreen.Of(Exactly(400), null, false), EnergyScreen.Of(Exactly(400), Exactly(farads), false));
}
