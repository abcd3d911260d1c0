using Catalogue.Domain.Products;

namespace Catalogue.Domain.Families;

/// <summary>What a part of a family did in one design.</summary>
/// <param name="Words">The role as written, or the words of its circuit position.</param>
/// <param name="Product">The product.</param>
public sealed record SeenRole(string Words, ProductId Product)
{
    /// <summary>What two spellings of one role share.</summary>
    public string Key => string.Join(' ', Words.ToUpperInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
