using Catalogue.Domain.Components.Lists;

namespace Catalogue.Data.Components.Lists;

/// <summary>What the columns of one layout of lists hold, as a person said. A layout is the names of the columns in their order.</summary>
public sealed class ListLayout
{
    /// <summary>SHA-256 of the names, in hexadecimal.</summary>
    public required string Key { get; init; }

    /// <summary>The names.</summary>
    public required string[] Names { get; init; }

    /// <summary>What was said, by the column's name; null as a meaning only keeps the cells.</summary>
    public required IReadOnlyDictionary<string, ColumnMeaning?> Meanings { get; set; }

    /// <summary>Who said it last.</summary>
    public required string ChangedBy { get; set; }

    /// <summary>When.</summary>
    public required DateTimeOffset ChangedAt { get; set; }
}
