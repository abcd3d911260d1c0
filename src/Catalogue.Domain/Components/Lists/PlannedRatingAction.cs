namespace Catalogue.Domain.Components.Lists;

/// <summary>What an import does with a rating.</summary>
public enum PlannedRatingAction
{
    /// <summary>It is recorded.</summary>
    Add,

    /// <summary>The one that an earlier import recorded gets the list's value.</summary>
    Update,

    /// <summary>The one that an earlier import recorded goes: the list does not state it any more.</summary>
    Remove,

    /// <summary>A person's value stands although the list says something else.</summary>
    Keep,
}
