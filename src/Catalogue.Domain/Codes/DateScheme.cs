namespace Catalogue.Domain.Codes;

/// <summary>How a date code was read.</summary>
public enum DateScheme
{
    /// <summary>Two digits of the year, then the ISO week.</summary>
    YearWeek,

    /// <summary>The ISO week, then two digits of the year.</summary>
    WeekYear,

    /// <summary>One digit of the year, then the ISO week; repeats every ten years.</summary>
    ShortYearWeek,

    /// <summary>Letter of the year and character of the month (IEC 60062); repeats every twenty years.</summary>
    YearLetterMonth,
}
