namespace Catalogue.Domain.Callouts;

/// <summary>How much room balloons need. Balloons keep their size on the screen, so room is asked for in CSS pixels at a display width.</summary>
/// <param name="WidthPixels">The width at which the picture is shown; above zero.</param>
/// <param name="GapPixels">Least distance between two centres; above zero.</param>
/// <param name="MarginPixels">Least distance between a centre and the edge of the picture; not below zero.</param>
/// <param name="LeaderPixels">The length that a leader should have.</param>
public sealed record BalloonSpacing(double WidthPixels, double GapPixels, double MarginPixels, double LeaderPixels)
{
    /// <summary>
    /// Fits every width from a phone's up. Positions are fractions and so the same at all widths; the narrowest is the strictest: 22 px at
    /// 340 px are 41 px at 640 px.
    /// </summary>
    public static BalloonSpacing Everywhere { get; } = new(340, 22, 13, 20);
}
