namespace Catalogue.Media.Photos;

/// <summary>Names of files that come with a folder or an archive of pictures.</summary>
public static class PictureFiles
{
    private static readonly string[] SystemNames = ["Thumbs.db", "ehthumbs.db", "desktop.ini", ".DS_Store", "Icon\r", ".directory"];
    private static readonly string[] SystemFolders = ["__MACOSX", "@eaDir", ".Trashes", "$RECYCLE.BIN"];

    /// <summary>Says that a file is one that an operating system or a disk puts beside people's files; null for any other.</summary>
    /// <param name="name">A path with forward slashes.</param>
    public static string? SystemFile(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var parts = name.Split('/');
        return Array.Exists(parts[..^1], part => SystemFolders.Contains(part, StringComparer.OrdinalIgnoreCase))
            || SystemNames.Contains(parts[^1], StringComparer.OrdinalIgnoreCase)
            || parts[^1].StartsWith("._", StringComparison.Ordinal)
            ? "An operating system put it there; it is no picture of yours."
            : null;
    }

    /// <summary>True for a path that starts at a root or a drive, or goes up: it would lead out of the folder that it is told from.</summary>
    /// <param name="name">A path with forward slashes.</param>
    public static bool LeadsOut(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.StartsWith('/') || (name.Length > 1 && name[1] == ':' && char.IsAsciiLetter(name[0])) || Array.Exists(name.Split('/'), part => part is ".." or ".");
    }

    /// <summary>What a file is by its first bytes, where it contradicts its name or is none of the formats that are taken; null where name and content agree.</summary>
    /// <param name="name">The file's name.</param>
    /// <param name="start">Its first bytes, 4096 at best.</param>
    /// <returns>True where it is taken all the same: the content decides, not the name.</returns>
    public static (bool IsTaken, string Remark)? Contradiction(string name, ReadOnlySpan<byte> start)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (KindOf(start) is not { } kind)
        {
            return (false, ForeignFormat.NameOf(start) is { } foreign
                ? $"It looks like {foreign}, which is not taken as a photo. {ImageLimits.Accepted}"
                : $"It is not a picture. {ImageLimits.Accepted}");
        }

        var ending = Path.GetExtension(name).TrimStart('.');
        return ImageKindNames.FromExtension(ending.ToLowerInvariant()) == kind || (kind is ImageKind.Jpeg && ending.ToLowerInvariant() is "jpeg" or "jpe" or "jfif")
            ? null
            : (true, $"Its name {(ending.Length > 0 ? $"ends in .{ending}" : "has no ending")}, its content is {Word(kind)}: the content decides.");
    }

    private static string Word(ImageKind kind) => kind switch
    {
        ImageKind.Jpeg => "JPEG",
        ImageKind.Png => "PNG",
        _ => "WebP",
    };

    private static ImageKind? KindOf(ReadOnlySpan<byte> start) =>
        start.StartsWith(JpegHeader.Signature) ? ImageKind.Jpeg
        : start.StartsWith(PngHeader.Signature) ? ImageKind.Png
        : WebpHeader.IsWebp(start) ? ImageKind.Webp
        : null;
}
