namespace Catalogue.Data.Questions;

/// <summary>What a ranking leaves out because a figure is unknown: never ranked as zero, always counted.</summary>
/// <param name="Count">How many.</param>
/// <param name="Reasons">What they lack, the most frequent first; one figure may lack several things.</param>
/// <param name="Rows">The first of them, by name.</param>
public sealed record NotRanked(int Count, IReadOnlyList<NotRanked.Reason> Reasons, IReadOnlyList<NotRanked.Row> Rows)
{
    /// <summary>Nothing is left out.</summary>
    public static NotRanked Nothing { get; } = new(0, [], []);

    /// <summary>Something that is missing.</summary>
    /// <param name="Code">Its lasting code.</param>
    /// <param name="Words">What it is.</param>
    /// <param name="Count">How many figures lack it.</param>
    public sealed record Reason(string Code, string Words, int Count);

    /// <summary>A component that is not ranked.</summary>
    /// <param name="Teardown">The teardown's address.</param>
    /// <param name="Product">The product, brand first.</param>
    /// <param name="ComponentName">The component in words.</param>
    /// <param name="Missing">What it lacks, in words.</param>
    public sealed record Row(string Teardown, string Product, string ComponentName, IReadOnlyList<string> Missing);
}
