namespace Catalogue.Testing;

/// <summary>A clock that stands until it is moved; each reading is a millisecond later than the one before, so that moments differ.</summary>
public sealed class TestClock : TimeProvider
{
    private long _ticks = new DateTimeOffset(2031, 5, 6, 7, 8, 9, TimeSpan.Zero).Ticks;

    /// <inheritdoc />
    public override DateTimeOffset GetUtcNow() => new(Interlocked.Add(ref _ticks, TimeSpan.TicksPerMillisecond), TimeSpan.Zero);

    /// <summary>Moves the clock on.</summary>
    public void Advance(TimeSpan by) => Interlocked.Add(ref _ticks, by.Ticks);
}
