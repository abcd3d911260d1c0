using AngleSharp.Dom;
using Bunit;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Catalogue.Site.Callouts;

namespace Catalogue.Site.Tests.Callouts;

public sealed class PhotoFigureTests : BunitContext
{
    private static readonly string Sha = new('c', 64);
    private static readonly RevisionId Revision = RevisionId.New();

    [Fact]
    public void Figure_Picture_ComesInItsWidthsAndKeepsItsPlace()
    {
        var picture = Figure(new PhotoMark(Pin(1), "F1", "#part-1", false, null)).Find("img");
        Assert.Equal($"/media/{Sha}/480.jpg 480w, /media/{Sha}/960.jpg 960w, /media/{Sha}/1200.jpg 1200w", picture.GetAttribute("srcset"));
        Assert.Equal(("1200", "800", "lazy"), (picture.GetAttribute("width"), picture.GetAttribute("height"), picture.GetAttribute("loading")));
        Assert.Equal("Photo 3, board A, top", picture.GetAttribute("alt"));
        Assert.NotNull(picture.GetAttribute("sizes"));
    }

    [Fact]
    public void Figure_Balloons_StandInPerCentOfThePicture()
    {
        var figure = Figure(new PhotoMark(Pin(1), "F1", "#part-1", false, null));
        Assert.All(figure.FindAll(".marks line, .marks use").SelectMany(shape => shape.Attributes).Where(attribute => attribute.Name is "x" or "y" or "x1" or "x2" or "y1" or "y2"), attribute => Assert.EndsWith("%", attribute.Value, StringComparison.Ordinal));
        Assert.Equal("1", figure.Find(".marks text").TextContent);
        Assert.Empty(figure.FindAll("[style]"));
    }

    [Fact]
    public void Figure_States_AreToldApart()
    {
        var figure = Figure(
            new PhotoMark(Pin(1), "F1", "#part-1", false, Verdict.OverRating), new PhotoMark(Pin(2), "K1", "#part-2", true, Verdict.Unknown),
            new PhotoMark(Pin(3), null, null, false, null), new PhotoMark(Pin(4), "Q1", "#part-4", false, Verdict.Thin));
        Assert.NotNull(figure.Find("[data-n='1'] .badge.over-rating"));
        Assert.Contains("unread", figure.Find("[data-n='2']").ClassList);
        Assert.Equal(("g", true), (figure.Find("[data-n='3']").LocalName, figure.Find("[data-n='3']").ClassList.Contains("loose")));
        Assert.Null(figure.Find("[data-n='4']").QuerySelector(".badge"));
        Assert.Equal("Callout 2: K1, marking not resolved", figure.Find("[data-n='2']").GetAttribute("aria-label"));
    }

    [Fact]
    public void Figure_BoxAndPolygon_AreOutlined()
    {
        var box = Pin(1);
        (box.Shape, box.Width, box.Height) = (CalloutShape.Box, 0.25, 0.5);
        var polygon = Pin(2);
        (polygon.Shape, polygon.Corners) = (CalloutShape.Polygon, [0.1, 0.1, 0.2, 0.1, 0.15, 0.35]);
        var figure = Figure(new PhotoMark(box, "T1", "#t", false, null), new PhotoMark(polygon, "L1", "#l", false, null));
        Assert.Equal(["25%", "25%"], figure.FindAll("rect.zone").Select(zone => zone.GetAttribute("width")));
        Assert.Equal(["100,100 200,100 150,350", "100,100 200,100 150,350"], figure.FindAll("polygon.zone").Select(zone => zone.GetAttribute("points")));
    }

    [Fact]
    public void Figure_Caption_SaysWhatIsADrawingWhoMadeItAndUnderWhichLicence()
    {
        var figure = Render<PhotoFigure>(parameters => parameters
            .Add(x => x.Photo, new Photo { RevisionId = Revision, Id = PhotoId.New(), Sha256 = Sha, WidthPixels = 300, HeightPixels = 200, IsDrawing = true, Caption = "Front", Credit = "I. Sorrel", Licence = "CC0" })
            .Add(x => x.Number, 1).Add(x => x.Licence, "CC BY 4.0"));
        var caption = string.Join(' ', figure.Find("figcaption").Text().Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        Assert.Contains("Photo 1. Front. A drawing made for this page, not a photograph.", caption, StringComparison.Ordinal);
        Assert.Contains("Credit: I. Sorrel. Licence: CC0.", caption, StringComparison.Ordinal);
        Assert.Empty(figure.FindAll(".marks"));
    }

    private IRenderedComponent<PhotoFigure> Figure(params PhotoMark[] marks) => Render<PhotoFigure>(parameters => parameters
        .Add(x => x.Photo, new Photo { RevisionId = Revision, Id = PhotoId.New(), Sha256 = Sha, WidthPixels = 1200, HeightPixels = 800 })
        .Add(x => x.Number, 3).Add(x => x.Place, "board A, top").Add(x => x.Marks, marks));

    private static Callout Pin(int number) => new() { RevisionId = Revision, Id = CalloutId.New(), PhotoId = PhotoId.New(), Number = number, X = 0.2 * number, Y = 0.5 };
}
