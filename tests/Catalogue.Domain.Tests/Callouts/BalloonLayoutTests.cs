using Catalogue.Domain.Callouts;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using CsCheck;

namespace Catalogue.Domain.Tests.Callouts;

public sealed class BalloonLayoutTests
{
    // The two promises of the face: 30 px between centres at 640 px, 22 px at 340 px.
    private const double DesktopGap = 30.0 / 640;
    private const double PhoneGap = 22.0 / 340;

    private static readonly Gen<Callout> GenCallout = Gen.Select(
        Gen.Int[0, 2], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0.01, 0.4], Gen.Double[0.01, 0.4],
        (shape, x, y, width, height) => shape switch
        {
            0 => Pin(x, y),
            1 => Box(x * (1 - width), y * (1 - height), width, height),
            _ => Polygon(x, y, Math.Min(1, x + width), y, Math.Min(1, x + (width / 2)), Math.Min(1, y + height)),
        });

    private static readonly Gen<(Callout[] Callouts, double Aspect)> GenPicture = Gen.Select(GenCallout.Array[0, 40], Gen.Double[0.55, 1.6], (callouts, aspect) => (Numbered(callouts), aspect));

    [Fact]
    public void Place_AnyCallouts_StandInsideThePicture() =>
        GenPicture.Sample(picture =>
        {
            var balloons = BalloonLayout.Place(picture.Callouts, picture.Aspect);
            Assert.Equal(picture.Callouts, balloons.Select(balloon => balloon.Callout));
            Assert.All(balloons, balloon => Assert.All(new[] { balloon.X, balloon.Y, balloon.TouchX, balloon.TouchY }, value => Assert.InRange(value, 0, 1)));
            Assert.All(balloons, balloon => Assert.InRange(balloon.X, 13.0 / 340, 1 - (13.0 / 340)));
        });

    [Fact]
    public void Place_UpToFortyCallouts_KeepTheirDistance() =>
        GenPicture.Sample(picture =>
        {
            var balloons = BalloonLayout.Place(picture.Callouts, picture.Aspect);
            Assert.True(LeastGap(balloons, picture.Aspect) >= Math.Max(DesktopGap, PhoneGap) - 1e-9);
        });

    [Fact]
    public void Place_SameCallouts_SamePlaces() =>
        GenPicture.Sample(picture => Assert.Equal(BalloonLayout.Place(picture.Callouts, picture.Aspect), BalloonLayout.Place(picture.Callouts, picture.Aspect)));

    [Fact]
    public void Place_OneAddedFarAway_MovesNoOther() =>
        Gen.Select(Gen.Double[0, 0.3].Array[2], Gen.Double[0, 0.3].Array[2]).Sample((xs, ys) =>
        {
            Callout[] near = Numbered([Pin(xs[0], ys[0]), Pin(xs[1], ys[1])]);
            Callout[] more = [.. near, Pin(0.95, 0.95, 3)];
            var before = BalloonLayout.Place(near, 1.3);
            var after = BalloonLayout.Place(more, 1.3);
            Assert.Equal(before, after.Take(2));
        });

    [Fact]
    public void Place_FortyEqualPoints_AreNumbersAndApart()
    {
        var balloons = BalloonLayout.Place(Numbered([.. Enumerable.Range(0, 40).Select(_ => Pin(0.5, 0.5))]), 4.0 / 3);
        Assert.All(balloons, balloon => Assert.True(double.IsFinite(balloon.X) && double.IsFinite(balloon.Y)));
        Assert.True(LeastGap(balloons, 4.0 / 3) >= PhoneGap - 1e-9);
    }

    [Fact]
    public void Place_MoreThanThereIsRoomFor_StillStandInside()
    {
        var balloons = BalloonLayout.Place(Numbered([.. Enumerable.Range(0, 300).Select(i => Pin(i / 300.0, 0.5))]), 8);
        Assert.Equal(300, balloons.Count);
        Assert.All(balloons, balloon => Assert.InRange(balloon.Y, 0, 1));
    }

    [Fact]
    public void Place_PinAlone_StandsBesideItsPartOnAShortLeader()
    {
        var balloon = Assert.Single(BalloonLayout.Place([Pin(0.5, 0.25, 1)], 1));
        Assert.Equal((0.5, 0.25), (balloon.TouchX, balloon.TouchY));
        Assert.Equal(20.0 / 340, Math.Sqrt(Math.Pow(balloon.X - 0.5, 2) + Math.Pow(balloon.Y - 0.25, 2)), 6);
        Assert.True(balloon.Y < 0.25, "Outward, which is up from here.");
    }

    [Fact]
    public void Place_Box_TouchesItsEdgeFromOutside()
    {
        var balloon = Assert.Single(BalloonLayout.Place([Box(0.3, 0.3, 0.2, 0.2, 1)], 1));
        Assert.False(balloon.X is > 0.3 and < 0.5 && balloon.Y is > 0.3 and < 0.5);
        Assert.True(
            Math.Abs(balloon.TouchX - 0.3) < 1e-9 || Math.Abs(balloon.TouchX - 0.5) < 1e-9 || Math.Abs(balloon.TouchY - 0.3) < 1e-9 || Math.Abs(balloon.TouchY - 0.5) < 1e-9);
    }

    [Fact]
    public void Place_PartsSideBySide_CoverNoOtherAnchor()
    {
        var callouts = Numbered([.. Enumerable.Range(0, 6).Select(i => Pin(0.25 + (0.1 * i), 0.5))]);
        var balloons = BalloonLayout.Place(callouts, 4.0 / 3);
        foreach (var balloon in balloons)
            Assert.All(callouts, other => Assert.True(Distance(balloon.X - other.X, (balloon.Y - other.Y) * 0.75) > 11.0 / 340));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Place_AspectRatioOfNoPicture_IsTheCallersBug(double aspect) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BalloonLayout.Place([Pin(0.5, 0.5, 1)], aspect));

    [Fact]
    public void Place_NotANumber_GivesNumbers()
    {
        var balloon = Assert.Single(BalloonLayout.Place([Pin(double.NaN, double.PositiveInfinity, 1)], 1));
        Assert.InRange(balloon.X, 0, 1);
        Assert.InRange(balloon.TouchY, 0, 1);
    }

    private static double LeastGap(IReadOnlyList<Balloon> balloons, double aspect)
    {
        var least = double.PositiveInfinity;
        for (var i = 0; i < balloons.Count; i++)
            for (var j = 0; j < i; j++)
                least = Math.Min(least, Distance(balloons[i].X - balloons[j].X, (balloons[i].Y - balloons[j].Y) / aspect));
        return least;
    }

    private static double Distance(double x, double y) => Math.Sqrt((x * x) + (y * y));

    private static Callout[] Numbered(Callout[] callouts)
    {
        for (var i = 0; i < callouts.Length; i++)
            callouts[i].Number = i + 1;
        return callouts;
    }

    private static Callout Pin(double x, double y, int number = 1) => New(CalloutShape.Pin, x, y, number);

    private static Callout Box(double x, double y, double width, double height, int number = 1)
    {
        var box = New(CalloutShape.Box, x, y, number);
        (box.Width, box.Height) = (width, height);
        return box;
    }

    private static Callout Polygon(params double[] corners)
    {
        var polygon = New(CalloutShape.Polygon, corners[0], corners[1], 1);
        polygon.Corners = corners;
        return polygon;
    }

    private static Callout New(CalloutShape shape, double x, double y, int number) => new()
    {
        RevisionId = RevisionId.New(),
        Id = CalloutId.New(),
        PhotoId = PhotoId.New(),
        Number = number,
        Shape = shape,
        X = x,
        Y = y,
    };
}
