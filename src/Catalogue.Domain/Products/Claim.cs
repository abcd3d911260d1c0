using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Products;

/// <summary>A stated quantity with its source.</summary>
public sealed class Claim : IEditableRecord
{
    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required ClaimId Id { get; init; }

    /// <summary>Its place in the list, from 0.</summary>
    public int Position { get; set; }

    /// <summary>What is claimed, such as <c>energy</c> or <c>AC output, continuous</c>.</summary>
    public required string Subject { get; set; }

    /// <summary>The words as printed.</summary>
    public required string AsPrinted { get; set; }

    /// <summary>The value in the base unit, or null where the words give none.</summary>
    public double? Value { get; set; }

    /// <summary>The unit of <see cref="Value"/>, or null.</summary>
    public Unit? Unit { get; set; }

    /// <summary>Where it is printed.</summary>
    public ClaimPlace Place { get; set; }

    /// <summary>The port it speaks of, or null.</summary>
    public PortId? PortId { get; set; }

    /// <inheritdoc />
    public uint Version { get; init; }
}
