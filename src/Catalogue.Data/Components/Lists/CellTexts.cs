using System.Globalization;
using Catalogue.Domain.Components.Lists;

namespace Catalogue.Data.Components.Lists;

/// <summary>Numbers and dates of cells as the texts that a person sees in the sheet.</summary>
/// <param name="styles">How the workbook's styles show numbers.</param>
internal sealed class CellTexts(CellStyles styles)
{
    // A spreadsheet keeps 15 digits.
    private const string Digits = "G15";
    private const double FirstWithLostDigits = 1e15;

    private static readonly DateTime From1900 = new(1899, 12, 30, 0, 0, 0, DateTimeKind.Unspecified);
    private static readonly DateTime From1904 = new(1904, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);

    /// <summary>The text of a number. What is not a number comes back as it is.</summary>
    public (string Text, CellDoubt? Doubt) OfNumber(string value, int column, int style)
    {
        if (!double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) || !double.IsFinite(number))
            return (value, null);
        if (styles.IsDate(style))
        {
            return Date(number) is { } date
                ? (Text(date), new CellDoubt.IsDate(column, date, styles.Code(style)))
                : (Plain(number), null);
        }

        var plain = Plain(number);
        var shown = styles.Show(style, number);
        if (styles.IsExponent(style))
            return (shown is not null && SameDigits(shown.Split('E', 'e')[0], plain.Split('E')[0]) ? shown : plain, new CellDoubt.HasExponent(column, number));
        if (Math.Abs(number) >= FirstWithLostDigits)
            return (plain, new CellDoubt.LostDigits(column));
        if (shown is null)
            return (plain, null);
        return SameDigits(shown, plain) ? (shown, null) : (plain, new CellDoubt.IsRounded(column, shown));
    }

    /// <summary>The text of a date as the standard's strict form stores it (ISO 8601).</summary>
    public (string Text, CellDoubt? Doubt) OfDate(string value, int column, string format) =>
        DateTime.TryParse(value, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out var date)
            ? (Text(date), new CellDoubt.IsDate(column, date, format.Length > 0 ? format : "yyyy-mm-dd"))
            : (value, null);

    private DateTime? Date(double number)
    {
        // Day 60 of 1900 never was; spreadsheets count it, so that what comes before it is a day late.
        var days = styles.Counts1904 || number >= 61 ? number : number + 1;
        return number is < 0 or >= 2_958_466 ? null : (styles.Counts1904 ? From1904 : From1900).AddDays(days).AddMilliseconds(0.5) is var date
            ? new DateTime(date.Ticks / TimeSpan.TicksPerSecond * TimeSpan.TicksPerSecond, DateTimeKind.Unspecified)
            : null;
    }

    private static string Text(DateTime date) => date.ToString(date.TimeOfDay == TimeSpan.Zero ? "yyyy-MM-dd" : "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);

    private static string Plain(double number)
    {
        var short15 = number.ToString(Digits, CultureInfo.InvariantCulture);
        return short15.Contains('E', StringComparison.Ordinal) && decimal.TryParse(short15, NumberStyles.Float, CultureInfo.InvariantCulture, out var whole)
            ? whole.ToString(CultureInfo.InvariantCulture)
            : short15;
    }

    /// <summary>True where both write the same digits, whatever zeros, marks and unit letters stand round them.</summary>
    private static bool SameDigits(string shown, string plain) => Significant(shown) == Significant(plain);

    private static string Significant(string text) => new string([.. text.Where(char.IsAsciiDigit)]).Trim('0');
}
