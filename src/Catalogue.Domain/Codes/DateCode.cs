using System.Globalization;

namespace Catalogue.Domain.Codes;

/// <summary>Date codes of makers: year and week in digits, or letter of the year and character of the month.</summary>
/// <remarks>
/// <para>Every reading is decided against a given day: nothing later than it, and of a repeating cycle the latest first. A week must exist in
/// its year: 2020, 2026 and 2032 have 53. Where <c>YYWW</c> and <c>WWYY</c> are both possible, the former comes first and the latter is shown;
/// the latter only for the last twenty years (house rule).</para>
/// <para>Year letters A B C D E F H J K L M N P R S T U V W X are 1990 to 2009 and again from 2010; months 1 to 9, O, N, D. Source: ISO 8601
/// for weeks, IEC 60062 for letters, trade usage for the digits. Makers use private date letters too: a reading is one only if the scheme is
/// declared or nothing else explains the characters.</para>
/// </remarks>
public static class DateCode
{
    private const string YearLetters = "ABCDEFHJKLMNPRSTUVWX";
    private const int FirstCycle = 1990;

    // The older order of week and year is not read into parts older than this.
    private const int OldestWeekYear = 20;

    /// <summary>All readings, surest first; empty where none is possible.</summary>
    /// <param name="text">Two, three or four characters.</param>
    /// <param name="asOf">The day against which the code is read: the day of the teardown, for instance.</param>
    public static IReadOnlyList<DateReading> Decode(string text, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length switch
        {
            4 when text.All(char.IsAsciiDigit) => FourDigits(text, asOf),
            3 when text.All(char.IsAsciiDigit) => ThreeDigits(text, asOf),
            2 => Letters(text, asOf),
            _ => [],
        };
    }

    private static List<DateReading> FourDigits(string text, DateOnly asOf)
    {
        var (first, second) = (Number(text[..2]), Number(text[2..]));
        var readings = new List<DateReading>(2);
        if (IsWeek(2000 + first, second, asOf))
            readings.Add(new DateReading(DateScheme.YearWeek, 2000 + first, second, null, Certainty.High, text));
        if (IsWeek(2000 + second, first, asOf) && 2000 + second >= asOf.Year - OldestWeekYear)
            readings.Add(new DateReading(DateScheme.WeekYear, 2000 + second, first, null, Certainty.Medium, text));
        return readings is [var year, var week]
            ? first == second ? [year] : [year with { Confidence = Certainty.Medium }, week with { Confidence = Certainty.Low }]
            : readings;
    }

    private static List<DateReading> ThreeDigits(string text, DateOnly asOf)
    {
        var (digit, week) = (text[0] - '0', Number(text[1..]));
        var readings = new List<DateReading>(2);
        for (var year = asOf.Year; year > asOf.Year - 20 && year >= 1; year--)
            if (year % 10 == digit && IsWeek(year, week, asOf))
                readings.Add(new DateReading(DateScheme.ShortYearWeek, year, week, null, readings.Count == 0 ? Certainty.Medium : Certainty.Low, text));
        return readings;
    }

    private static List<DateReading> Letters(string text, DateOnly asOf)
    {
        var index = YearLetters.IndexOf(text[0], StringComparison.Ordinal);
        int? month = text[1] switch
        {
            >= '1' and <= '9' => text[1] - '0',
            'O' => 10,
            'N' => 11,
            'D' => 12,
            _ => null,
        };
        if (index < 0 || month is not { } known)
            return [];
        var readings = new List<DateReading>(2);
        var latest = FirstCycle + index + ((asOf.Year - FirstCycle - index) / YearLetters.Length * YearLetters.Length);
        for (var year = latest; year >= FirstCycle && readings.Count < 2; year -= YearLetters.Length)
            if (new DateOnly(year, known, 1) <= asOf)
                readings.Add(new DateReading(DateScheme.YearLetterMonth, year, null, known, readings.Count == 0 ? Certainty.High : Certainty.Low, text));
        return readings;
    }

    private static bool IsWeek(int year, int week, DateOnly asOf) =>
        week >= 1 && week <= ISOWeek.GetWeeksInYear(year) && DateOnly.FromDateTime(ISOWeek.ToDateTime(year, week, DayOfWeek.Monday)) <= asOf;

    private static int Number(string digits) => int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);
}
