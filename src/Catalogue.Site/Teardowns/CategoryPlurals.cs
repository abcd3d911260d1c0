using Catalogue.Domain.Products;

namespace Catalogue.Site.Teardowns;

/// <summary>The words for several products of a category.</summary>
internal static class CategoryPlurals
{
    /// <summary>Such as <c>portable power stations</c>.</summary>
    public static string Plural(this ProductCategory category) => category.Word() + "s";
}
