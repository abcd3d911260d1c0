using System.Globalization;

namespace Catalogue.Domain.Codes;

/// <summary>One way to read a date code.</summary>
/// <param name="Scheme">The scheme.</param>
/// <param name="Year">The full year.</param>
/// <param name="IsoWeek">The ISO week, or null where the code gives a month.</param>
/// <param name="Month">The month, or null where the code gives a week.</param>
/// <param name="Confidence">How sure the reading is among all readings of the code.</param>
/// <param name="Used">The characters that were read.</param>
public sealed record DateReading(DateScheme Scheme, int Year, int? IsoWeek, int? Month, Certainty Confidence, string Used)
{
    /// <summary>The first day: the Monday of the week, or the first of the month.</summary>
    public DateOnly FirstDay => IsoWeek is { } week
        ? DateOnly.FromDateTime(ISOWeek.ToDateTime(Year, week, DayOfWeek.Monday))
        : new DateOnly(Year, Month!.Value, 1);

    /// <summary>Such as <c>2023, week 14</c> or <c>2021-05</c>.</summary>
    public override string ToString() =>
        IsoWeek is { } week ? string.Create(CultureInfo.InvariantCulture, $"{Year}, week {week}") : string.Create(CultureInfo.InvariantCulture, $"{Year}-{Month:00}");
}
