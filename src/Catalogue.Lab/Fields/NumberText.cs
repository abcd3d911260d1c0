using System.Globalization;
using Catalogue.Domain.Quantities;

namespace Catalogue.Lab.Fields;

/// <summary>Numbers as they stand in fields: typed with or without a unit, printed so that they read back the same.</summary>
public static class NumberText
{
    /// <summary>The number for a field, in full; empty when there is none.</summary>
    public static string Print(double? value)
    {
        if (value is not { } number)
            return "";
        var text = number.ToString("R", CultureInfo.InvariantCulture);
        // Three decimals might be read as a group of thousands; a fourth says what they are.
        return text.IndexOf('.', StringComparison.Ordinal) is var mark and >= 0 && text.Length - mark - 1 == 3 ? text + "0" : text;
    }

    /// <summary>The number for a field; empty when there is none.</summary>
    public static string Print(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? "";

    /// <summary>A quantity for a field, in full and with its unit; empty when there is none.</summary>
    public static string Print(double? value, Unit? unit) => value is null || unit is not { } known ? "" : $"{Print(value)} {(known is Unit.Ratio ? "" : known.Code())}".TrimEnd();

    /// <summary>The day for a field; empty when there is none.</summary>
    public static string Print(DateOnly? day) => day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    /// <summary>Reads a quantity that brings its unit along; a bare number is a ratio. An empty field is no value and no problem.</summary>
    public static (double? Value, Unit? Unit, string? Problem) ReadWithUnit(string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
            return (null, null, null);
        return QuantityParser.ReadOne(text, Unit.Ratio) switch
        {
            QuantityReading.Read { Quantities: [{ Quantity: { HasSpread: true } }] } => (null, null, $"“{text}” has a tolerance; this field takes the value alone."),
            QuantityReading.Read { Quantities: [{ Quantity: var read }] } => (read.Value, read.Unit, null),
            QuantityReading.Ambiguous ambiguous => (null, null, ambiguous.Ask(text)),
            QuantityReading.Refused refused => (null, null, refused.Reason),
            _ => throw new ArgumentOutOfRangeException(nameof(text)),
        };
    }

    /// <summary>Reads a quantity into the unit of its field. An empty field is no value and no problem.</summary>
    public static (double? Value, string? Problem) Read(string? text, Unit unit)
    {
        if (string.IsNullOrWhiteSpace(text))
            return (null, null);
        return QuantityParser.ReadOne(text, unit) switch
        {
            QuantityReading.Read { Quantities: [{ Quantity: { HasSpread: true } }] } => (null, $"“{text}” has a tolerance; this field takes the value alone."),
            QuantityReading.Read { Quantities: [{ Quantity: var read }] } when read.Unit == unit => (read.Value, null),
            QuantityReading.Read { Quantities: [{ Quantity: var read }] } => (null, $"“{text}” is in {read.Unit.Code()}; this field is in {unit.Code()}."),
            QuantityReading.Ambiguous ambiguous => (null, ambiguous.Ask(text)),
            QuantityReading.Refused refused => (null, refused.Reason),
            _ => throw new ArgumentOutOfRangeException(nameof(text)),
        };
    }

    /// <summary>A length for a field, in full and in millimetre; empty when there is none.</summary>
    public static string PrintMillimetres(double? value) => value is null ? "" : $"{Print(value)} mm";

    /// <summary>Reads a length into millimetre; a bare number is in millimetre. An empty field is no value and no problem.</summary>
    public static (double? Value, string? Problem) ReadMillimetres(string? text)
    {
        var (value, unit, problem) = ReadWithUnit(text);
        return (value, unit) switch
        {
            (null, _) => (null, problem),
            (_, Unit.Ratio) => (value, null),
            // The reader gives metre; rounding takes the noise of the two conversions away.
            (_, Unit.Metre) => (Math.Round(value.Value * 1000, 9), null),
            _ => (null, $"“{text}” is in {unit!.Value.Code()}; this field is in mm."),
        };
    }

    /// <summary>Reads a whole number. An empty field is no value and no problem.</summary>
    public static (int? Value, string? Problem) ReadWhole(string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
            return (null, null);
        return int.TryParse(text.Trim(), NumberStyles.Integer, CultureInfo.InvariantCulture, out var value)
            ? (value, null)
            : (null, $"“{text.Trim()}” is no whole number.");
    }

    /// <summary>Reads a day. An empty field is no value and no problem.</summary>
    public static (DateOnly? Value, string? Problem) ReadDay(string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
            return (null, null);
        return DateOnly.TryParseExact(text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
            ? (day, null)
            : (null, $"“{text.Trim()}” is no day; write it as 2026-03-09.");
    }

    /// <summary>The moment for a field, by the clock of a zone and to the minute; empty when there is none.</summary>
    public static string Print(DateTimeOffset? moment, TimeZoneInfo zone) =>
        moment is { } known ? TimeZoneInfo.ConvertTime(known, zone).ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture) : "";

    /// <summary>Reads a moment by the clock of a zone. An empty field is no value and no problem.</summary>
    public static (DateTimeOffset? Value, string? Problem) ReadMoment(string? text, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        if (string.IsNullOrWhiteSpace(text))
            return (null, null);
        if (!DateTime.TryParseExact(text.Trim(), ["yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) || zone.IsInvalidTime(time))
            return (null, $"“{text.Trim()}” is no moment; write day and time as 2026-03-09T14:05.");
        // Of an hour that the clock shows twice the earlier one is taken: nothing looks younger than it may be.
        var offset = zone.IsAmbiguousTime(time) ? zone.GetAmbiguousTimeOffsets(time).Max() : zone.GetUtcOffset(time);
        return (new DateTimeOffset(time, offset), null);
    }
}
