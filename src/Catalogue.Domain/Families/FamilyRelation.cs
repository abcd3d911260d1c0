namespace Catalogue.Domain.Families;

/// <summary>What a reviewer says about two families; one word for each pair.</summary>
public sealed class FamilyRelation
{
    /// <summary>Longest note.</summary>
    public const int MaxNoteLength = 500;

    /// <summary>The family whose id is the smaller one.</summary>
    public required FamilyId OneId { get; init; }

    /// <summary>The other one.</summary>
    public required FamilyId OtherId { get; init; }

    /// <summary>How they stand to each other.</summary>
    public required FamilyRelationKind Kind { get; set; }

    /// <summary>Why, or null.</summary>
    public string? Note { get; set; }

    /// <summary>When it was said last.</summary>
    public required DateTimeOffset At { get; set; }

    /// <summary>Who said it last.</summary>
    public required string Who { get; set; }
}
