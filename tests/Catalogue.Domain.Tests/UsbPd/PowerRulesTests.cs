using System.Globalization;
using Catalogue.Domain.UsbPd;
using CsCheck;

namespace Catalogue.Domain.Tests.UsbPd;

public sealed class PowerRulesTests
{
    private static readonly int[] ColumnsMv = [5000, 9000, 15_000, 20_000, 28_000, 36_000, 48_000];

    public static TheoryData<string[]> WorkedRules => UsbPdDocument.Rows("### Worked rules");

    [Fact]
    public void WorkedRules_OfTheDocument_AreSeventeen() => Assert.Equal(17, WorkedRules.Count);

    [Theory]
    [MemberData(nameof(WorkedRules))]
    public void For_WorkedRule_AsksForTheDocumentedCurrents(string[] row)
    {
        var rules = PowerRules.For(double.Parse(row[0], CultureInfo.InvariantCulture))!;

        Assert.Equal(row[1..], ColumnsMv.Select(mv => rules.Voltages.SingleOrDefault(voltage => voltage.VoltageMv == mv) is { } asked
            ? asked.LeastMa == asked.MostMa ? $"{asked.LeastMa}" : $"{asked.LeastMa}-{asked.MostMa}"
            : "-"));
    }

    [Theory]
    [InlineData(27, false, false, null)]
    [InlineData(27.5, true, false, null)]
    [InlineData(45, true, false, null)]
    [InlineData(45.5, true, true, null)]
    [InlineData(100, true, true, null)]
    [InlineData(140, true, true, 28_000)]
    [InlineData(141, true, true, 36_000)]
    [InlineData(240, true, true, 48_000)]
    public void For_Power_SaysWhichAdjustableSuppliesAreAskedFor(double pdp, bool to15, bool to20, int? extendedToMv)
    {
        var rules = PowerRules.For(pdp)!;
        Assert.Equal((to15, to20, extendedToMv), (rules.WantsAvsTo15V, rules.WantsAvsTo20V, rules.ExtendedAvsToMv));
    }

    [Theory]
    [InlineData(18, PpsClass.NineVolts, 2000)]
    [InlineData(20, PpsClass.NineVolts, 2200)]     // 2.222 A, down to 50 mA
    [InlineData(27, PpsClass.NineVolts, 3000)]
    [InlineData(36, PpsClass.NineVolts, 3000)]     // the class below stays
    [InlineData(36, PpsClass.FifteenVolts, 2400)]
    [InlineData(45, PpsClass.NineVolts, null)]
    [InlineData(50, PpsClass.FifteenVolts, 3000)]
    [InlineData(50, PpsClass.TwentyVolts, 2500)]
    [InlineData(65, PpsClass.TwentyVolts, 3250)]
    [InlineData(65, PpsClass.FifteenVolts, null)]
    [InlineData(100, PpsClass.TwentyVolts, 5000)]
    [InlineData(140, PpsClass.TwentyVolts, 5000)]
    [InlineData(65, PpsClass.FiveVolts, null)]
    [InlineData(65, PpsClass.Other, null)]
    public void ProgrammableMa_OfAClass_IsRoundedDown(double pdp, PpsClass pps, int? expected) => Assert.Equal(expected, PowerRules.For(pdp)!.ProgrammableMa(pps));

    [Theory]
    [InlineData(0)]
    [InlineData(0.4)]
    [InlineData(-65)]
    [InlineData(240.5)]
    [InlineData(1e300)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void For_WhatIsNoPower_HasNoRules(double pdp) => Assert.Null(PowerRules.For(pdp));

    [Theory]
    [InlineData(7.5, true)]
    [InlineData(7.25, false)]
    [InlineData(65, true)]
    [InlineData(22.5, false)]
    public void IsWholeStep_SaysHowPowersAreDeclared(double pdp, bool expected) => Assert.Equal(expected, PowerRules.For(pdp)!.IsWholeStep);

    [Fact]
    public void For_MorePower_NeverAsksForLess() => Gen.Select(Gen.Int[1, 480], Gen.Int[1, 480]).Sample((a, b) =>
    {
        var (less, more) = (PowerRules.For(Math.Min(a, b) / 2.0)!, PowerRules.For(Math.Max(a, b) / 2.0)!);
        foreach (var voltage in less.Voltages)
        {
            var other = more.Voltages.Single(found => found.VoltageMv == voltage.VoltageMv);
            Assert.True(other.LeastMa >= voltage.LeastMa && other.MostMa >= voltage.MostMa && voltage.MostMa >= voltage.LeastMa && voltage.MostMa % 10 == 0);
        }
    });
}
