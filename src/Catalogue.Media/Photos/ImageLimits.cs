namespace Catalogue.Media.Photos;

/// <summary>What one picture may cost. House rules; docs/decisions/0005-image-worker.md gives the reasons.</summary>
public static class ImageLimits
{
    /// <summary>Most pixels of a picture, width times height: 64 megapixels.</summary>
    public const long MaxPixels = 64_000_000;

    /// <summary>Longest side, in pixels.</summary>
    public const int MaxSidePixels = 16_384;

    /// <summary>Most scans (SOS segments) of a JPEG. Cameras write 1, common progressive encoders about 10.</summary>
    public const int MaxScans = 100;

    /// <summary>Longest upload unless set otherwise, in bytes: 64 MiB.</summary>
    public const long DefaultMaxUploadBytes = 64L * 1024 * 1024;

    /// <summary>Longest colour profile that renditions carry on, in bytes; a longer one is dropped.</summary>
    public const int MaxColourProfileBytes = 128 * 1024;

    /// <summary>What would be right, for the end of every refusal.</summary>
    public const string Accepted = "Upload a JPEG, PNG or WebP picture of up to 64 megapixels, no side longer than 16,384 pixels.";
}
