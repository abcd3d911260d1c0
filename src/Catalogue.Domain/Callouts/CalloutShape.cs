namespace Catalogue.Domain.Callouts;

/// <summary>The shape of a mark on a photo.</summary>
public enum CalloutShape
{
    /// <summary>One point.</summary>
    Pin,

    /// <summary>An upright box; x and y are its upper left corner.</summary>
    Box,

    /// <summary>A closed polygon; x and y are its first corner.</summary>
    Polygon,
}
