namespace Catalogue.Domain.Callouts;

/// <summary>
/// Places the balloons of one picture beside the parts they number, each with a leader that touches its part.
/// </summary>
/// <remarks>
/// <para>House rule. Balloons are placed one after another by number. Each tries places around the outline of its part, ever further out, and
/// takes the cheapest: short leader, no other part covered, no leader crossed, away from crowds, outward. Where none of them is free it takes the
/// nearest free place of the picture, and where none is free at all the one that crowds least.</para>
/// <para>Only what lies near a part weighs on its balloon, and the later number gives way. So a callout added far away moves nothing.</para>
/// </remarks>
public static class BalloonLayout
{
    private const int Directions = 24;
    private const int MostOutlinePoints = 16;
    private static readonly double[] Rings = [1, 1.3, 1.7, 2.2, 2.9, 3.8];

    // What a balloon should not do, in the unit “one ideal leader too long”.
    private const double CoversPart = 4;
    private const double OnLeader = 3;
    private const double CrossesLeader = 2;
    private const double InsideOwnPart = 2.5;
    private const double Crowded = 0.6;
    private const double Inward = 0.15;

    /// <summary>One balloon a callout, in the order given. The same callouts always give the same places.</summary>
    /// <param name="callouts">Callouts of one picture; coordinates outside 0 to 1 are taken to its edge.</param>
    /// <param name="aspectRatio">Width over height of the picture; finite and above zero.</param>
    /// <param name="spacing">The room balloons need; by default that of <see cref="BalloonSpacing.Everywhere"/>.</param>
    /// <returns>Balloons inside the picture, and apart by the gap as long as there is room for it.</returns>
    public static IReadOnlyList<Balloon> Place(IReadOnlyList<Callout> callouts, double aspectRatio, BalloonSpacing? spacing = null)
    {
        ArgumentNullException.ThrowIfNull(callouts);
        if (!double.IsFinite(aspectRatio) || aspectRatio <= 0)
            throw new ArgumentOutOfRangeException(nameof(aspectRatio), aspectRatio, "An aspect ratio is finite and above zero.");
        var picture = new Picture(1 / aspectRatio, spacing ?? BalloonSpacing.Everywhere);
        var outlines = callouts.Select(callout => Outline.Of(callout, picture.Height)).ToArray();
        var places = new Place2D[callouts.Count];
        var placed = new List<int>(callouts.Count);
        foreach (var index in Enumerable.Range(0, callouts.Count).OrderBy(index => callouts[index].Number).ThenBy(index => index))
        {
            places[index] = picture.Find(index, outlines, places, placed);
            placed.Add(index);
        }

        return
        [
            .. callouts.Select((callout, index) => new Balloon(
                callout,
                Math.Clamp(places[index].Centre.X, 0, 1),
                Math.Clamp(places[index].Centre.Y / picture.Height, 0, 1),
                Math.Clamp(places[index].Touch.X, 0, 1),
                Math.Clamp(places[index].Touch.Y / picture.Height, 0, 1))),
        ];
    }

    // Lengths below are in widths of the picture, so that a length is the same in both directions.
    private readonly record struct Point(double X, double Y)
    {
        public double DistanceTo(Point other) => Math.Sqrt(((X - other.X) * (X - other.X)) + ((Y - other.Y) * (Y - other.Y)));

        public Point NearestOn(Point from, Point to)
        {
            var (dx, dy) = (to.X - from.X, to.Y - from.Y);
            var square = (dx * dx) + (dy * dy);
            if (square <= 0)
                return from;
            var along = Math.Clamp((((X - from.X) * dx) + ((Y - from.Y) * dy)) / square, 0, 1);
            return new Point(from.X + (along * dx), from.Y + (along * dy));
        }

        public double DistanceTo(Place2D leader) => DistanceTo(NearestOn(leader.Touch, leader.Centre));
    }

    private readonly record struct Place2D(Point Centre, Point Touch)
    {
        public double Length => Centre.DistanceTo(Touch);

        public bool Crosses(Place2D other) =>
            Side(Centre, Touch, other.Centre) * Side(Centre, Touch, other.Touch) < 0
            && Side(other.Centre, other.Touch, Centre) * Side(other.Centre, other.Touch, Touch) < 0;

        private static double Side(Point from, Point to, Point point) =>
            ((to.X - from.X) * (point.Y - from.Y)) - ((to.Y - from.Y) * (point.X - from.X));
    }

    private sealed class Outline(Point[] corners)
    {
        private readonly bool _isArea = corners.Length > 2;

        public static Outline Of(Callout callout, double height)
        {
            Point At(double x, double y) => new(Fraction(x), Fraction(y) * height);
            if (callout is { Shape: CalloutShape.Polygon, Corners.Length: >= 6 })
                return new Outline([.. Enumerable.Range(0, callout.Corners.Length / 2).Select(i => At(callout.Corners[2 * i], callout.Corners[(2 * i) + 1]))]);
            if (callout is { Shape: CalloutShape.Box, Width: { } width, Height: { } tall })
                return new Outline(
                [
                    At(callout.X, callout.Y), At(callout.X + width, callout.Y), At(callout.X + width, callout.Y + tall), At(callout.X, callout.Y + tall),
                ]);
            return new Outline([At(callout.X, callout.Y)]);
        }

        // Corners and middles of edges, thinned out evenly.
        public IEnumerable<Point> Starts()
        {
            var all = corners.Length == 1
                ? corners
                : [.. corners.SelectMany((corner, i) => new[] { corner, Middle(corner, corners[(i + 1) % corners.Length]) })];
            var step = Math.Max(1, (double)all.Length / MostOutlinePoints);
            for (var at = 0.0; at < all.Length; at += step)
                yield return all[(int)at];
        }

        public Point Nearest(Point point)
        {
            if (corners.Length == 1)
                return corners[0];
            var best = corners[0];
            for (var i = 0; i < corners.Length; i++)
            {
                var candidate = point.NearestOn(corners[i], corners[(i + 1) % corners.Length]);
                if (candidate.DistanceTo(point) < best.DistanceTo(point))
                    best = candidate;
            }

            return best;
        }

        public bool Contains(Point point)
        {
            var inside = false;
            for (int i = 0, j = corners.Length - 1; _isArea && i < corners.Length; j = i++)
            {
                var (a, b) = (corners[i], corners[j]);
                if (a.Y > point.Y != b.Y > point.Y && point.X < ((b.X - a.X) * (point.Y - a.Y) / (b.Y - a.Y)) + a.X)
                    inside = !inside;
            }

            return inside;
        }

        private static Point Middle(Point a, Point b) => new((a.X + b.X) / 2, (a.Y + b.Y) / 2);

        private static double Fraction(double value) => double.IsFinite(value) ? Math.Clamp(value, 0, 1) : 0.5;
    }

    private sealed class Picture(double height, BalloonSpacing spacing)
    {
        private readonly double _gap = spacing.GapPixels / spacing.WidthPixels;
        private readonly double _leader = spacing.LeaderPixels / spacing.WidthPixels;
        private readonly double _marginX = Math.Min(spacing.MarginPixels / spacing.WidthPixels, 0.5);
        private readonly double _marginY = Math.Min(spacing.MarginPixels / spacing.WidthPixels, height / 2);

        public double Height => height;

        // Half the gap is about the radius of a balloon with its ring of paper.
        private double Radius => _gap / 2;

        public Place2D Find(int index, Outline[] outlines, Place2D[] places, List<int> placed)
        {
            var own = outlines[index];
            Place2D? best = null;
            var least = double.PositiveInfinity;
            foreach (var start in own.Starts())
            {
                foreach (var ring in Rings)
                {
                    for (var direction = 0; direction < Directions; direction++)
                    {
                        var angle = 2 * Math.PI * direction / Directions;
                        var centre = new Point(start.X + (ring * _leader * Math.Cos(angle)), start.Y + (ring * _leader * Math.Sin(angle)));
                        if (!IsInside(centre) || !IsFree(centre, places, placed))
                            continue;
                        var place = new Place2D(centre, own.Nearest(centre));
                        var cost = Cost(place, index, least, outlines, places, placed);
                        if (cost < least - 1e-9)
                            (best, least) = (place, cost);
                    }
                }
            }

            return best ?? Elsewhere(own, places, placed);
        }

        // Costs only add up, so a place that is already dearer than the best is not looked at further.
        private double Cost(Place2D place, int index, double least, Outline[] outlines, Place2D[] places, List<int> placed)
        {
            var own = outlines[index];
            var cost = (Math.Abs(place.Length - _leader) / _leader) + (Inward * InwardShare(place));
            if (own.Contains(place.Centre))
                cost += InsideOwnPart;
            foreach (var other in placed)
            {
                if (places[other].Centre.DistanceTo(place) < Radius * 1.1 || place.Centre.DistanceTo(places[other]) < Radius * 1.1)
                    cost += OnLeader;
                if (place.Crosses(places[other]))
                    cost += CrossesLeader;
            }

            var crowd = 4 * _leader;
            for (var other = 0; other < outlines.Length && cost < least; other++)
            {
                if (other == index)
                    continue;
                var nearest = outlines[other].Nearest(place.Centre);
                var distance = nearest.DistanceTo(place.Centre);
                if (distance < Radius * 1.2)
                    cost += CoversPart * (1 - (distance / (Radius * 2.4)));
                else if (outlines[other].Contains(place.Centre) && !outlines[other].Contains(place.Touch))
                    cost += CoversPart / 2;
                if (distance < crowd)
                    cost += Crowded * (1 - (distance / crowd)) * (1 - (distance / crowd));
            }

            return cost;
        }

        // 0 where the leader points away from the middle of the picture, 1 where it points at it.
        private double InwardShare(Place2D place)
        {
            var (fromX, fromY) = (place.Touch.X - 0.5, place.Touch.Y - (height / 2));
            var (alongX, alongY) = (place.Centre.X - place.Touch.X, place.Centre.Y - place.Touch.Y);
            var lengths = Math.Sqrt(((fromX * fromX) + (fromY * fromY)) * ((alongX * alongX) + (alongY * alongY)));
            return lengths > 1e-12 ? (1 - (((fromX * alongX) + (fromY * alongY)) / lengths)) / 2 : 0.5;
        }

        // Over the whole picture: the nearest free place, or the one with the most room around it.
        private Place2D Elsewhere(Outline own, Place2D[] places, List<int> placed)
        {
            var step = _gap / 5;
            var columns = Math.Max(1, (int)Math.Floor((1 - (2 * _marginX)) / step));
            var rows = Math.Max(1, (int)Math.Floor((height - (2 * _marginY)) / step));
            Place2D? nearest = null;
            var roomiest = default(Place2D);
            var room = double.NegativeInfinity;
            for (var row = 0; row <= rows; row++)
            {
                for (var column = 0; column <= columns; column++)
                {
                    var centre = new Point(_marginX + ((1 - (2 * _marginX)) * column / columns), _marginY + ((height - (2 * _marginY)) * row / rows));
                    var place = new Place2D(centre, own.Nearest(centre));
                    var around = Room(centre, places, placed);
                    if (around >= _gap && (nearest is not { } so || place.Length < so.Length))
                        nearest = place;
                    if (around > room)
                        (roomiest, room) = (place, around);
                }
            }

            return nearest ?? roomiest;
        }

        private bool IsInside(Point point) =>
            point.X >= _marginX && point.X <= 1 - _marginX && point.Y >= _marginY && point.Y <= height - _marginY;

        private bool IsFree(Point point, Place2D[] places, List<int> placed) => Room(point, places, placed) >= _gap;

        private static double Room(Point point, Place2D[] places, List<int> placed)
        {
            var room = double.MaxValue;
            foreach (var other in placed)
                room = Math.Min(room, point.DistanceTo(places[other].Centre));
            return room;
        }
    }
}
