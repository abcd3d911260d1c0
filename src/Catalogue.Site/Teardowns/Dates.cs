using System.Globalization;

namespace Catalogue.Site.Teardowns;

/// <summary>Days as pages print them, <c>18 Nov 2025</c>, in UTC.</summary>
internal static class Dates
{
    public static string Day(DateTimeOffset moment) => moment.UtcDateTime.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    public static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>A moment with its time, <c>18 Nov 2025, 09:30 UTC</c>.</summary>
    public static string Moment(DateTimeOffset moment) => moment.UtcDateTime.ToString("d MMM yyyy, HH:mm 'UTC'", CultureInfo.InvariantCulture);

    public static string MachineMoment(DateTimeOffset moment) => moment.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);

    public static string Machine(DateTimeOffset moment) => moment.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
