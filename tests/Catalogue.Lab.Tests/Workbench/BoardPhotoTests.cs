using Bunit;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Photos;
using Catalogue.Lab.Workbench;

namespace Catalogue.Lab.Tests.Workbench;

public sealed class BoardPhotoTests : LabContext
{
    private readonly Photo _photo = Records.Photo();
    private readonly BoardComponent _fuse = Records.Fuse();

    [Fact]
    public void Balloons_AreButtonsThatSayWhatTheyPointAt()
    {
        var photo = Render([Records.Pin(_photo.Id, 1, _fuse.Id), Records.Pin(_photo.Id, 2, null)]);

        Assert.Equal(
            ["Callout 1: F1, pack fuse", "Callout 2: no component yet"],
            photo.FindAll("button.balloon-button").Select(button => button.GetAttribute("aria-label")));
    }

    [Fact]
    public void Balloon_FigureOverGuideline_CarriesItsShape()
    {
        var photo = Render([Records.Pin(_photo.Id, 1, _fuse.Id)], new Dictionary<ComponentId, Verdict> { [_fuse.Id] = Verdict.OverGuideline });

        Assert.Equal("over-guideline", photo.Find("button .badge").GetAttribute("data-verdict"));
    }

    [Fact]
    public void Photo_OriginalSize_HoldsItsPlaceBeforeItIsThere()
    {
        var image = Render([]).Find("img");

        Assert.Equal("2080", image.GetAttribute("width"));
        Assert.Equal("1520", image.GetAttribute("height"));
        Assert.Contains(" 480w", image.GetAttribute("srcset"), StringComparison.Ordinal);
    }

    [Fact]
    public void Balloon_Pressed_OpensItsCallout()
    {
        Callout? opened = null;
        var pin = Records.Pin(_photo.Id, 1, _fuse.Id);
        var photo = Render([pin], opened: callout => opened = callout);

        photo.Find("button.balloon-button").Click();

        Assert.Equal(pin.Id, opened?.Id);
    }

    private IRenderedComponent<BoardPhoto> Render(IReadOnlyList<Callout> callouts, IReadOnlyDictionary<ComponentId, Verdict>? verdicts = null, Action<Callout>? opened = null) =>
        Render<BoardPhoto>(parameters => parameters
            .Add(photo => photo.Photo, _photo)
            .Add(photo => photo.Title, "Photo 1, board A, top")
            .Add(photo => photo.Callouts, callouts)
            .Add(photo => photo.Components, new Dictionary<ComponentId, BoardComponent> { [_fuse.Id] = _fuse })
            .Add(photo => photo.Verdicts, verdicts ?? new Dictionary<ComponentId, Verdict>())
            .Add(photo => photo.OnOpen, opened ?? (_ => { })));
}
