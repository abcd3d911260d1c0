namespace Catalogue.Media.Photos;

/// <summary>What an <see cref="ImageKind"/> is called in file names and in HTTP headers.</summary>
public static class ImageKindNames
{
    /// <summary>File name extension without the dot: <c>jpg</c>, <c>png</c> or <c>webp</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a named member.</exception>
    public static string Extension(this ImageKind kind) => kind switch
    {
        ImageKind.Jpeg => "jpg",
        ImageKind.Png => "png",
        ImageKind.Webp => "webp",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a picture format."),
    };

    /// <summary>Media type (RFC 6838), such as <c>image/jpeg</c>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not a named member.</exception>
    public static string MediaType(this ImageKind kind) => kind switch
    {
        ImageKind.Jpeg => "image/jpeg",
        ImageKind.Png => "image/png",
        ImageKind.Webp => "image/webp",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a picture format."),
    };

    /// <summary>The format whose <see cref="Extension"/> this is, or null when there is none. Case matters: stored names are lower case.</summary>
    public static ImageKind? FromExtension(string extension) => extension switch
    {
        "jpg" => ImageKind.Jpeg,
        "png" => ImageKind.Png,
        "webp" => ImageKind.Webp,
        _ => null,
    };
}
