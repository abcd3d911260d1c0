using System.ComponentModel;

namespace Catalogue.Data.Families;

/// <summary>What is filled in for a split: which parts go, and where to.</summary>
public sealed class SplitForm
{
    /// <summary>The number of the family that they go to; opened where there is none.</summary>
    [Description("The number of the family that they go to; opened where there is none.")]
    public string? Into { get; set; }

    /// <summary>Components that go, by id; all their revisions go.</summary>
    [Description("Components that go, by id; all their revisions go.")]
    public IReadOnlyList<Guid> Components { get; set; } = [];

    /// <summary>Texts: every component of the family whose marking or part number reads so goes.</summary>
    [Description("Texts: every component of the family whose marking as read or part number is this text goes; blanks at the ends and case do not matter.")]
    public IReadOnlyList<string> Texts { get; set; } = [];

    /// <summary>Names of the family that go along.</summary>
    [Description("Names of the family that go along.")]
    public IReadOnlyList<string> Aliases { get; set; } = [];

    /// <summary>Top marks that go along, by id.</summary>
    [Description("Top marks that go along, by id.")]
    public IReadOnlyList<Guid> TopMarks { get; set; } = [];

    /// <summary>Why.</summary>
    [Description("Why.")]
    public string? Note { get; set; }
}
