namespace Catalogue.Data.Photos;

/// <summary>A smaller copy of a picture, upright and without metadata, as the public sees it.</summary>
public sealed class Rendition
{
    /// <summary>The original's SHA-256.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Width in pixels.</summary>
    public required int WidthPixels { get; init; }

    /// <summary>Height in pixels.</summary>
    public required int HeightPixels { get; init; }

    /// <summary>The file's name in the media store.</summary>
    public required string StoreName { get; init; }

    /// <summary>SHA-256 of the rendition itself, lower-case hex; its ETag.</summary>
    public required string ContentSha256 { get; init; }

    /// <summary>Its size.</summary>
    public required long Bytes { get; init; }
}
