using Catalogue.Domain.Components;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Families;

/// <summary>The family that a published component counts to now, where that is no longer the one it was published with.</summary>
public sealed class FamilyMove
{
    /// <summary>The component's revision.</summary>
    public required RevisionId RevisionId { get; init; }

    /// <summary>The component.</summary>
    public required ComponentId ComponentId { get; init; }

    /// <summary>The family.</summary>
    public required FamilyId FamilyId { get; set; }
}
