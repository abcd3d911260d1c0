using System.ComponentModel;

namespace Catalogue.Data.Teardowns;

/// <summary>What is filled in for a board.</summary>
public sealed class BoardForm
{
    /// <summary>What the reviewer calls the board, 1 to 120 characters.</summary>
    [Description("What the reviewer calls the board, 1 to 120 characters.")]
    public string? Name { get; set; }

    /// <summary>The id of the board it sits on.</summary>
    [Description("The id of the board it sits on.")]
    public Guid? ParentId { get; set; }

    /// <summary>Topology tags, such as flyback.</summary>
    [Description("Topology tags, such as flyback.")]
    public IReadOnlyList<string>? Topology { get; set; }

    /// <summary>A remark.</summary>
    [Description("A remark.")]
    public string? Note { get; set; }
}
