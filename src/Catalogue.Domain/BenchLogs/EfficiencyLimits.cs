using System.Globalization;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.BenchLogs;

/// <summary>What the schemes for external power supplies ask of a nameplate output.</summary>
/// <remarks>
/// <para>P is the nameplate output in watt, ln the natural logarithm; efficiencies are ratios. Sources: US 10 CFR 430.32(w) (Level VI) and the EU
/// Code of Conduct on external power supplies, version 5, tier 2. EU Regulation 2019/1782 follows the former with minor differences, ends at 250 W
/// and sets no limit at 10 % load.</para>
/// <para>A comparison with a limit is a screening of one sample; it certifies nothing. Newer rules may apply: check before anything is published.
/// A port of several voltages is looked at with each voltage as a nameplate of its own.</para>
/// </remarks>
public static class EfficiencyLimits
{
    /// <summary>Nameplates above this are refused as absurd.</summary>
    public const double LargestNameplateW = 100_000;

    private const double LowVoltage = 6;
    private const double LowVoltageAmpere = 0.55;
    private const string LevelViSource = "US 10 CFR 430.32(w), Level VI";
    private const string CocSource = "EU Code of Conduct on external power supplies, version 5, tier 2";

    /// <summary>The class of a supply with one ac-to-dc output: low voltage means below 6 V and at least 550 mA.</summary>
    public static EfficiencyClass ClassOf(double outputV, double outputA)
    {
        ThrowUnlessPositive(outputV);
        ThrowUnlessPositive(outputA);
        return outputV < LowVoltage && outputA >= LowVoltageAmpere ? EfficiencyClass.LowVoltageAcdc : EfficiencyClass.BasicAcdc;
    }

    /// <summary>The lowest four-point average efficiency, or null where the scheme sets none for the class and power.</summary>
    public static EfficiencyLimit? FourPoint(EfficiencyScheme scheme, EfficiencyClass kind, double nameplateW)
    {
        var p = Checked(nameplateW);
        var limit = (scheme, kind) switch
        {
            (EfficiencyScheme.LevelVi, EfficiencyClass.BasicAcdc) => Banded(p, (0.5 * p) + 0.160, (0.071 * Math.Log(p)) - (0.0014 * p) + 0.67, 0.880, 0.875),
            (EfficiencyScheme.LevelVi, EfficiencyClass.LowVoltageAcdc) => Banded(p, (0.517 * p) + 0.087, (0.0834 * Math.Log(p)) - (0.0014 * p) + 0.609, 0.870, 0.875),
            (EfficiencyScheme.LevelVi, EfficiencyClass.MultipleOutput) => Banded(p, (0.497 * p) + 0.067, (0.075 * Math.Log(p)) + 0.561, 0.860, 0.860),
            (EfficiencyScheme.CocV5Tier2, EfficiencyClass.BasicAcdc) => Banded(p, (0.5 * p) + 0.169, (0.071 * Math.Log(p)) - (0.00115 * p) + 0.670, 0.890, null),
            (EfficiencyScheme.CocV5Tier2, EfficiencyClass.LowVoltageAcdc) => Banded(p, (0.517 * p) + 0.091, (0.0834 * Math.Log(p)) - (0.0011 * p) + 0.609, 0.880, null),
            _ => null,
        };
        var isCrossChecked = scheme == EfficiencyScheme.LevelVi ? kind != EfficiencyClass.MultipleOutput : p > 1;
        return Limit(scheme, p, limit, isCrossChecked);
    }

    /// <summary>The lowest efficiency at 10 % load, or null where the scheme sets none.</summary>
    public static EfficiencyLimit? TenPercent(EfficiencyScheme scheme, EfficiencyClass kind, double nameplateW)
    {
        var p = Checked(nameplateW);
        var limit = (scheme, kind) switch
        {
            (EfficiencyScheme.CocV5Tier2, EfficiencyClass.BasicAcdc) => Banded(p, (0.5 * p) + 0.060, (0.071 * Math.Log(p)) - (0.00115 * p) + 0.570, 0.790, null),
            (EfficiencyScheme.CocV5Tier2, EfficiencyClass.LowVoltageAcdc) => Banded(p, 0.517 * p, (0.0834 * Math.Log(p)) - (0.00127 * p) + 0.518, 0.780, null),
            _ => null,
        };
        return Limit(scheme, p, limit, isCrossChecked: false);
    }

    /// <summary>The highest no-load power in watt, or null where the scheme sets none.</summary>
    public static EfficiencyLimit? NoLoad(EfficiencyScheme scheme, EfficiencyClass kind, double nameplateW)
    {
        var p = Checked(nameplateW);
        double? limit = (scheme, kind) switch
        {
            (EfficiencyScheme.LevelVi, EfficiencyClass.BasicAcdc or EfficiencyClass.LowVoltageAcdc) => p <= 49 ? 0.100 : p <= 250 ? 0.210 : 0.500,
            (EfficiencyScheme.LevelVi, EfficiencyClass.MultipleOutput) => 0.300,
            (EfficiencyScheme.LevelVi, EfficiencyClass.Acac) => p <= 49 ? 0.210 : null,
            (EfficiencyScheme.CocV5Tier2, EfficiencyClass.BasicAcdc or EfficiencyClass.LowVoltageAcdc) => p <= 49 ? 0.075 : p <= 250 ? 0.150 : null,
            _ => null,
        };
        return Limit(scheme, p, limit, scheme == EfficiencyScheme.LevelVi && kind is EfficiencyClass.BasicAcdc or EfficiencyClass.LowVoltageAcdc);
    }

    /// <summary>Says where a four-point average lies: above or below the limit of the scheme. A value on the limit is not below it.</summary>
    public static string Compare(double fourPointAverage, EfficiencyScheme scheme, EfficiencyLimit limit)
    {
        ThrowUnlessPositive(fourPointAverage);
        ArgumentNullException.ThrowIfNull(limit);
        var side = Line.IsBelow(fourPointAverage, limit.Value) ? "below" : "above";
        var mark = limit.IsCrossChecked ? "" : "; the limit is not cross-checked, see its source";
        return string.Create(CultureInfo.InvariantCulture, $"{fourPointAverage:0.0000}: {side} the limit {limit.Value:0.0000} of {Name(scheme)}{mark}");
    }

    /// <summary>The scheme's name for people.</summary>
    public static string Name(EfficiencyScheme scheme) => scheme == EfficiencyScheme.LevelVi ? "DOE Level VI" : "EU Code of Conduct v5 tier 2";

    private static double? Banded(double p, double low, double middle, double high, double? highest) => p switch
    {
        <= 1 => low,
        <= 49 => middle,
        <= 250 => high,
        _ => highest,
    };

    // The voluntary code starts at 0.3 W.
    private static EfficiencyLimit? Limit(EfficiencyScheme scheme, double p, double? value, bool isCrossChecked) => value is not { } limit || (scheme == EfficiencyScheme.CocV5Tier2 && p < 0.3)
        ? null
        : new EfficiencyLimit(limit, scheme == EfficiencyScheme.LevelVi ? LevelViSource : CocSource, isCrossChecked);

    private static double Checked(double nameplateW)
    {
        ThrowUnlessPositive(nameplateW);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(nameplateW, LargestNameplateW);
        return nameplateW;
    }

    private static void ThrowUnlessPositive(double value)
    {
        if (!(value > 0) || !double.IsFinite(value))
            throw new ArgumentOutOfRangeException(nameof(value), value, "A finite value above zero is needed.");
    }
}
