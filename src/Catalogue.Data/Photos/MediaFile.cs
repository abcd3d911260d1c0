namespace Catalogue.Data.Photos;

/// <summary>A picture file that was taken in. Kept once, under its content's hash.</summary>
public sealed class MediaFile
{
    /// <summary>SHA-256 of the file, 64 lower-case hex digits.</summary>
    public required string Sha256 { get; init; }

    /// <summary>Its kind: <c>jpeg</c>, <c>png</c> or <c>webp</c>.</summary>
    public required string Kind { get; init; }

    /// <summary>Its size.</summary>
    public required long Bytes { get; init; }

    /// <summary>Width of the upright picture in pixels.</summary>
    public required int WidthPixels { get; init; }

    /// <summary>Height of the upright picture in pixels.</summary>
    public required int HeightPixels { get; init; }

    /// <summary>When it came in.</summary>
    public required DateTimeOffset ReceivedAt { get; init; }
}
