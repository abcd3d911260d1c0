namespace Catalogue.Media.Photos;

/// <summary>Which sizes a picture is offered in.</summary>
public static class RenditionSizes
{
    /// <summary>
    /// The sizes to make, largest first, no width twice. A width above the picture's own becomes the picture's own: nothing is
    /// ever enlarged. Heights keep the proportions, rounded, at least 1.
    /// </summary>
    /// <param name="width">Upright width of the picture in pixels.</param>
    /// <param name="height">Upright height of the picture in pixels.</param>
    /// <param name="widths">Widths wanted, in pixels, at least one, all positive.</param>
    /// <exception cref="ArgumentException">No width, or one that is not positive.</exception>
    public static IReadOnlyList<(int Width, int Height)> For(int width, int height, IReadOnlyList<int> widths)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        ArgumentNullException.ThrowIfNull(widths);
        if (widths.Count == 0 || widths.Any(wanted => wanted < 1))
        {
            throw new ArgumentException("At least one width is needed, and all must be positive.", nameof(widths));
        }

        return
        [
            .. widths.Select(wanted => Math.Min(wanted, width)).Distinct().OrderDescending()
                .Select(wanted => (wanted, Math.Max(1, (int)Math.Round((double)height * wanted / width)))),
        ];
    }
}
