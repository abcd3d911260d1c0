using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Families;

/// <summary>
/// A row of the view that says which family a component counts to now: the link it was saved with, after splits and merges. Everything that asks over
/// teardowns reads this; the page of a published revision reads the component's own link.
/// </summary>
public sealed class FamilyLink
{
    /// <summary>The component's revision.</summary>
    public RevisionId RevisionId { get; init; }

    /// <summary>The component.</summary>
    public ComponentId ComponentId { get; init; }

    /// <summary>The family before merges; filtering by it uses an index.</summary>
    public FamilyId LinkedFamilyId { get; init; }

    /// <summary>The family after merges.</summary>
    public FamilyId FamilyId { get; init; }
}
