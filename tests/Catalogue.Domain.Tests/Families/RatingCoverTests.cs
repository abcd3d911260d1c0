using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Quantities;
using CsCheck;

namespace Catalogue.Domain.Tests.Families;

public sealed class RatingCoverTests
{
    private static readonly CoverDirection[] Directions = [CoverDirection.AtLeast, CoverDirection.AtMost, CoverDirection.Within];

    // Few whole values, so that equal ends, lying within and tolerances on one side only all come up.
    private static readonly Gen<StatedRating> GenRating = Gen.Select(Gen.Int[1, 6], Gen.Int[0, 2], Gen.Int[0, 2])
        .Select((nominal, below, above) => new StatedRating(RatingKind.RatedVoltage, Interval.Create(nominal * 10 - below, nominal * 10, nominal * 10 + above)));

    private static readonly Gen<CoverDirection> GenDirection = Gen.Int[0, 2].Select(i => Directions[i]);

    public static TheoryData<RatingKind, FunctionClass, string, string, RatingCoverKind> WorkedExamples => new()
    {
        // At least: a higher voltage, the same current; the low end counts.
        { RatingKind.RatedVoltage, FunctionClass.Switch, "600", "650", RatingCoverKind.Covers },
        { RatingKind.RatedVoltage, FunctionClass.Switch, "650", "600", RatingCoverKind.FallsShort },
        { RatingKind.RatedCurrent, FunctionClass.Switch, "30", "30", RatingCoverKind.Covers },
        { RatingKind.CellCapacity, FunctionClass.Cell, "4.9 5 5", "4.8 5 5", RatingCoverKind.FallsShort },
        { RatingKind.RatedPower, FunctionClass.Resistor, "1", "2", RatingCoverKind.Covers },
        // At most: the high end counts.
        { RatingKind.OnResistance, FunctionClass.Switch, "0.08", "0.074", RatingCoverKind.Covers },
        { RatingKind.OnResistance, FunctionClass.Switch, "0.08", "0.06 0.074 0.082", RatingCoverKind.FallsShort },
        { RatingKind.ForwardVoltage, FunctionClass.Rectifier, "0.55", "0.6", RatingCoverKind.FallsShort },
        { RatingKind.ThermalResistance, FunctionClass.Regulator, "40", "35", RatingCoverKind.Covers },
        { RatingKind.Resistance, FunctionClass.Inductor, "0.02", "0.015", RatingCoverKind.Covers },
        // Within: a tolerance inside the other's, or the same value.
        { RatingKind.Capacitance, FunctionClass.CeramicCapacitor, "80e-6 100e-6 120e-6", "90e-6 100e-6 110e-6", RatingCoverKind.Covers },
        { RatingKind.Capacitance, FunctionClass.CeramicCapacitor, "90e-6 100e-6 110e-6", "80e-6 100e-6 120e-6", RatingCoverKind.FallsShort },
        { RatingKind.Capacitance, FunctionClass.CeramicCapacitor, "100e-6", "80e-6 100e-6 120e-6", RatingCoverKind.NotKnown },
        { RatingKind.Capacitance, FunctionClass.CeramicCapacitor, "100e-6", "120e-6", RatingCoverKind.FallsShort },
        { RatingKind.Resistance, FunctionClass.Shunt, "0.0005", "0.0005", RatingCoverKind.Covers },
        // More protects less.
        { RatingKind.RatedCurrent, FunctionClass.BladeFuse, "35", "40", RatingCoverKind.FallsShort },
        { RatingKind.RatedCurrent, FunctionClass.BladeFuse, "35", "35", RatingCoverKind.Covers },
        { RatingKind.RatedVoltage, FunctionClass.BladeFuse, "32", "58", RatingCoverKind.Covers },
        { RatingKind.RatedVoltage, FunctionClass.Varistor, "470", "560", RatingCoverKind.FallsShort },
    };

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Of_WorkedExample_IsAsWorked(RatingKind kind, FunctionClass functionClass, string needed, string offered, RatingCoverKind outcome) =>
        Assert.Equal(outcome, RatingCover.Of(kind, CoverDirections.Of(kind, functionClass), [Stated(kind, needed)], [Stated(kind, offered)]).Outcome);

    [Fact]
    public void Of_AValueThatIsNotKnown_IsNeverCovered()
    {
        Assert.Equal(("rated voltage not known", RatingCoverKind.NotKnown), Says(RatingCover.Of(RatingKind.RatedVoltage, CoverDirection.AtLeast, [Volts(650)], [])));
        Assert.Equal(("rated voltage not known of this one", RatingCoverKind.NotKnown), Says(RatingCover.Of(RatingKind.RatedVoltage, CoverDirection.AtLeast, [], [Volts(650)])));
        Assert.Equal(("rated voltage not known of either", RatingCoverKind.NotKnown), Says(RatingCover.Of(RatingKind.RatedVoltage, CoverDirection.AtLeast, [], [])));
    }

    [Fact]
    public void Of_SeveralStatements_TakesTheHighestDemandAndTheLowestGuarantee()
    {
        var cover = RatingCover.Of(RatingKind.RatedVoltage, CoverDirection.AtLeast, [Volts(600), Volts(650)], [Volts(700), Volts(640)]);
        Assert.Equal(("rated voltage: 640\u00A0V where at least 650\u00A0V is needed", RatingCoverKind.FallsShort), Says(cover));
    }

    [Fact]
    public void Of_OtherConditions_IsNotComparedAndSaysWhich()
    {
        var cover = RatingCover.Of(RatingKind.RatedVoltage, CoverDirection.AtLeast, [Volts(650, "25 °C")], [Volts(700, "100 °C")]);
        Assert.Equal(("rated voltage is stated under other conditions, 25 °C and 100 °C, and not compared", RatingCoverKind.NotKnown), Says(cover));
        Assert.Equal(RatingCoverKind.Covers, RatingCover.Of(RatingKind.RatedVoltage, CoverDirection.AtLeast, [Volts(650, " 25  °c")], [Volts(700, "25 °C"), Volts(500, "100 °C")]).Outcome);
        Assert.EndsWith("(condition not given for both)", RatingCover.Of(RatingKind.RatedVoltage, CoverDirection.AtLeast, [Volts(650, "25 °C")], [Volts(700)]).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_AKindThatIsNotCompared_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => RatingCover.Of(RatingKind.AmbientTemperature, CoverDirection.NotCompared, [], []));

    [Fact]
    public void Of_ARatingAndItself_Covers() =>
        Gen.Select(GenDirection, GenRating).Sample((direction, one) => RatingCover.Of(one.Kind, direction, [one], [one]).Outcome == RatingCoverKind.Covers);

    [Fact]
    public void Of_AChainThatCovers_CoversFromEndToEnd()
    {
        var chains = 0;
        Gen.Select(GenDirection, GenRating.List[1, 2], GenRating.List[1, 2], GenRating.List[1, 2]).Sample((direction, a, b, c) =>
        {
            if (RatingCover.Of(RatingKind.RatedVoltage, direction, a, b).Outcome != RatingCoverKind.Covers || RatingCover.Of(RatingKind.RatedVoltage, direction, b, c).Outcome != RatingCoverKind.Covers)
                return true;
            Interlocked.Increment(ref chains);
            return RatingCover.Of(RatingKind.RatedVoltage, direction, a, c).Outcome == RatingCoverKind.Covers;
        }, iter: 20_000);
        Assert.True(chains > 200, $"Only {chains} chains came up.");
    }

    [Fact]
    public void Of_TenTimesTheUnit_ChangesNothing() =>
        Gen.Select(GenDirection, GenRating, GenRating).Sample((direction, a, b) => RatingCover.Of(a.Kind, direction, [a], [b]).Outcome == RatingCover.Of(a.Kind, direction, [Scaled(a)], [Scaled(b)]).Outcome);

    [Theory]
    [InlineData(Evidence.Measured)]
    [InlineData(Evidence.Guess)]
    public void From_WhatBindsNoOtherPart_IsNoStatement(Evidence evidence) => Assert.Null(StatedRating.From(RatingKind.RatedVoltage, Interval.Exactly(650), null, evidence));

    [Fact]
    public void From_WhatOneDesignSaw_IsNoStatement() => Assert.Null(StatedRating.From(RatingKind.PeakVoltage, Interval.Exactly(650), null, Evidence.Datasheet));

    [Fact]
    public void From_AVoltageThatHoldsForAc_IsAnAcVoltage() => Assert.Equal(RatingKind.RatedVoltageAc, StatedRating.From(RatingKind.RatedVoltage, Interval.Exactly(250), "at 250 V ac", Evidence.ReadOnPart)!.Kind);

    [Fact]
    public void Choose_ATypicalRating_GoesBeforeThoseOfTeardowns() =>
        Assert.Equal([Volts(650), new StatedRating(RatingKind.RatedCurrent, Interval.Exactly(30))], StatedRating.Choose([Volts(650)], [Volts(600), new StatedRating(RatingKind.RatedCurrent, Interval.Exactly(30))]));

    [Fact]
    public void Of_EveryKindAndClass_HasADirectionWhereItDecides()
    {
        foreach (var functionClass in Enum.GetValues<FunctionClass>())
            Assert.All(CoverDirections.Deciding(functionClass), kind => Assert.NotEqual(CoverDirection.NotCompared, CoverDirections.Of(kind, functionClass)));
    }

    private static StatedRating Scaled(StatedRating rating) => rating with { Value = Interval.Create(rating.Value.Low * 10, rating.Value.Nominal * 10, rating.Value.High * 10) };

    private static StatedRating Volts(double value, string? condition = null) => new(RatingKind.RatedVoltage, Interval.Exactly(value), condition);

    private static StatedRating Stated(RatingKind kind, string cases)
    {
        var values = cases.Split(' ').Select(value => double.Parse(value, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        return new StatedRating(kind, values.Count == 1 ? Interval.Exactly(values[0]) : Interval.Create(values[0], values[1], values[2]));
    }

    private static (string Words, RatingCoverKind Outcome) Says(RatingCover cover) => (cover.Words, cover.Outcome);
}
