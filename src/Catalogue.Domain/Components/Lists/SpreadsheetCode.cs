using System.Globalization;

namespace Catalogue.Domain.Components.Lists;

/// <summary>What may have been typed where a spreadsheet made a date or a number of it.</summary>
internal static class SpreadsheetCode
{
    /// <summary>What may have been typed, the likeliest first, the date itself last.</summary>
    /// <param name="date">The date that the cell holds.</param>
    /// <param name="format">Its number format: what it does not show was not typed.</param>
    public static IReadOnlyList<string> BehindDate(DateTime date, string format)
    {
        var month = date.ToString("MMM", CultureInfo.InvariantCulture).ToUpperInvariant();
        var itself = date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        if (!format.Contains('y', StringComparison.OrdinalIgnoreCase))
        {
            return [Text($"{month}{date.Day}"), Text($"{date.Day}-{date.Month}"), Text($"{date.Month}-{date.Day}"), itself];
        }
        return !format.Contains('d', StringComparison.OrdinalIgnoreCase) || (date.Day == 1 && format.Contains("mmm", StringComparison.OrdinalIgnoreCase))
            ? [Text($"{month}{date.Year % 100:00}"), Text($"{date.Month}-{date.Year % 100:00}"), itself]
            : [Text($"{date.Day}-{date.Month}-{date.Year % 100:00}"), Text($"{date.Month}-{date.Day}-{date.Year % 100:00}"), Text($"{month}{date.Day}"), itself];
    }

    /// <summary>What may have been typed, the likeliest first, the plain number last.</summary>
    public static IReadOnlyList<string> BehindExponent(double number)
    {
        var parts = number.ToString("E14", CultureInfo.InvariantCulture).Split('E');
        var digits = parts[0].TrimEnd('0').TrimEnd('.');
        var decimals = digits.Contains('.', StringComparison.Ordinal) ? digits.Length - digits.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        var exponent = int.Parse(parts[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture) - decimals;
        var plain = number.ToString("R", CultureInfo.InvariantCulture);
        return [Text($"{digits.Replace(".", "", StringComparison.Ordinal)}E{exponent}"), plain];
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
