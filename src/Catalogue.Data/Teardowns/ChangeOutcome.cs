namespace Catalogue.Data.Teardowns;

/// <summary>What came of a change.</summary>
/// <typeparam name="T">What a change that was done gives back.</typeparam>
public abstract record ChangeOutcome<T>
{
    private ChangeOutcome()
    {
    }

    /// <summary>It was done and is on disk.</summary>
    public sealed record Done(T Value) : ChangeOutcome<T>;

    /// <summary>What it was to be done to does not exist.</summary>
    /// <param name="Reason">Says what was looked for.</param>
    public sealed record NotFound(string Reason) : ChangeOutcome<T>;

    /// <summary>It may not be done; nothing was changed.</summary>
    /// <param name="Field">The field that is wrong, or null where it is not one field.</param>
    /// <param name="Reason">Says what was wrong and what would be right.</param>
    public sealed record Refused(string? Field, string Reason) : ChangeOutcome<T>;

    /// <summary>Somebody saved the same record first; nothing was changed.</summary>
    /// <param name="Reason">Says which record.</param>
    public sealed record Stale(string Reason) : ChangeOutcome<T>;

    /// <summary>The same outcome of another kind, for everything but <see cref="Done"/>.</summary>
    public ChangeOutcome<TOther> As<TOther>() => this switch
    {
        NotFound x => new ChangeOutcome<TOther>.NotFound(x.Reason),
        Refused x => new ChangeOutcome<TOther>.Refused(x.Field, x.Reason),
        Stale x => new ChangeOutcome<TOther>.Stale(x.Reason),
        _ => throw new InvalidOperationException("A change that was done has a value of its own."),
    };
}
