using Catalogue.Domain.Callouts;

namespace Catalogue.Lab.Workbench;

/// <summary>Where the leader of a callout touches the part and where its balloon stands, in fractions of the upright picture.</summary>
/// <param name="AnchorX">Across, where the leader touches.</param>
/// <param name="AnchorY">Down, where the leader touches.</param>
/// <param name="X">Across, the middle of the balloon.</param>
/// <param name="Y">Down, the middle of the balloon.</param>
public readonly record struct BalloonSpot(double AnchorX, double AnchorY, double X, double Y)
{
    private const double Offset = 0.055;
    private const double Margin = 0.03;

    /// <summary>
    /// A spot for each callout, in their order: a fixed step beside the anchor, in the direction that leaves most room to anchors and to the balloons
    /// already set. A balloon never stands on its own part.
    /// </summary>
    /// <param name="callouts">The callouts of one photo.</param>
    /// <param name="ratio">Width of the picture over its height, so that steps are equally long in all directions.</param>
    public static IReadOnlyDictionary<CalloutId, BalloonSpot> Of(IReadOnlyList<Callout> callouts, double ratio)
    {
        ArgumentNullException.ThrowIfNull(callouts);
        var spots = new Dictionary<CalloutId, BalloonSpot>();
        var taken = callouts.Select(callout => (callout.X + ((callout.Width ?? 0) / 2), callout.Y + ((callout.Height ?? 0) / 2))).ToList();
        foreach (var callout in callouts)
        {
            var best = Candidates(callout, ratio).MaxBy(spot => Room(spot, taken, ratio));
            taken.Add((best.X, best.Y));
            spots[callout.Id] = best;
        }

        return spots;
    }

    private static IEnumerable<BalloonSpot> Candidates(Callout callout, double ratio)
    {
        var (halfWidth, halfHeight) = ((callout.Width ?? 0) / 2, (callout.Height ?? 0) / 2);
        var (middleX, middleY) = (callout.X + halfWidth, callout.Y + halfHeight);
        for (var step = 0; step < 16; step++)
        {
            var angle = step * Math.PI / 8;
            var (towardsX, towardsY) = (Math.Cos(angle), -Math.Sin(angle));
            var anchorX = middleX + (halfWidth * Math.Clamp(towardsX * 1.42, -1, 1));
            var anchorY = middleY + (halfHeight * Math.Clamp(towardsY * 1.42, -1, 1));
            yield return new BalloonSpot(
                anchorX,
                anchorY,
                Math.Clamp(anchorX + (Offset * towardsX), Margin, 1 - Margin),
                Math.Clamp(anchorY + (Offset * ratio * towardsY), Margin * ratio, 1 - (Margin * ratio)));
        }
    }

    // Clear of everything by two balloons is clear enough; beyond that the direction away from the middle of the board wins.
    private static double Room(BalloonSpot spot, List<(double X, double Y)> taken, double ratio)
    {
        var nearest = taken.Min(other => double.Hypot(other.X - spot.X, (other.Y - spot.Y) / ratio));
        return Math.Min(nearest, Offset) + (0.01 * double.Hypot(spot.X - 0.5, (spot.Y - 0.5) / ratio));
    }
}
