namespace Catalogue.Domain.Components.Lists;

/// <summary>What becomes of a part line on a board.</summary>
/// <param name="Row">The line.</param>
/// <param name="Value">What it says of value and ratings.</param>
/// <param name="Action">What is done.</param>
/// <param name="Component">The component as it will stand: a new one, or a copy of the one that is there.</param>
/// <param name="Changes">The fields that get another value; of a new component none are named.</param>
/// <param name="Kept">Fields in which a person's word stands although the list says something else.</param>
/// <param name="Ratings">What becomes of its ratings.</param>
public sealed record PlannedRow(
    ListRow Row,
    RowValue Value,
    PlannedRowAction Action,
    BoardComponent Component,
    IReadOnlyList<PlannedField> Changes,
    IReadOnlyList<PlannedField> Kept,
    IReadOnlyList<PlannedRating> Ratings)
{
    /// <summary>True where the part number is new or another one, so that it leads to a family.</summary>
    public bool HasNewPartNumber => Component.PartNumber is not null && (Action is PlannedRowAction.Add || Changes.Any(change => change.Field == nameof(BoardComponent.PartNumber)));
}
