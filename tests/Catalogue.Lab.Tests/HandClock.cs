namespace Catalogue.Lab.Tests;

/// <summary>A clock in UTC that stands until it is moved; moving it fires the timers that are due, in their order.</summary>
internal sealed class HandClock : TimeProvider
{
    private readonly List<HandTimer> _timers = [];
    private DateTimeOffset _now = new(2031, 5, 6, 14, 0, 0, TimeSpan.Zero);

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    /// <summary>How many timers run.</summary>
    public int Running => _timers.Count;

    public override DateTimeOffset GetUtcNow() => _now;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new HandTimer(this, () => callback(state), period) { Due = _now + dueTime };
        _timers.Add(timer);
        return timer;
    }

    public void Advance(TimeSpan by)
    {
        var until = _now + by;
        while (_timers.Where(timer => timer.Due <= until).MinBy(timer => timer.Due) is { } next)
        {
            _now = next.Due;
            next.Due += next.Period;
            next.Fire();
        }

        _now = until;
    }

    private sealed class HandTimer(HandClock clock, Action fire, TimeSpan period) : ITimer
    {
        public TimeSpan Period => period;

        public DateTimeOffset Due { get; set; }

        public void Fire() => fire();

        public bool Change(TimeSpan dueTime, TimeSpan period) => throw new NotSupportedException("No page changes a timer.");

        public void Dispose() => clock._timers.Remove(this);

        public ValueTask DisposeAsync()
        {
            Dispose();
            return ValueTask.CompletedTask;
        }
    }
}
