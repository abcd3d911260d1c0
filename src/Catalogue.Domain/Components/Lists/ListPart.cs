namespace Catalogue.Domain.Components.Lists;

/// <summary>What was read from one or several tables.</summary>
/// <param name="Columns">The columns, each name with its meaning once.</param>
/// <param name="Rows">The part lines.</param>
/// <param name="Rejected">The part lines that could not be taken over.</param>
/// <param name="Readings">Cells that may be read in more than one way.</param>
internal sealed record ListPart(
    IReadOnlyList<ListColumn> Columns, IReadOnlyList<ListRow> Rows, IReadOnlyList<RejectedRow> Rejected, IReadOnlyList<OpenReading> Readings)
{
    /// <summary>Several as one, in order.</summary>
    public static ListPart Join(IReadOnlyList<ListPart> parts) => parts is [var only] ? only : new(
        [.. parts.SelectMany(part => part.Columns).Distinct()],
        [.. parts.SelectMany(part => part.Rows)],
        [.. parts.SelectMany(part => part.Rejected)],
        [.. parts.SelectMany(part => part.Readings)]);

    /// <summary>Part lines, the rejected ones included.</summary>
    public int Count => Rows.Count + Rejected.Count;
}
