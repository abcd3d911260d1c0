using System.Collections.Frozen;

namespace Catalogue.Domain.BenchLogs;

/// <summary>A unit as logs write it, and how to come from it to the base unit: volt, ampere, watt, ampere-hour, watt-hour, °C, ohm, second.</summary>
/// <param name="Quantity">What it measures.</param>
/// <param name="Factor">Base units in one of it.</param>
/// <param name="Offset">Added after the factor; zero but for temperatures.</param>
/// <param name="Text">Its spelling, with the letter case put right.</param>
internal sealed record LogUnit(LogQuantity Quantity, double Factor, double Offset, string Text)
{
    private const int LongestUnit = 16;

    private static readonly FrozenDictionary<string, LogUnit> Whole = new Dictionary<string, LogUnit>
    {
        ["s"] = new(LogQuantity.Time, 1, 0, "s"),
        ["min"] = new(LogQuantity.Time, 60, 0, "min"),
        ["h"] = new(LogQuantity.Time, 3600, 0, "h"),
        ["d"] = new(LogQuantity.Time, 86400, 0, "d"),
        ["°C"] = new(LogQuantity.Temperature, 1, 0, "degC"),
        ["K"] = new(LogQuantity.Temperature, 1, -273.15, "K"),
        ["°F"] = new(LogQuantity.Temperature, 5.0 / 9, -160.0 / 9, "degF"),
        ["%"] = new(LogQuantity.Other, 0.01, 0, "%"),
        ["Hz"] = new(LogQuantity.Other, 1, 0, "Hz"),
        ["VA"] = new(LogQuantity.Other, 1, 0, "VA"),
        ["var"] = new(LogQuantity.Other, 1, 0, "var"),
        ["rpm"] = new(LogQuantity.Other, 1, 0, "rpm"),
    }.ToFrozenDictionary();

    // What may carry a prefix. A coulomb alone is left out: a C in a log is a degree.
    private static readonly FrozenDictionary<string, LogUnit> Scaled = new Dictionary<string, LogUnit>
    {
        ["V"] = new(LogQuantity.Voltage, 1, 0, "V"),
        ["A"] = new(LogQuantity.Current, 1, 0, "A"),
        ["W"] = new(LogQuantity.Power, 1, 0, "W"),
        ["Ah"] = new(LogQuantity.Charge, 1, 0, "Ah"),
        ["As"] = new(LogQuantity.Charge, 1.0 / 3600, 0, "As"),
        ["Wh"] = new(LogQuantity.Energy, 1, 0, "Wh"),
        ["Ws"] = new(LogQuantity.Energy, 1.0 / 3600, 0, "Ws"),
        ["J"] = new(LogQuantity.Energy, 1.0 / 3600, 0, "J"),
        ["Ω"] = new(LogQuantity.Resistance, 1, 0, "ohm"),
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, string> Spellings = Table(
        ("V", "volt|volts|v|伏"),
        ("mV", "millivolt|millivolts|mv"),
        ("uV", "uv"),
        ("kV", "kv|KV"),
        ("A", "amp|amps|ampere|amperes|a|安"),
        ("mA", "milliamp|milliamps|ma"),
        ("uA", "ua"),
        ("W", "watt|watts|w|瓦"),
        ("mW", "mw"),
        ("kW", "kw|KW"),
        ("uW", "uw"),
        ("Ah", "ah|AH"),
        ("mAh", "mah"),
        ("Wh", "wh|WH"),
        ("mWh", "mwh"),
        ("kWh", "kwh|KWH"),
        ("J", "j"),
        ("Ω", "ohm|ohms|Ohm|Ohms|\u2126"),
        ("kΩ", "kohm|kOhm"),
        ("MΩ", "Mohm|MOhm"),
        ("mΩ", "mohm|mOhm"),
        ("s", "sec|secs|second|seconds|sek|sekunden|秒"),
        ("ms", "msec|millis|milliseconds|毫秒"),
        ("us", "usec|micros|microseconds"),
        ("min", "minute|minutes|mins|分"),
        ("h", "hour|hours|hr|hrs|std"),
        ("d", "day|days"),
        ("°C", "C|c|degC|degc|celsius|℃|deg C|° C|ºC"),
        ("°F", "F|degF|℉"),
        ("K", "kelvin"),
        ("Hz", "hz|HZ"),
        ("%", "percent"),
        ("MAh", "MAH"),
        ("MWh", "MWH"));

    // Dividing by a whole number gives the nearest double where multiplying by a fraction that is none would not.
    private readonly double _divisor = Factor < 1 && Math.Abs((Math.Round(1 / Factor) * Factor) - 1) < 1e-12 ? Math.Round(1 / Factor) : 0;

    /// <summary>A value in base units.</summary>
    public double ToBase(double value) => (_divisor > 0 ? value / _divisor : value * Factor) + Offset;

    /// <summary>True when a capital M stands before a bench quantity: mega as written, though often milli was meant.</summary>
    public bool IsMega => Text is ['M', _, ..] && Quantity is not LogQuantity.Resistance and not LogQuantity.Other;

    /// <summary>The unit a text stands for, or null. Case counts where it decides: <c>mW</c> is no <c>MW</c>.</summary>
    public static LogUnit? Find(string? text)
    {
        if (text is null || text.Length > LongestUnit * 2)
            return null;
        var unit = Bare(text.Trim());
        return unit.Length is 0 or > LongestUnit ? null : Exact(unit) ?? (Spellings.TryGetValue(unit, out var spelling) ? Exact(spelling) : Lower(unit));
    }

    /// <summary>The base unit of a quantity, or null where it has none.</summary>
    public static LogUnit? Base(LogQuantity quantity) => quantity switch
    {
        LogQuantity.Voltage => Scaled["V"],
        LogQuantity.Current => Scaled["A"],
        LogQuantity.Power => Scaled["W"],
        LogQuantity.Charge => Scaled["Ah"],
        LogQuantity.Energy => Scaled["Wh"],
        LogQuantity.Temperature => Whole["°C"],
        LogQuantity.Time => Whole["s"],
        LogQuantity.Resistance => Scaled["Ω"],
        _ => null,
    };

    private static LogUnit? Lower(string unit) =>
        unit.Length > 3 && Spellings.TryGetValue(unit.ToLowerInvariant(), out var spelling) ? Exact(spelling) : null;

    // Whether it is dc, ac or an rms value changes nothing in the sums.
    private static string Bare(string unit)
    {
        foreach (var tail in (ReadOnlySpan<string>)["dc", "DC", "ac", "AC", "rms", "RMS"])
            if (unit.Length > tail.Length && unit.EndsWith(tail, StringComparison.Ordinal))
                return unit[..^tail.Length].TrimEnd(' ', '_');
        return unit;
    }

    private static LogUnit? Exact(string unit)
    {
        if (Whole.TryGetValue(unit, out var whole) || Scaled.TryGetValue(unit, out whole))
            return whole;
        if (unit.Length < 2 || Prefix(unit[0]) is not { } factor)
            return null;
        var name = unit[1..];
        if (name == "s" && factor < 1)
            return new LogUnit(LogQuantity.Time, factor, 0, unit);
        if (name == "C" && factor < 1)
            return new LogUnit(LogQuantity.Charge, factor / 3600, 0, unit);
        if (!Scaled.TryGetValue(name, out var scaled) && !(Spellings.TryGetValue(name, out var spelling) && name is "ohm" or "Ohm" && Scaled.TryGetValue(spelling!, out scaled)))
            return null;
        return new LogUnit(scaled.Quantity, scaled.Factor * factor, 0, unit[0] + scaled.Text);
    }

    private static FrozenDictionary<string, string> Table(params (string Unit, string Spellings)[] rows) =>
        rows.SelectMany(row => row.Spellings.Split('|').Select(spelling => (row.Unit, Spelling: spelling))).ToFrozenDictionary(pair => pair.Spelling, pair => pair.Unit);

    private static double? Prefix(char letter) => letter switch
    {
        'n' => 1e-9,
        'u' or 'µ' or 'μ' => 1e-6,
        'm' => 1e-3,
        'k' => 1e3,
        'M' => 1e6,
        _ => null,
    };
}
