using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Rails;

/// <summary>
/// A voltage that was read at the bench where charge may be stored. It speaks for the moment it was taken; it stands beside a caution and
/// never in its place.
/// </summary>
public sealed class DischargeReading : IEditableRecord
{
    /// <summary>Stands wherever readings are shown.</summary>
    public const string Scope = "A reading speaks for its moment only: capacitors recover, and a unit may have been connected since. Measure again before touching.";

    /// <summary>No power product is beyond this, in volt.</summary>
    public const double HighestVolts = 100_000;

    /// <summary>How long a reading is fresh; a house rule, see <c>docs/decisions/0008-readings-go-stale.md</c>.</summary>
    public static TimeSpan FreshFor { get; } = TimeSpan.FromMinutes(10);

    /// <summary>How far two clocks may be apart; a moment later than that is in the future.</summary>
    public static TimeSpan ClockDifference { get; } = TimeSpan.FromMinutes(1);

    /// <summary>No moment before this is meant, in UTC.</summary>
    public static DateTimeOffset Earliest { get; } = new(1990, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required DischargeReadingId Id { get; init; }

    /// <summary>Its place in the list, from 0.</summary>
    public int Position { get; set; }

    /// <summary>The rail whose charge was looked for, or null.</summary>
    public RailId? RailId { get; set; }

    /// <summary>Where the probes were, in words, such as <c>across C1</c>.</summary>
    public required string Place { get; set; }

    /// <summary>The lowest case, in volt.</summary>
    public required double LowV { get; set; }

    /// <summary>The reading without its sign, in volt, 0 to <see cref="HighestVolts"/>.</summary>
    public required double NominalV { get; set; }

    /// <summary>The highest case, in volt; it alone decides on which side of the limit the reading is.</summary>
    public required double HighV { get; set; }

    /// <summary>When it was taken.</summary>
    public required DateTimeOffset TakenAt { get; set; }

    /// <summary>The instrument, or null where not stated.</summary>
    public string? Instrument { get; set; }

    /// <inheritdoc />
    public uint Version { get; init; }

    /// <summary>The three cases as an interval, in volt.</summary>
    public Interval Volts => Interval.Create(LowV, NominalV, HighV);

    /// <summary>From this moment on the reading is stale.</summary>
    public DateTimeOffset FreshUntil => TakenAt + FreshFor;

    /// <summary>How old it is, never below zero.</summary>
    public TimeSpan AgeAt(DateTimeOffset now) => now > TakenAt ? now - TakenAt : TimeSpan.Zero;

    /// <summary>What it says at a time. A moment that lies in the future tells no age, and counts as stale.</summary>
    public DischargeState StateAt(DateTimeOffset now)
    {
        if (now >= FreshUntil || TakenAt > now + ClockDifference)
            return DischargeState.Stale;
        return HighV < Cautions.TouchLimitVolts ? DischargeState.BelowLimit : DischargeState.Charged;
    }

    /// <summary>The last reading at each place of each rail, newest first: what was read there before says nothing more.</summary>
    public static IReadOnlyList<DischargeReading> LastOfEachPlace(IEnumerable<DischargeReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        return
        [
            .. readings
                .OrderByDescending(reading => reading.TakenAt)
                .ThenByDescending(reading => reading.Position)
                .DistinctBy(reading => (reading.RailId, reading.Place.Trim().ToUpperInvariant())),
        ];
    }
}
