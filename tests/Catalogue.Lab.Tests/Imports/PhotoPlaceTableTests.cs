using Bunit;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Catalogue.Lab.Imports;

namespace Catalogue.Lab.Tests.Imports;

public sealed class PhotoPlaceTableTests : LabContext
{
    private static readonly Board Main = new() { RevisionId = RevisionId.New(), Id = BoardId.New(), Position = 0, Name = "Main board" };

    private static readonly IReadOnlyList<PlaceChoice> Choices = PlaceChoice.Of([Main], ["DC-DC"]);

    [Fact]
    public void Render_Pictures_StandOnTheirPlaceAndSayWhatIsUnsure()
    {
        var pictures = new[] { Picture("Board A/top.jpg", new PhotoPlace(PhotoSubject.BoardTop, Main.Id)), Picture("dc-dc.jpg", new PhotoPlace(PhotoSubject.Detail, null, "DC-DC"), "No side is named.") };

        var table = Table(pictures);

        var lists = table.FindAll("select");
        Assert.Equal(["A, Main board: top", "New board DC-DC: a detail"], lists.Select(list => list.QuerySelector("option[selected]")!.TextContent));
        Assert.Equal("Place of Board A/top.jpg", lists[0].GetAttribute("aria-label"));
        Assert.Contains("Unsure: No side is named.", table.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void Choose_AnotherPlace_KeepsTheCaptionAndAsksForTheStep()
    {
        var picture = Picture("a.jpg", new PhotoPlace(PhotoSubject.Product, Caption: "Lid off"));
        var table = Table([picture]);

        table.Find("select").Change(Choices.ToList().FindIndex(choice => choice.Place?.Subject is PhotoSubject.Step).ToString(System.Globalization.CultureInfo.InvariantCulture));
        table.Find("input[type=number]").Change("4");

        Assert.Equal(new PhotoPlace(PhotoSubject.Step, Step: 4, Caption: "Lid off"), picture.Place);
    }

    [Fact]
    public void Choose_LeaveItOut_TakesThePlaceAway()
    {
        var picture = Picture("a.jpg", new PhotoPlace(PhotoSubject.Product));

        Table([picture]).Find("select").Change((Choices.Count - 1).ToString(System.Globalization.CultureInfo.InvariantCulture));

        Assert.False(picture.IsWanted);
    }

    [Fact]
    public void Render_FileThatCannotBeAdded_HasNoListAndSaysWhy()
    {
        var table = Table([new PictureInHand { Path = "notes.txt", IsRefused = true, Remark = "It is not a picture." }]);

        Assert.Empty(table.FindAll("select"));
        Assert.Contains("It is not a picture.", table.Markup, StringComparison.Ordinal);
    }

    private static PictureInHand Picture(string path, PhotoPlace place, params string[] doubts) => new() { Path = path, Place = place, Doubts = doubts };

    private IRenderedComponent<PhotoPlaceTable> Table(IReadOnlyList<PictureInHand> pictures) =>
        Render<PhotoPlaceTable>(parameters => parameters.Add(table => table.Pictures, pictures).Add(table => table.Choices, Choices));
}
