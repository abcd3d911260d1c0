namespace Catalogue.Data.Teardowns;

/// <summary>One page of a list.</summary>
/// <typeparam name="T">A row.</typeparam>
/// <param name="Items">The rows, in order.</param>
/// <param name="Next">The mark to ask the next page with, or null on the last one.</param>
public sealed record Page<T>(IReadOnlyList<T> Items, string? Next);
