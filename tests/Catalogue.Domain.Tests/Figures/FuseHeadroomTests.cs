using System.Globalization;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Quantities;
using CsCheck;

namespace Catalogue.Domain.Tests.Figures;

public sealed class FuseHeadroomTests
{
    private static readonly FunctionClass?[] Styles = [null, FunctionClass.BladeFuse, FunctionClass.UlCartridgeFuse, FunctionClass.IecCartridgeFuse];
    private static readonly double[] OddValues = [0, -1, -1e308, double.Epsilon, 1e-300, 1e300, double.MaxValue];

    // Whatever a record can hold: each kind of fuse, one or several, warm or cold, dc or mains.
    private static readonly Gen<FuseHeadroom.Inputs> GenInputs = Gen.Select(
        Gen.Select(GenSpread(0.1, 200), Gen.Int[1, 6], GenShare(0.4), GenShare(0.4)),
        Gen.Select(GenSpread(10, 80), GenSlope(), Gen.Int[0, 3].Select(i => Styles[i])),
        Gen.Select(GenSpread(1, 3000), GenShare(0.5), GenSpread(5, 400), GenShare(0.4), Gen.Bool),
        (fuse, place, rail) => new FuseHeadroom.Inputs
        {
            RatedCurrent = fuse.Item1,
            ParallelCount = fuse.Item2,
            Sharing = fuse.Item3,
            Derating = place.Item3 is null ? null : fuse.Item4,
            FunctionClass = place.Item3,
            AmbientTemperature = place.Item1,
            TemperatureSlope = place.Item2,
            HasRail = true,
            IsMains = rail.Item5,
            MaxPower = rail.Item1,
            Efficiency = rail.Item2,
            MinVoltage = rail.Item3,
            PowerFactor = rail.Item5 ? rail.Item4 : null,
        });

    public static TheoryData<string[]> WorkedExamples
    {
        get
        {
            var rows = File.ReadAllLines(FigurePages.Find("fuse-headroom.md"))
                .SkipWhile(line => line != "## Worked examples")
                .Where(line => line.StartsWith('|'))
                .Skip(2)
                .Select(line => line.Trim('|').Split('|', StringSplitOptions.TrimEntries));
            return [.. rows];
        }
    }

    [Fact]
    public void WorkedExamples_OfTheDocument_AreTen() => Assert.Equal(10, WorkedExamples.Count);

    [Theory]
    [MemberData(nameof(WorkedExamples))]
    public void Compute_WorkedExample_GivesTheDocumentedNumbers(string[] row)
    {
        var figure = Computed(new FuseHeadroom.Inputs
        {
            RatedCurrent = Known(row[0]),
            FunctionClass = row[1] switch
            {
                "blade" => FunctionClass.BladeFuse,
                "UL" => FunctionClass.UlCartridgeFuse,
                "IEC" => FunctionClass.IecCartridgeFuse,
                _ => null,
            },
            ParallelCount = int.Parse(row[2], CultureInfo.InvariantCulture),
            Sharing = Known(row[3]),
            Derating = Known(row[4]),
            TemperatureSlope = Known(row[5]),
            AmbientTemperature = Known(row[6]),
            HasRail = true,
            MaxPower = Known(row[7]),
            Efficiency = Known(row[8]),
            MinVoltage = Known(row[9]),
            PowerFactor = Known(row[10]),
            IsMains = row[10] != "none",
        });
        Near(Number(row[11]), figure.Working.Steps.Single(step => step.Symbol == "I_allowed").Nominal);
        Near(Number(row[12]), figure.Working.Steps.Single(step => step.Symbol == "I_needed").Nominal);
        Near(Number(row[13]), figure.Value.Nominal);
        Assert.Equal((figure.Value.Nominal, figure.Value.Nominal), (figure.Value.Low, figure.Value.High));
        Assert.Equal(row[14], figure.Verdict.Word());
        Assert.Equal(Unit.Ratio, figure.Unit);
    }

    [Fact]
    public void Compute_RatingAndPowerScaledAlike_HeadroomStays() =>
        Gen.Select(GenInputs, Gen.Double[0.01, 100]).Sample((inputs, factor) =>
        {
            var scaled = inputs with { RatedCurrent = Scaled(inputs.RatedCurrent!, factor), MaxPower = Scaled(inputs.MaxPower!, factor) };
            SameOrBothUnknown(inputs, scaled, 1);
        });

    [Fact]
    public void Compute_TwiceTheRating_TwiceTheHeadroom() =>
        GenInputs.Sample(inputs => SameOrBothUnknown(inputs, inputs with { RatedCurrent = Scaled(inputs.RatedCurrent!, 2) }, 2));

    [Fact]
    public void Compute_MoreStress_NeverWidensTheMargin() =>
        Gen.Select(GenInputs, Gen.Double[1, 3], Gen.Int[0, 7]).Sample((inputs, more, which) =>
        {
            var stressed = which switch
            {
                0 => inputs with { MaxPower = Scaled(inputs.MaxPower!, more) },
                1 => inputs with { MinVoltage = Scaled(inputs.MinVoltage!, 1 / more) },
                2 => inputs with { Efficiency = Scaled(inputs.Efficiency!, 1 / more) },
                3 => inputs with { RatedCurrent = Scaled(inputs.RatedCurrent!, 1 / more) },
                4 => inputs with { Sharing = Scaled(inputs.Sharing!, 1 / more) },
                5 => inputs with { TemperatureSlope = Scaled(inputs.TemperatureSlope!, more) },
                6 => inputs with { AmbientTemperature = Scaled(inputs.AmbientTemperature!, more) },
                _ => inputs with { IsMains = true, PowerFactor = Scaled(inputs.PowerFactor ?? Exactly(1), 1 / more) },
            };
            if (FuseHeadroom.Compute(stressed, LineTable.Default) is not FigureResult.Computed after)
                return;
            var before = Computed(inputs);
            Assert.True(after.Value.Low <= before.Value.Low * (1 + 1e-12));
            Assert.True(after.Value.Nominal <= before.Value.Nominal * (1 + 1e-12));
            Assert.True(after.Value.High <= before.Value.High * (1 + 1e-12));
            Assert.True(after.Verdict <= before.Verdict, $"{before.Verdict} became {after.Verdict}");
        });

    [Fact]
    public void Compute_AnyCaseWithinTheInputs_LiesWithinTheInterval() =>
        Gen.Select(GenInputs, Gen.Double[0, 1].Array[9]).Sample((inputs, at) =>
        {
            if (FuseHeadroom.Compute(inputs, LineTable.Default) is not FigureResult.Computed whole)
                return;
            var one = Computed(inputs with
            {
                RatedCurrent = Within(inputs.RatedCurrent, at[0]),
                Sharing = Within(inputs.Sharing, at[1]),
                Derating = Within(inputs.Derating, at[2]),
                AmbientTemperature = Within(inputs.AmbientTemperature, at[3]),
                TemperatureSlope = Within(inputs.TemperatureSlope, at[4]),
                MaxPower = Within(inputs.MaxPower, at[5]),
                Efficiency = Within(inputs.Efficiency, at[6]),
                MinVoltage = Within(inputs.MinVoltage, at[7]),
                PowerFactor = Within(inputs.PowerFactor, at[8]),
            });
            Assert.InRange(one.Value.Nominal, whole.Value.Low * (1 - 1e-12), whole.Value.High * (1 + 1e-12));
        });

    [Theory]
    [InlineData("rated_current")]
    [InlineData("current_sharing")]
    [InlineData("rail")]
    [InlineData("max_power")]
    [InlineData("min_voltage")]
    [InlineData("efficiency")]
    [InlineData("power_factor")]
    public void Compute_OneInputMissing_IsUnknownAndNamesIt(string code)
    {
        var whole = Example() with { ParallelCount = 2, Sharing = Exactly(0.9), IsMains = true, PowerFactor = Exactly(0.6) };
        Assert.IsType<FigureResult.Computed>(FuseHeadroom.Compute(whole, LineTable.Default));
        var unknown = Assert.IsType<FigureResult.Unknown>(FuseHeadroom.Compute(code switch
        {
            "rated_current" => whole with { RatedCurrent = null },
            "current_sharing" => whole with { Sharing = null },
            "rail" => whole with { HasRail = false },
            "max_power" => whole with { MaxPower = null },
            "min_voltage" => whole with { MinVoltage = null },
            "efficiency" => whole with { Efficiency = null },
            _ => whole with { PowerFactor = null },
        }, LineTable.Default));
        Assert.Equal(code, Assert.Single(unknown.Missing).Code);
        Assert.Empty(unknown.Working.Steps);
    }

    [Fact]
    public void Compute_NothingKnown_NamesAllThatIsMissing()
    {
        var unknown = Assert.IsType<FigureResult.Unknown>(FuseHeadroom.Compute(new FuseHeadroom.Inputs { HasRail = true, IsMains = true }, LineTable.Default));
        Assert.Equal(["rated_current", "max_power", "min_voltage", "efficiency", "power_factor"], unknown.Missing.Select(missing => missing.Code));
    }

    [Fact]
    public void Compute_HighestCurrentRecorded_IsTakenInsteadOfPower()
    {
        var figure = Computed(Example() with { MaxCurrent = Exactly(5), MaxPower = null, Efficiency = null, MinVoltage = null });
        Near(7.5 / 5, figure.Value.Nominal);
    }

    [Fact]
    public void Compute_ValuesOfAnySize_NeverCrashAndNeverLookPlausible() =>
        Gen.Select(Gen.Int[0, 6].Select(i => OddValues[i]), Gen.Int[0, 4]).Sample((value, which) =>
        {
            var odd = Exactly(value);
            var result = FuseHeadroom.Compute(which switch
            {
                0 => Example() with { RatedCurrent = odd },
                1 => Example() with { MaxPower = odd },
                2 => Example() with { MinVoltage = odd },
                3 => Example() with { Efficiency = odd },
                _ => Example() with { MaxCurrent = odd },
            }, LineTable.Default);
            if (result is FigureResult.Computed computed)
            {
                Assert.True(double.IsFinite(computed.Value.Low) && double.IsFinite(computed.Value.High));
                Assert.False(computed.Value.Nominal is > 1e-100 and < 1e100, $"{computed.Value.Nominal} looks like a headroom");
            }
            else
            {
                Assert.NotEmpty(Assert.IsType<FigureResult.Unknown>(result).Missing);
            }
        });

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Compute_NotANumber_CannotEvenBeGiven(double value) => Assert.Throws<ArgumentOutOfRangeException>(() => Exactly(value));

    // 10 A blade: allowed 7.5 A at 25 °C. The need is given, so each line is one division.
    [Theory]
    [InlineData(10.5, 10.5, Verdict.OverRating)]     // 10.5 A of 10 A rated
    [InlineData(10.0, 10.0, Verdict.OverGuideline)]  // exactly the rating, 7.5 / 10 = 0.75
    [InlineData(8.0, 8.0, Verdict.OverGuideline)]    // 0.94
    [InlineData(7.5, 7.5, Verdict.Adequate)]         // exactly 1.00
    [InlineData(7.0, 8.0, Verdict.Thin)]             // 1.07, at worst 0.94
    [InlineData(6.0, 6.5, Verdict.Adequate)]         // 1.25, at worst 1.15
    [InlineData(4.0, 5.0, Verdict.Ample)]            // 1.88, at worst exactly 1.50
    [InlineData(4.0, 5.1, Verdict.Adequate)]         // at worst 1.47
    public void Compute_NeedAgainstTheLines_GivesTheVerdict(double needed, double atWorst, Verdict verdict)
    {
        var figure = Computed(Example() with { MaxCurrent = new Given(Interval.Create(needed, needed, atWorst), Evidence.Measured, null) });
        Assert.Equal(verdict, figure.Verdict);
        Assert.False(figure.StaticOnly);
    }

    [Theory]
    [InlineData(9.0, Verdict.Adequate)]     // 10 / 9 = 1.11
    [InlineData(10.5, Verdict.OverRating)]  // no guideline to be over: the rating alone
    [InlineData(6.0, Verdict.Ample)]        // 1.67
    public void Compute_NoConvention_TheRatingIsTheOnlyLine(double needed, Verdict verdict) =>
        Assert.Equal(verdict, Computed(Example() with { FunctionClass = FunctionClass.Fuse, MaxCurrent = Exactly(needed) }).Verdict);

    [Fact]
    public void Compute_TemperatureNotRecorded_IsStaticOnlyAndAtBestAdequate()
    {
        var figure = Computed(Example() with { AmbientTemperature = null, MaxCurrent = Exactly(1) });
        Assert.True(figure.StaticOnly);
        Assert.Equal(Verdict.Adequate, figure.Verdict);
        Assert.Contains(figure.Working.Notes, note => note.Contains("Static only", StringComparison.Ordinal));
    }

    [Fact]
    public void Compute_WarmWithoutASlope_IsStaticOnly() =>
        Assert.True(Computed(Example() with { AmbientTemperature = Exactly(45), TemperatureSlope = null }).StaticOnly);

    [Fact]
    public void Compute_SlopeThatLeavesNothing_IsUnknown()
    {
        var unknown = Assert.IsType<FigureResult.Unknown>(FuseHeadroom.Compute(Example() with { AmbientTemperature = Exactly(125), TemperatureSlope = Exactly(0.01) }, LineTable.Default));
        Assert.Equal("temperature_slope", Assert.Single(unknown.Missing).Code);
    }

    [Fact]
    public void Compute_Working_IsTheSumThatGivesTheFigure()
    {
        var figure = Computed(Example() with { RatedCurrent = new Given(Interval.Exactly(10), Evidence.ReadOnPart, "photo 3") });
        Assert.Equal(["I_needed", "I_allowed", "headroom"], figure.Working.Steps.Select(step => step.Symbol));
        var last = figure.Working.Steps[^1];
        Assert.Equal((figure.Value.Low, figure.Value.Nominal, figure.Value.High), (last.Low, last.Nominal, last.High));
        Assert.Equal((Evidence.ReadOnPart, "photo 3"), figure.Working.Inputs.Where(input => input.Symbol == "I_rated").Select(input => (input.Evidence!.Value, input.Source!)).Single());
        Assert.Contains("75 %", figure.Working.Inputs.Single(input => input.Symbol == "k_derating").Source, StringComparison.Ordinal);
    }

    // 10 A blade at 25 °C, 60 W at 0.92 from 12 V: the first worked example.
    [Theory]
    [InlineData(30, 1.0, 342, 0.95, 12)]
    [InlineData(10, 0.75, 153, 0.85, 24)]
    public void Compute_OnTheLineByHand_MeetsIt_WhateverTheNoise(double rated, double derating, double watts, double efficiency, double volts)
    {
        // 342 / (0.95 × 12) = 30 A of 30 × 1 = 30 A; 153 / (0.85 × 24) = 7.5 A of 10 × 0.75 = 7.5 A.
        var figure = Computed(new FuseHeadroom.Inputs
        {
            RatedCurrent = Exactly(rated),
            Derating = Exactly(derating),
            AmbientTemperature = Exactly(25),
            HasRail = true,
            MaxPower = Exactly(watts),
            Efficiency = Exactly(efficiency),
            MinVoltage = Exactly(volts),
        });

        Near(1, figure.Value.Nominal);
        Assert.Equal(Verdict.Adequate, figure.Verdict);
    }

    [Fact]
    public void Compute_OnADcRail_TakesNoPowerFactor()
    {
        var dc = Example() with { IsMains = false, PowerFactor = null };

        Assert.Equal(Computed(dc).Value, Computed(dc with { PowerFactor = Exactly(0.6) }).Value);
    }

    private static FuseHeadroom.Inputs Example() => new()
    {
        RatedCurrent = Exactly(10),
        FunctionClass = FunctionClass.BladeFuse,
        AmbientTemperature = Exactly(25),
        HasRail = true,
        MaxPower = Exactly(60),
        Efficiency = Exactly(0.92),
        MinVoltage = Exactly(12),
    };

    private static void SameOrBothUnknown(FuseHeadroom.Inputs inputs, FuseHeadroom.Inputs scaled, double factor)
    {
        if (FuseHeadroom.Compute(inputs, LineTable.Default) is not FigureResult.Computed before)
        {
            Assert.IsType<FigureResult.Unknown>(FuseHeadroom.Compute(scaled, LineTable.Default));
            return;
        }

        var after = Computed(scaled);
        Near(before.Value.Low * factor, after.Value.Low);
        Near(before.Value.Nominal * factor, after.Value.Nominal);
        Near(before.Value.High * factor, after.Value.High);
    }

    private static FigureResult.Computed Computed(FuseHeadroom.Inputs inputs) => Assert.IsType<FigureResult.Computed>(FuseHeadroom.Compute(inputs, LineTable.Default));

    private static void Near(double expected, double actual) => Assert.InRange(actual, expected * (1 - 1e-5), expected * (1 + 1e-5));

    private static Gen<Given> GenSpread(double low, double high) =>
        Gen.Select(Gen.Double[low, high], Gen.Double[0, 0.2], Gen.Double[0, 0.2], (value, below, above) =>
            new Given(Interval.Create(value * (1 - below), value, value * (1 + above)), Evidence.Measured, null));

    private static Gen<Given> GenShare(double low) =>
        Gen.Double[low, 1].Array[3].Select(values => values.Order().ToArray()).Select(values =>
            new Given(Interval.Create(values[0], values[1], values[2]), Evidence.Inferred, null));

    // So gentle that even at thrice the slope and the warmest of these places some current stays allowed.
    private static Gen<Given> GenSlope() =>
        Gen.Double[0, 0.003].Array[3].Select(values => values.Order().ToArray()).Select(values =>
            new Given(Interval.Create(values[0], values[1], values[2]), Evidence.Datasheet, null));

    private static Given Exactly(double value) => new(Interval.Exactly(value), Evidence.Measured, null);

    private static Given Scaled(Given given, double factor) =>
        given with { Interval = Interval.Create(given.Interval.Low * factor, given.Interval.Nominal * factor, given.Interval.High * factor) };

    private static Given? Within(Given? given, double at) =>
        given is null ? null : Exactly(Math.Min(given.Interval.High, given.Interval.Low + (at * (given.Interval.High - given.Interval.Low))));

    private static Given? Known(string cell) => cell == "none" ? null : Exactly(Number(cell));

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
