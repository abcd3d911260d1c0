using System.Globalization;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Isolation;

/// <summary>The words a person reads of a measured path and its note.</summary>
public static class IsolationWords
{
    private const string NotSaid = "not said";

    /// <summary>Such as <c>clearly above</c>. No outcome is a verdict.</summary>
    public static string Word(this IsolationOutcome outcome) => outcome switch
    {
        IsolationOutcome.ClearlyAbove => "clearly above",
        IsolationOutcome.NearOrBelowAsk => "near or below: ask",
        _ => "not assessable",
    };

    /// <summary>Such as <c>creepage</c>.</summary>
    public static string Word(this PathKind kind) => kind is PathKind.Creepage ? "creepage" : "clearance";

    /// <summary>Such as <c>reinforced</c>.</summary>
    public static string Word(this InsulationKind kind) => kind switch
    {
        InsulationKind.Functional => "functional",
        InsulationKind.Basic => "basic",
        InsulationKind.Supplementary => "supplementary",
        InsulationKind.Double => "double",
        _ => "reinforced",
    };

    /// <summary>The group as the standard writes it, such as <c>IIIa</c>.</summary>
    public static string Word(this MaterialGroup group) => group switch
    {
        MaterialGroup.One => "I",
        MaterialGroup.Two => "II",
        MaterialGroup.ThreeA => "IIIa",
        _ => "IIIb",
    };

    /// <summary>An overvoltage category as the standard writes it, <c>I</c> to <c>IV</c>.</summary>
    public static string Category(int category) => category switch
    {
        1 => "I",
        2 => "II",
        3 => "III",
        4 => "IV",
        _ => throw new ArgumentOutOfRangeException(nameof(category), category, "Overvoltage categories are 1 to 4."),
    };

    /// <summary>The distance with its spread, such as <c>7.9 / 8.1 / 8.3 mm</c>, or that it was not measured.</summary>
    public static string Distance(this MeasuredPath path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path switch
        {
            { LowMm: { } low, NominalMm: { } nominal, HighMm: { } high } when low < high => $"{QuantityText.Number(low)} / {QuantityText.Number(nominal)} / {Millimetres(high)}",
            { NominalMm: { } nominal } => Millimetres(nominal),
            _ => "not measured",
        };
    }

    /// <summary>The narrowest groove that the path follows, such as <c>1.5 mm</c>; null where it follows none.</summary>
    public static string? Groove(this MeasuredPath path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path.NarrowestGrooveMm is { } groove ? Millimetres(groove) : null;
    }

    /// <summary>The value that a note is compared with, such as <c>compare with 5 mm</c>, or that there is none.</summary>
    public static string CompareWith(this IsolationNote note)
    {
        ArgumentNullException.ThrowIfNull(note);
        return note.OrientationMm is { } millimetres ? $"compare with {Millimetres(millimetres)}" : "nothing to compare with";
    }

    /// <summary>The assumptions that stand with the note, in a fixed order; what was not said is said to be so, but for altitude and frequency.</summary>
    public static IReadOnlyList<string> Assumed(this MeasuredPath path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return
        [
            "working voltage " + (path.WorkingVoltageV is { } volts ? QuantityText.Of(volts, Unit.Volt) + " rms" : NotSaid),
            "insulation " + (path.Insulation?.Word() ?? NotSaid),
            "overvoltage category " + (path.OvervoltageCategory is { } category ? Category(category) : NotSaid),
            "pollution degree " + (path.PollutionDegree?.ToString(CultureInfo.InvariantCulture) ?? NotSaid),
            "material group " + (path.MaterialGroup?.Word() ?? NotSaid),
            .. path.AltitudeM is { } metres ? ["up to " + QuantityText.Of(metres, Unit.Metre, 5)] : Array.Empty<string>(),
            .. path.FrequencyHz is { } hertz ? ["up to " + QuantityText.Of(hertz, Unit.Hertz)] : Array.Empty<string>(),
            path.IsCoated switch
            {
                true => "coated or potted",
                false => "not coated",
                null => "coating " + NotSaid,
            },
        ];
    }

    /// <summary>A length, such as <c>2.22 mm</c>.</summary>
    internal static string Millimetres(double millimetres) => QuantityText.Number(millimetres) + "\u00A0mm";
}
