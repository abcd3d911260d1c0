namespace Catalogue.Domain.Teardowns;

/// <summary>A circuit board or module of the product.</summary>
public sealed class Board : IEditableRecord
{
    /// <summary>Longest name.</summary>
    public const int MaxNameLength = 120;

    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required BoardId Id { get; init; }

    /// <summary>The board it sits on, or null.</summary>
    public BoardId? ParentId { get; set; }

    /// <summary>Its place in the record, from 0; the first is printed as board A.</summary>
    public int Position { get; set; }

    /// <summary>What the reviewer calls it.</summary>
    public required string Name { get; set; }

    /// <summary>Topology tags, such as <c>flyback</c>.</summary>
    public string[] Topology { get; set; } = [];

    /// <summary>A remark, or null.</summary>
    public string? Note { get; set; }

    /// <inheritdoc />
    public uint Version { get; init; }

    /// <summary>The letter a board is printed with: A to Z, then A2, B2 and so on.</summary>
    public static string Letter(int position) =>
        (char)('A' + (position % 26)) + (position < 26 ? "" : ((position / 26) + 1).ToString(System.Globalization.CultureInfo.InvariantCulture));
}
