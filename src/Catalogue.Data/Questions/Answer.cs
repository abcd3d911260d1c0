namespace Catalogue.Data.Questions;

/// <summary>An answer to a question.</summary>
/// <param name="Columns">The columns in their order.</param>
/// <param name="Rows">The rows in their order.</param>
/// <param name="NotRanked">What could not be ranked.</param>
/// <param name="Next">The mark to ask the next page with, or null.</param>
/// <param name="Total">How many rows there are on all pages.</param>
public sealed record Answer(IReadOnlyList<AnswerColumn> Columns, IReadOnlyList<AnswerRow> Rows, NotRanked NotRanked, string? Next, int Total);
