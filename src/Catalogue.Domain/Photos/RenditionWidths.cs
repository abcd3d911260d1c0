namespace Catalogue.Domain.Photos;

/// <summary>The widths in which readers get a picture.</summary>
public static class RenditionWidths
{
    /// <summary>All widths, smallest first, in pixels.</summary>
    public static IReadOnlyList<int> All { get; } = [480, 960, 1920];

    /// <summary>
    /// The widths made of a picture so wide, smallest first: never larger than the picture; a picture between two widths also comes in its own,
    /// so that the largest rendition loses as little as the widest one allows.
    /// </summary>
    public static IReadOnlyList<int> For(int widthPixels)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(widthPixels, 1);
        return [.. All.Select(width => Math.Min(width, widthPixels)).Distinct()];
    }
}
