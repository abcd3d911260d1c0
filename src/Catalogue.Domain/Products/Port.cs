using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Products;

/// <summary>A connector of the product.</summary>
public sealed class Port : IEditableRecord
{
    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required PortId Id { get; init; }

    /// <summary>Its place in the list, from 0; printed from 1.</summary>
    public int Position { get; set; }

    /// <summary>What the product calls it, such as <c>USB-C 1</c>.</summary>
    public required string Name { get; set; }

    /// <summary>The kind of connector in words, such as <c>USB-C</c> or <c>AC outlet</c>.</summary>
    public required string Kind { get; set; }

    /// <summary>Which way power flows.</summary>
    public PortDirection Direction { get; set; }

    /// <summary>How many alike, from 1.</summary>
    public int Quantity { get; set; } = 1;

    /// <summary>What is printed beside it, or null.</summary>
    public string? AsPrinted { get; set; }

    /// <summary>Protocols seen, as written by the reviewer.</summary>
    public string[] Protocols { get; set; } = [];

    /// <summary>Source capability words as captured, each <c>0x</c> and eight hex digits.</summary>
    public string[] CapabilityWords { get; set; } = [];

    /// <inheritdoc />
    public uint Version { get; init; }
}
