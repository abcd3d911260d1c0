using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;

namespace Catalogue.Media.Photos;

/// <summary>A SHA-256 digest (FIPS 180-4) as 64 lower-case hexadecimal digits: the identity of a stored file.</summary>
public sealed record Sha256
{
    /// <summary>Length of the text, in digits.</summary>
    public const int Digits = 64;

    private Sha256(string text) => Text = text;

    /// <summary>The 64 digits, lower case.</summary>
    public string Text { get; }

    /// <summary>Reads 64 lower-case hexadecimal digits; nothing else is taken, neither upper case nor white space.</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, [NotNullWhen(true)] out Sha256? hash)
    {
        hash = text is { Length: Digits } && text.All(char.IsAsciiHexDigitLower) ? new Sha256(text) : null;
        return hash is not null;
    }

    /// <summary>As <see cref="TryParse"/>, for text that must be right.</summary>
    /// <exception cref="FormatException">Not 64 lower-case hexadecimal digits.</exception>
    public static Sha256 Parse(string text) =>
        TryParse(text, out var hash) ? hash : throw new FormatException("A SHA-256 is written as 64 lower-case hexadecimal digits.");

    /// <summary>From the 32 bytes of a digest.</summary>
    /// <exception cref="ArgumentException">Not 32 bytes.</exception>
    public static Sha256 FromBytes(ReadOnlySpan<byte> digest) => digest.Length == SHA256.HashSizeInBytes
        ? new Sha256(Convert.ToHexStringLower(digest))
        : throw new ArgumentException("A SHA-256 has 32 bytes.", nameof(digest));

    /// <summary>Reads a stream to its end and digests it.</summary>
    public static async Task<Sha256> OfAsync(Stream stream, CancellationToken cancellationToken) =>
        FromBytes(await SHA256.HashDataAsync(stream, cancellationToken));

    /// <summary>The 64 digits.</summary>
    public override string ToString() => Text;
}
