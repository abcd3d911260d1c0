using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Catalogue.Media.Photos;

/// <summary>
/// The name of one stored file: the digest of the original, a variant (null for the original itself) and the format. What a key
/// names never changes, so it may be cached for ever.
/// </summary>
public sealed record MediaKey
{
    private const int MaxVariantLength = 32;

    private MediaKey(Sha256 hash, string? variant, ImageKind kind)
    {
        Hash = hash;
        Variant = variant;
        Kind = kind;
    }

    /// <summary>Digest of the original, also for what was made from it.</summary>
    public Sha256 Hash { get; }

    /// <summary>What was made from the original, such as <c>w960</c>: 1 to 32 characters a-z, 0-9; null for the original.</summary>
    public string? Variant { get; }

    /// <summary>Format of this file.</summary>
    public ImageKind Kind { get; }

    /// <summary>File name: <c>digest.png</c> or <c>digest-w960.jpg</c>.</summary>
    public string FileName => Variant is null ? $"{Hash}.{Kind.Extension()}" : $"{Hash}-{Variant}.{Kind.Extension()}";

    /// <summary>Path below the store's root, with forward slashes: <c>ab/cd/abcd...-w960.jpg</c>.</summary>
    public string RelativePath => $"{Hash.Text[..2]}/{Hash.Text[2..4]}/{FileName}";

    /// <summary>The key of an original.</summary>
    public static MediaKey Original(Sha256 hash, ImageKind kind) => new(hash, null, kind);

    /// <summary>The key of the JPEG rendition of this width.</summary>
    /// <param name="hash">Digest of the original.</param>
    /// <param name="widthPixels">Width in pixels, 1 to <see cref="ImageLimits.MaxSidePixels"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is out of range.</exception>
    public static MediaKey Rendition(Sha256 hash, int widthPixels)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(widthPixels, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(widthPixels, ImageLimits.MaxSidePixels);
        return new MediaKey(hash, string.Create(CultureInfo.InvariantCulture, $"w{widthPixels}"), ImageKind.Jpeg);
    }

    /// <summary>Reads a <see cref="FileName"/>, as it comes back in an address. Anything else, a path included, gives false.</summary>
    public static bool TryParse([NotNullWhen(true)] string? fileName, [NotNullWhen(true)] out MediaKey? key)
    {
        key = null;
        if (fileName is null || fileName.Split('.') is not [var stem, var extension] || ImageKindNames.FromExtension(extension) is not { } kind)
        {
            return false;
        }

        var variant = stem.Length > Sha256.Digits ? stem[(Sha256.Digits + 1)..] : null;
        if (!Sha256.TryParse(stem[..Math.Min(stem.Length, Sha256.Digits)], out var hash)
            || (variant is not null && (stem[Sha256.Digits] != '-' || !IsVariant(variant))))
        {
            return false;
        }

        key = new MediaKey(hash, variant, kind);
        return true;
    }

    /// <summary>The <see cref="FileName"/>.</summary>
    public override string ToString() => FileName;

    private static bool IsVariant(string text) =>
        text.Length is >= 1 and <= MaxVariantLength && text.All(character => char.IsAsciiLetterLower(character) || char.IsAsciiDigit(character));
}
