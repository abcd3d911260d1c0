namespace Catalogue.Domain.BenchLogs;

/// <summary>How a log writes its times.</summary>
internal enum LogTimeForm
{
    /// <summary>Date and time in one cell.</summary>
    DateTime,

    /// <summary>The date in one column, the time of day in another.</summary>
    DateAndClock,

    /// <summary>Time of day without a date.</summary>
    Clock,

    /// <summary>Hours, minutes and seconds since the start.</summary>
    Elapsed,

    /// <summary>A counter in a unit of time.</summary>
    Counter,

    /// <summary>Days since the start of 1900, as spreadsheets count them.</summary>
    DayNumber,
}
