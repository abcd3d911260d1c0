using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Rails;

/// <summary>A named node of the power path. What is known of it stands in its <see cref="RailQuantity"/> rows.</summary>
public sealed class Rail : IEditableRecord
{
    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required RailId Id { get; init; }

    /// <summary>Its place in the list, from 0.</summary>
    public int Position { get; set; }

    /// <summary>What the reviewer calls it; unique in the revision.</summary>
    public required string Name { get; set; }

    /// <summary>What it is.</summary>
    public RailKind Kind { get; set; }

    /// <summary>The port whose rail it is, or null; what the port offers then says what the rail carries.</summary>
    public PortId? PortId { get; set; }

    /// <summary>A remark, or null.</summary>
    public string? Note { get; set; }

    /// <inheritdoc />
    public uint Version { get; init; }
}
