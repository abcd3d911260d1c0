using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Teardowns;

/// <summary>A draft in the hands of one change, inside its transaction.</summary>
/// <param name="Context">The context of the transaction.</param>
/// <param name="Teardown">The teardown; its row is locked.</param>
/// <param name="Revision">The draft.</param>
/// <param name="CopiedFrom">The published revision that this very change opened the draft from, or null when the draft stood already.</param>
public sealed record Draft(CatalogueContext Context, Teardown Teardown, Revision Revision, Revision? CopiedFrom)
{
    /// <summary>True where rows that figures rest on were written past the context.</summary>
    internal bool HasMovedFigures { get; private set; }

    /// <summary>Says that rows that figures rest on were written past the context, which cannot see it (<see cref="BulkRows"/>).</summary>
    internal void MoveFigures() => HasMovedFigures = true;
}
