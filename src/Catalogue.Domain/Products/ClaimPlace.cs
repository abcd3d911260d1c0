namespace Catalogue.Domain.Products;

/// <summary>Where a claim is made.</summary>
public enum ClaimPlace
{
    /// <summary>On the rating label.</summary>
    Label,

    /// <summary>On the box.</summary>
    Box,

    /// <summary>In the manual.</summary>
    Manual,

    /// <summary>On a web page.</summary>
    WebPage,
}
