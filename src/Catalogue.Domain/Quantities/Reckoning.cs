namespace Catalogue.Domain.Quantities;

/// <summary>What came of a sum: its result, or why there is none. Never a number that only looks like a result.</summary>
/// <typeparam name="T">The result.</typeparam>
public abstract record Reckoning<T>
{
    private Reckoning()
    {
    }

    /// <summary>It was computed.</summary>
    /// <param name="Value">The result.</param>
    public sealed record Done(T Value) : Reckoning<T>;

    /// <summary>It cannot be computed.</summary>
    /// <param name="Refusals">The inputs that stand in the way, in the order of the formula; at least one.</param>
    public sealed record Refused(IReadOnlyList<RefusedInput> Refusals) : Reckoning<T>
    {
        /// <summary>A refusal for one reason.</summary>
        public Refused(string input, string reason)
            : this([new RefusedInput(input, reason)])
        {
        }
    }

    /// <summary>Goes on computing with the result; a refusal stays one.</summary>
    public Reckoning<TNext> Then<TNext>(Func<T, Reckoning<TNext>> next)
    {
        ArgumentNullException.ThrowIfNull(next);
        return this is Done done ? next(done.Value) : new Reckoning<TNext>.Refused(((Refused)this).Refusals);
    }
}
