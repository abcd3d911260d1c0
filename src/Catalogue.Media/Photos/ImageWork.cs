namespace Catalogue.Media.Photos;

/// <summary>How a job of the worker process ended.</summary>
public abstract record ImageWork
{
    private ImageWork()
    {
    }

    /// <summary>Every pixel was decoded.</summary>
    /// <param name="Width">Upright width of the picture in pixels.</param>
    /// <param name="Height">Upright height of the picture in pixels.</param>
    /// <param name="Renditions">What was written, largest first; empty when nothing was asked for.</param>
    public sealed record Done(int Width, int Height, IReadOnlyList<Rendition> Renditions) : ImageWork;

    /// <summary>The picture cannot be used; trying again would change nothing.</summary>
    /// <param name="Reason">Why, for programs.</param>
    /// <param name="Text">Why, and what would be right, for people.</param>
    public sealed record Refused(ImageRefusal Reason, string Text) : ImageWork;

    /// <summary>The process was stopped because it ran longer than <paramref name="Limit"/>.</summary>
    public sealed record TimedOut(TimeSpan Limit) : ImageWork;

    /// <summary>The process did not start, or ended without an answer; the picture may be innocent.</summary>
    /// <param name="Text">What happened, for the log and the administrator.</param>
    public sealed record Failed(string Text) : ImageWork;
}
