namespace Catalogue.Media.Photos;

/// <summary>Why a picture is not taken in. The text beside it says what was wrong and what would be right.</summary>
public enum ImageRefusal
{
    /// <summary>No bytes at all.</summary>
    Empty,

    /// <summary>The bytes are no picture, or none that anybody would call a photo.</summary>
    NotAnImage,

    /// <summary>A picture, but of a format or a variant that is not decoded here (GIF, HEIC, lossless JPEG ...).</summary>
    FormatNotAccepted,

    /// <summary>More moving pictures than one.</summary>
    Animated,

    /// <summary>More pixels than <see cref="ImageLimits.MaxPixels"/>.</summary>
    TooManyPixels,

    /// <summary>A side longer than <see cref="ImageLimits.MaxSidePixels"/>.</summary>
    SideTooLong,

    /// <summary>A progressive JPEG with more scans than <see cref="ImageLimits.MaxScans"/>.</summary>
    TooManyScans,

    /// <summary>The file ends before the picture does.</summary>
    Truncated,

    /// <summary>The picture data contradict themselves or cannot be decoded.</summary>
    Damaged,

    /// <summary>The upload is longer than the cap in bytes.</summary>
    TooManyBytes,

    /// <summary>Decoding takes more time or memory than one picture may have.</summary>
    TooCostly,
}
