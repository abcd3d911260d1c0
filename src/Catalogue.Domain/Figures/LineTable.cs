using Catalogue.Domain.Components;
using Catalogue.Domain.Derating;

namespace Catalogue.Domain.Figures;

/// <summary>The lines that figures are held against: guidelines and ample lines. A lab may change each.</summary>
/// <param name="preset">The derating practice that guidelines default to.</param>
/// <param name="changed">What the lab has changed, by code.</param>
public sealed class LineTable(DeratingPreset preset, IReadOnlyDictionary<string, double> changed)
{
    /// <summary>As it ships.</summary>
    public static LineTable Default { get; } = new(DeratingPreset.Industrial, new Dictionary<string, double>());

    /// <summary>From here on a headroom is called ample. House rule.</summary>
    public double AmpleHeadroom => changed.GetValueOrDefault("ample_headroom", 1.5);

    /// <summary>A voltage is called ample when it stays below the guideline by this factor. House rule.</summary>
    public double AmpleVoltage => changed.GetValueOrDefault("ample_voltage", 1.25);

    /// <summary>Differs whenever a line differs.</summary>
    internal string Stamp => preset + string.Join(';', changed.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => FormattableString.Invariant($"{pair.Key}={pair.Value:R}")));

    /// <summary>The guideline for a class of part, or null where there is none to default to.</summary>
    public Guideline? Guideline(FunctionClass? functionClass, StressKind stress) => (functionClass, stress) switch
    {
        (FunctionClass.BladeFuse, StressKind.Current) => new Guideline("blade_fuse_current", 0.75, "75 % convention for blade fuses", "75 % convention for blade fuses, editable"),
        (FunctionClass.UlCartridgeFuse, StressKind.Current) => new Guideline("ul_fuse_current", 0.75, "75 % convention for UL-style fuses", "75 % convention for UL-style fuses, editable"),
        (FunctionClass.IecCartridgeFuse, StressKind.Current) => new Guideline("iec_fuse_current", 1.00, "100 % convention for IEC cartridge fuses at 23 °C", "100 % convention for IEC cartridge fuses at 23 °C, editable"),
        _ => null,
    };
}
