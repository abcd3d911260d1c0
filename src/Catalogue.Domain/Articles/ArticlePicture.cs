namespace Catalogue.Domain.Articles;

/// <summary>A picture that an article shows.</summary>
/// <param name="Index">Its place among the article's pictures, from 0.</param>
/// <param name="Address">Its address as written.</param>
/// <param name="Path">Where it lies beside the article, with forward slashes, or null where it may not be looked for.</param>
/// <param name="Refusal">Why it is not looked for, or null.</param>
/// <param name="Words">The words for those who do not see it, or null.</param>
/// <param name="Title">Its title, or null.</param>
public sealed record ArticlePicture(int Index, string Address, string? Path, string? Refusal, string? Words, string? Title)
{
    /// <summary>Where a picture lies: beside the article or below, and nowhere else.</summary>
    /// <param name="address">The address as written.</param>
    /// <returns>The path from the article's folder, or why it is not looked for.</returns>
    public static (string? Path, string? Refusal) Locate(string? address)
    {
        if (string.IsNullOrWhiteSpace(address))
            return (null, "It has no address.");
        if (address.StartsWith("//", StringComparison.Ordinal) || address.StartsWith("\\\\", StringComparison.Ordinal))
            return (null, "It lies on another machine; nothing is fetched. Put it beside the article.");
        var colon = address.IndexOf(':', StringComparison.Ordinal);
        if (colon > 1 && address.AsSpan(0, colon).IndexOfAny('/', '\\', '%') < 0)
        {
            return (null, address.StartsWith("http", StringComparison.OrdinalIgnoreCase)
                ? "It lies on another machine; nothing is fetched. Put it beside the article."
                : "Its address is no file beside the article; it is not read.");
        }

        var plain = address.Split('?', '#')[0].Replace('\\', '/');
        // Decoded before it is judged, so that a dot written as %2e is a dot; once only, as addresses are.
        var path = Uri.UnescapeDataString(plain).Replace('\\', '/');
        if (path.StartsWith('/') || colon == 1)
            return (null, "Its address starts at the root of a disk; only files beside the article are read.");
        var parts = path.Split('/').Where(part => part is not ("" or ".")).ToList();
        if (parts.Contains(".."))
            return (null, "Its address leads out of the article's folder; nothing is read from there.");
        return parts.Count == 0 || path.Any(char.IsControl) ? (null, "Its address is no file beside the article; it is not read.") : (string.Join('/', parts), null);
    }
}
