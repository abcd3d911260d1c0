using System.Collections.Concurrent;
using Catalogue.Domain.Components;
using Catalogue.Domain.Derating;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>
/// The lines that figures are held against: the guidelines of a named derating practice and the ample lines of the house. A lab may choose
/// the practice and change each line; whatever it changed is said beside the figure.
/// </summary>
/// <remarks>Guidelines come from <see cref="DeratingTable"/>, each with its source and mark. Ample lines are house rules.</remarks>
public sealed class LineTable
{
    private const string AmpleHeadroomCode = "ample_headroom";
    private const string AmpleVoltageCode = "ample_voltage";
    private const string AmpleCurrentCode = "ample_current";
    private const string HouseRule = "house rule";
    private const string NoGuideline = "the derating practice has no guideline for it";
    private const int MostRemembered = 1000;

    private static readonly (string Code, string Name, FunctionClass Class, StressKind Stress, DeratingParameter Parameter)[] Guidelines =
    [
        ("blade_fuse_current", "current of blade fuses", FunctionClass.BladeFuse, StressKind.Current, DeratingParameter.Current),
        ("ul_cartridge_fuse_current", "current of cartridge fuses, UL style", FunctionClass.UlCartridgeFuse, StressKind.Current, DeratingParameter.Current),
        ("iec_cartridge_fuse_current", "current of cartridge fuses, IEC style", FunctionClass.IecCartridgeFuse, StressKind.Current, DeratingParameter.Current),
        ("switch_voltage", "voltage of switches", FunctionClass.Switch, StressKind.Voltage, DeratingParameter.DrainSourceVoltage),
        ("switch_current", "current of switches", FunctionClass.Switch, StressKind.Current, DeratingParameter.DrainCurrent),
        ("rectifier_voltage", "voltage of rectifiers", FunctionClass.Rectifier, StressKind.Voltage, DeratingParameter.ReverseVoltage),
        ("rectifier_current", "current of rectifiers", FunctionClass.Rectifier, StressKind.Current, DeratingParameter.ForwardCurrent),
        ("ceramic_capacitor_voltage", "voltage of ceramic capacitors", FunctionClass.CeramicCapacitor, StressKind.Voltage, DeratingParameter.Voltage),
        ("film_capacitor_voltage", "voltage of film capacitors", FunctionClass.FilmCapacitor, StressKind.Voltage, DeratingParameter.Voltage),
        ("aluminium_capacitor_voltage", "voltage of aluminium capacitors", FunctionClass.AluminiumCapacitor, StressKind.Voltage, DeratingParameter.Voltage),
        ("tantalum_capacitor_voltage", "voltage of tantalum capacitors", FunctionClass.TantalumCapacitor, StressKind.Voltage, DeratingParameter.Voltage),
        ("connector_voltage", "voltage of connectors", FunctionClass.Connector, StressKind.Voltage, DeratingParameter.Voltage),
        ("connector_current", "current of connectors", FunctionClass.Connector, StressKind.Current, DeratingParameter.Current),
    ];

    // The table is asked once for each part; most parts ask the same.
    private readonly ConcurrentDictionary<(string Code, Interval? Temperature, double? RatedCurrent), (Guideline? Guideline, string WhyNot)> _found = new();
    private readonly DeratingPreset _preset;
    private readonly IReadOnlyDictionary<string, double> _changed;

    /// <summary>The lines of a practice with what the lab has changed, by code; a changed line that is out of range is left at its default.</summary>
    public LineTable(DeratingPreset preset, IReadOnlyDictionary<string, double> changed)
    {
        ArgumentNullException.ThrowIfNull(changed);
        (_preset, _changed) = (preset, changed);
    }

    /// <summary>As it ships.</summary>
    public static LineTable Default { get; } = new(DeratingPresets.Default, new Dictionary<string, double>());

    /// <summary>From here on a headroom is called ample.</summary>
    public double AmpleHeadroom => Own(AmpleHeadroomCode) ?? 1.5;

    /// <summary>A voltage is called ample when it stays below its line by this factor.</summary>
    public double AmpleVoltage => Own(AmpleVoltageCode) ?? 1.25;

    /// <summary>A current is called ample when it stays below its line by this factor.</summary>
    public double AmpleCurrent => Own(AmpleCurrentCode) ?? 1.5;

    /// <summary>Every line that a lab may change, with what stands now and where the default comes from.</summary>
    public IReadOnlyList<LineRow> Rows =>
    [
        .. Guidelines.Select(row => new LineRow(row.Code, row.Name, Own(row.Code), Published(row.Class, row.Parameter, null, null) is DeratingLine.Applied applied ? applied.Value.Nominal : null, SourceOf(row.Class, row.Parameter), 0.05, 1)),
        new(AmpleHeadroomCode, "headroom called ample", Own(AmpleHeadroomCode), 1.5, HouseRule, 1, 10),
        new(AmpleVoltageCode, "voltage called ample, times below its line", Own(AmpleVoltageCode), 1.25, HouseRule, 1, 10),
        new(AmpleCurrentCode, "current called ample, times below its line", Own(AmpleCurrentCode), 1.5, HouseRule, 1, 10),
    ];

    /// <summary>Differs whenever a line differs.</summary>
    internal string Stamp => _preset + string.Join(';', _changed.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => FormattableString.Invariant($" {pair.Key}={pair.Value:R}")));

    /// <summary>Why a changed line cannot be, or null when it can.</summary>
    public static string? Refuse(string code, double value) => Default.Rows.FirstOrDefault(row => row.Code == code) is not { } found
        ? $"There is no line “{code}”; known are {string.Join(", ", Default.Rows.Select(row => row.Code))}."
        : value >= found.Lowest && value <= found.Highest ? null : FormattableString.Invariant($"{found.Name}: the line is {found.Lowest} to {found.Highest}.");

    /// <summary>The guideline for a class of part.</summary>
    /// <param name="functionClass">The class, or null.</param>
    /// <param name="stress">Voltage or current.</param>
    /// <param name="temperature">Around the part, in °C, or null where not known.</param>
    /// <param name="ratedCurrent">Of a fuse, in ampere, or null.</param>
    /// <returns>The guideline; or null with the reason why the rating alone counts.</returns>
    public (Guideline? Guideline, string WhyNot) Guideline(FunctionClass? functionClass, StressKind stress, Given? temperature = null, Given? ratedCurrent = null)
    {
        foreach (var row in Guidelines)
        {
            if (row.Class != functionClass || row.Stress != stress)
                continue;
            var key = (row.Code, temperature?.Interval, ratedCurrent?.Interval.Nominal);
            if (_found.TryGetValue(key, out var known))
                return known;
            known = Look(row.Code, row.Class, row.Parameter, temperature, ratedCurrent);
            if (_found.Count < MostRemembered)
                _found.TryAdd(key, known);
            return known;
        }

        return (null, functionClass is { } style && style.Is(FunctionClass.Fuse) ? "the style of the fuse is not recorded" : NoGuideline);
    }

    private (Guideline? Guideline, string WhyNot) Look(string code, FunctionClass functionClass, DeratingParameter parameter, Given? temperature, Given? ratedCurrent)
    {
        var published = Published(functionClass, parameter, temperature?.Interval, ratedCurrent?.Interval.Nominal);
        if (Own(code) is { } own)
            return (new Guideline(code, own, $"this lab's line of {QuantityText.Number(own)}", $"set by this lab; {SourceOf(functionClass, parameter)}"), "");
        return published switch
        {
            // Where it falls with temperature the hottest case decides.
            DeratingLine.Applied applied => (new Guideline(code, applied.Value.Low, Words(applied), Source(applied.Guideline)), ""),
            DeratingLine.NotApplied not => (null, $"{not.Guideline.Source.Name()}: {not.Reason}"),
            _ => (null, NoGuideline),
        };
    }

    /// <summary>The highest junction temperature of the practice for a part with a given rated one, in °C; null where it has none.</summary>
    public (double DegC, string Words, string Source)? JunctionLine(FunctionClass functionClass, double ratedDegC) =>
        Published(functionClass, DeratingParameter.JunctionTemperature, null, null) is DeratingLine.Applied { Guideline: var guideline } && _preset is not DeratingPreset.DataSheet && guideline.HighestTemperature(ratedDegC) is { } highest
            ? (highest, $"{guideline.Source.Name()}: {guideline.Condition}", Source(guideline))
            : null;

    private double? Own(string code) => _changed.TryGetValue(code, out var value) && double.IsFinite(value) && value > 0 ? value : null;

    private DeratingLine Published(FunctionClass functionClass, DeratingParameter parameter, Interval? temperature, double? ratedCurrent) =>
        DeratingParts.For(functionClass) is { } part ? DeratingPresets.Find(_preset, part, parameter, temperature, ratedCurrent) : new DeratingLine.None();

    private string SourceOf(FunctionClass functionClass, DeratingParameter parameter) => Published(functionClass, parameter, null, null) switch
    {
        DeratingLine.Applied applied => $"default {QuantityText.Number(applied.Value.Nominal)}, {Source(applied.Guideline)}",
        DeratingLine.NotApplied not => $"default {Source(not.Guideline)}, not applied without its conditions",
        _ => "no default: the practice has no guideline for it",
    };

    private static string Words(DeratingLine.Applied applied) => applied.Guideline is { Source: DeratingSource.TradeConvention, Condition: { } convention }
        ? convention
        : $"{QuantityText.Number(applied.Value.Low)} of the rating, {applied.Guideline.Source.Name()}";

    private static string Source(DeratingGuideline guideline) =>
        $"{guideline.Source.Name()}{(guideline.Condition is { } condition ? ", " + condition : "")}; {(guideline.Mark is Confidence.High ? "read in the source or in two copies that agree" : "not read in the governing text")}; editable";
}
