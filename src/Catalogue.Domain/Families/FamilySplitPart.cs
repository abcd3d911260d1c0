using Catalogue.Domain.Components;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Families;

/// <summary>A component that a split moved.</summary>
public sealed class FamilySplitPart
{
    /// <summary>The split.</summary>
    public required FamilySplitId SplitId { get; init; }

    /// <summary>The component's revision.</summary>
    public required RevisionId RevisionId { get; init; }

    /// <summary>The component.</summary>
    public required ComponentId ComponentId { get; init; }

    /// <summary>The family it counted to before.</summary>
    public required FamilyId BeforeId { get; init; }
}
