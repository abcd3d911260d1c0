using Catalogue.Domain.Components;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Domain.Callouts;

/// <summary>
/// A numbered mark on a photo. Coordinates are fractions of the upright picture, 0 to 1, from its upper left corner, so that no rendition
/// or tile moves them.
/// </summary>
public sealed class Callout : IEditableRecord
{
    /// <summary>The most corners of a polygon.</summary>
    public const int MaxCorners = 64;

    /// <inheritdoc />
    public required RevisionId RevisionId { get; set; }

    /// <summary>Its id.</summary>
    public required CalloutId Id { get; init; }

    /// <summary>The photo.</summary>
    public required PhotoId PhotoId { get; init; }

    /// <summary>
    /// Its number, from 1, counted for each board (or for the product's own photos). One component carries one number, however many
    /// photos it is marked on.
    /// </summary>
    public required int Number { get; set; }

    /// <summary>The shape.</summary>
    public CalloutShape Shape { get; set; }

    /// <summary>Fraction of the width.</summary>
    public required double X { get; set; }

    /// <summary>Fraction of the height.</summary>
    public required double Y { get; set; }

    /// <summary>Width of a box as a fraction of the picture's, else null.</summary>
    public double? Width { get; set; }

    /// <summary>Height of a box as a fraction of the picture's, else null.</summary>
    public double? Height { get; set; }

    /// <summary>Corners of a polygon as x, y, x, y …, else empty.</summary>
    public double[] Corners { get; set; } = [];

    /// <summary>The component it points at, or null.</summary>
    public ComponentId? ComponentId { get; set; }

    /// <summary>The board it points at, or null.</summary>
    public BoardId? BoardId { get; set; }

    /// <summary>The port it points at, or null.</summary>
    public PortId? PortId { get; set; }

    /// <inheritdoc />
    public uint Version { get; init; }
}
