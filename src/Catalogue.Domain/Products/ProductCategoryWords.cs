namespace Catalogue.Domain.Products;

/// <summary>The words a person reads for each category.</summary>
public static class ProductCategoryWords
{
    /// <summary>One of them, such as <c>portable power station</c>.</summary>
    public static string Word(this ProductCategory category) => category switch
    {
        ProductCategory.Charger => "charger",
        ProductCategory.PowerBank => "power bank",
        ProductCategory.PowerStation => "portable power station",
        ProductCategory.Adapter => "power adapter",
        ProductCategory.Inverter => "inverter",
        _ => "other power product",
    };
}
