namespace Catalogue.Domain.Families;

/// <summary>One family declared to be another: its address leads there and its parts count there. Nothing is moved, so undoing it loses nothing.</summary>
public sealed class FamilyMerge
{
    /// <summary>Its id.</summary>
    public required FamilyMergeId Id { get; init; }

    /// <summary>The family that goes.</summary>
    public required FamilyId FromId { get; init; }

    /// <summary>The family that it goes into.</summary>
    public required FamilyId IntoId { get; init; }

    /// <summary>Families that had gone into <see cref="FromId"/> before and were led on.</summary>
    public required FamilyId[] Followers { get; init; }

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
