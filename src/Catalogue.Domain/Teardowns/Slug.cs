using System.Globalization;
using System.Text;

namespace Catalogue.Domain.Teardowns;

/// <summary>The part of an address that names a teardown, a family or a maker: a to z, 0 to 9 and single hyphens.</summary>
public static class Slug
{
    /// <summary>The longest slug, number included.</summary>
    public const int MaxLength = 96;

    /// <summary>
    /// A slug made of a text. Letters lose their marks, everything else becomes a hyphen; a text without a usable letter or digit
    /// gives <paramref name="fallback"/>.
    /// </summary>
    public static string From(string text, string fallback)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentException.ThrowIfNullOrEmpty(fallback);
        var slug = new StringBuilder(text.Length);
        foreach (var rune in WellFormed(text).Normalize(NormalizationForm.FormKD).EnumerateRunes())
        {
            if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark)
                continue;
            var lower = Rune.ToLowerInvariant(rune);
            if (lower.IsAscii && Rune.IsLetterOrDigit(lower))
                slug.Append((char)lower.Value);
            else if (slug.Length > 0 && slug[^1] != '-')
                slug.Append('-');
            if (slug.Length >= MaxLength - 8)
                break;
        }

        var made = slug.ToString().Trim('-');
        return made.Length > 0 ? made : fallback;
    }

    /// <summary>The n-th choice for a slug that is taken: <c>name</c>, <c>name-2</c>, <c>name-3</c>.</summary>
    public static string Numbered(string slug, int attempt) =>
        attempt <= 1 ? slug : string.Create(CultureInfo.InvariantCulture, $"{slug}-{attempt}");

    private static string WellFormed(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
            clean.Append(rune.ToString());
        return clean.ToString();
    }
}
