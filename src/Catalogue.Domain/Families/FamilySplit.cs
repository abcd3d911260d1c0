namespace Catalogue.Domain.Families;

/// <summary>Parts of one family declared to be of another. Published components keep the link they were published with; the new one stands beside it.</summary>
public sealed class FamilySplit
{
    /// <summary>Its id.</summary>
    public required FamilySplitId Id { get; init; }

    /// <summary>The family that they were of.</summary>
    public required FamilyId FromId { get; init; }

    /// <summary>The family that they are of now.</summary>
    public required FamilyId ToId { get; init; }

    /// <summary>The match keys of the aliases that went along.</summary>
    public required string[] Aliases { get; init; }

    /// <summary>The family of each of them before, in the same order: <see cref="FromId"/>, or one that was merged into it.</summary>
    public required FamilyId[] AliasesBefore { get; init; }

    /// <summary>The top marks that went along.</summary>
    public required TopMarkId[] TopMarks { get; init; }

    /// <summary>The family of each of them before, in the same order.</summary>
    public required FamilyId[] TopMarksBefore { get; init; }

    /// <summary>True where the new family was made by this split.</summary>
    public required bool MadeFamily { get; init; }

    /// <summary>Why, or null.</summary>
    public string? Note { get; init; }

    /// <summary>When.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Who did it.</summary>
    public required string Who { get; init; }

    /// <summary>When it was undone, or null.</summary>
    public DateTimeOffset? UndoneAt { get; set; }

    /// <summary>Who undid it, or null.</summary>
    public string? UndoneBy { get; set; }
}
