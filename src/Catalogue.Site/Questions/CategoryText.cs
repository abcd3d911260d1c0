using Catalogue.Domain.Products;

namespace Catalogue.Site.Questions;

/// <summary>Categories as a sentence has them.</summary>
internal static class CategoryText
{
    /// <summary>All of them, such as <c>portable power stations</c>.</summary>
    public static string Plural(ProductCategory category) => category.Word() + "s";
}
