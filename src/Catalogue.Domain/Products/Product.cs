using Catalogue.Domain.Makers;

namespace Catalogue.Domain.Products;

/// <summary>A product: brand, name and model designation. What a revision said of it stays with the revision.</summary>
public sealed class Product
{
    /// <summary>Longest name and model designation.</summary>
    public const int MaxNameLength = 120;

    /// <summary>Its id.</summary>
    public required ProductId Id { get; init; }

    /// <summary>The brand.</summary>
    public required MakerId BrandId { get; init; }

    /// <summary>The name.</summary>
    public required string Name { get; set; }

    /// <summary>The model designation.</summary>
    public required string Model { get; set; }

    /// <summary>The category.</summary>
    public required ProductCategory Category { get; set; }

    /// <summary>Name and model folded for comparison; unique within the brand.</summary>
    public required string IdentityKey { get; init; }

    /// <summary>Changes with every save of the row.</summary>
    public uint Version { get; init; }
}
