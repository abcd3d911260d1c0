using System.ComponentModel;
using Catalogue.Domain.Callouts;

namespace Catalogue.Data.Callouts;

/// <summary>What is filled in for a callout. Coordinates are fractions of the upright picture from its upper left corner.</summary>
public sealed class CalloutForm
{
    /// <summary>pin, box or polygon.</summary>
    [Description("pin, box or polygon.")]
    public CalloutShape Shape { get; set; }

    /// <summary>Fraction of the width, 0 to 1; of a box its left edge, of a polygon left out.</summary>
    [Description("Fraction of the width, 0 to 1; of a box its left edge, of a polygon left out.")]
    public double? X { get; set; }

    /// <summary>Fraction of the height, 0 to 1; of a box its top edge, of a polygon left out.</summary>
    [Description("Fraction of the height, 0 to 1; of a box its top edge, of a polygon left out.")]
    public double? Y { get; set; }

    /// <summary>Width of a box as a fraction of the picture.</summary>
    [Description("Width of a box as a fraction of the picture.")]
    public double? Width { get; set; }

    /// <summary>Height of a box as a fraction of the picture.</summary>
    [Description("Height of a box as a fraction of the picture.")]
    public double? Height { get; set; }

    /// <summary>Corners of a polygon as x, y, x, y; three to 64 corners.</summary>
    [Description("Corners of a polygon as x, y, x, y; three to 64 corners.")]
    public IReadOnlyList<double>? Corners { get; set; }

    /// <summary>Its number; when left out, the component's own, else the next free one of the board.</summary>
    [Description("Its number; when left out, the component's own, else the next free one of the board.")]
    public int? Number { get; set; }

    /// <summary>The id of the component it points at.</summary>
    [Description("The id of the component it points at.")]
    public Guid? ComponentId { get; set; }

    /// <summary>The id of the board it points at.</summary>
    [Description("The id of the board it points at.")]
    public Guid? BoardId { get; set; }

    /// <summary>The id of the port it points at.</summary>
    [Description("The id of the port it points at.")]
    public Guid? PortId { get; set; }
}
