using System.Text.Json;
using Catalogue.Data.Publishing;
using Catalogue.Data.Questions;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Products;
using Catalogue.Domain.Questions;
using Catalogue.Domain.Teardowns;
using Catalogue.Web.Demo;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Demo;

[Collection<PlantedDemoCollection>]
public sealed class DemoCatalogueTests(PlantedDemo demo)
{
    private const string Drover = "sorvane-drover-1000";
    private const string Lath = "quelvane-lath-65";
    private const string Tor = "ferrowick-tor-600";

    private static readonly JsonSerializerOptions SnakeCase = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    private static readonly string[] Slugs = [Drover, Lath, Tor];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task PlantAsync_EmptyCatalogue_PublishesThreeTeardownsOfThreeCategories()
    {
        Assert.True(demo.WasPlanted);
        var page = await demo.Services.GetRequiredService<TeardownsQuery>().PublishedAsync(new TeardownsQuery.Request(), Cancel);

        Assert.Equal([Tor, Lath, Drover], page.Items.Select(item => item.Slug));
        Assert.Equal([ProductCategory.PowerStation, ProductCategory.Charger, ProductCategory.Inverter], page.Items.Select(item => item.Category));
        foreach (var slug in Slugs)
            Assert.Null(await demo.Services.GetRequiredService<TeardownRecordQuery>().DraftAsync(slug, Cancel));
    }

    [Fact]
    public async Task PlantAsync_CatalogueWithTeardowns_PlantsNothing()
    {
        Assert.False(await DemoCatalogue.PlantAsync(demo.Services, Cancel));

        var page = await demo.Services.GetRequiredService<TeardownsQuery>().LabAsync(new TeardownsQuery.Request(), Cancel);
        Assert.Equal(3, page.Items.Count);
    }

    [Fact]
    public async Task PlantAsync_Settings_NameTheLab()
    {
        var settings = await demo.Services.GetRequiredService<SettingsQuery>().RunAsync(Cancel);

        Assert.Equal("Tallow Lane Bench", settings.LabName);
        Assert.Equal("CC BY 4.0", settings.ContentLicence);
        Assert.False(settings.RequiresApproval);
    }

    // By hand. k_temp at 45 (42 to 48) °C: 1 − 0.005·23 = 0.885, 1 − 0.002·20 = 0.960, 1 − 0.002·17 = 0.966.
    // Drover F1-F3: allowed 35·3·0.93·0.75·0.96 = 70.308 A (0.80 and 0.885: 55.755; 1.00 and 0.966: 76.0725);
    //   needed 1000/(0.88·10.5) = 108.2251 A (1000/(0.87·10.4) = 110.5217; 1000/(0.89·10.6) = 105.9996), beyond the 105 A rated.
    // Drover F5: 2·0.75·0.96 = 1.44 A of 0.45 A (1.3275/0.48; 1.449/0.42).
    // Tor F1: 35·0.75·0.96 = 25.2 A (23.23125; 25.3575); needed 600/(0.893·22.0) = 30.5406 A (600/(0.883·21.8) = 31.1698;
    //   600/(0.903·22.2) = 29.9303), within the 35 A rated.
    // Tor F2: 15·0.75·0.96 = 10.8 A of 10 A (9.95625/10.4; 10.8675/10).
    // Tor F3: 10·0.75 = 7.5 A; needed 100/(0.94·22.0) = 4.83559 A (100/(0.93·21.8) = 4.93242; 100/(0.95·22.2) = 4.74158).
    // Lath F1: k_temp at 60 (57 to 63) °C: 1 − 0.003·38 = 0.886, 1 − 0.002·35 = 0.930, 1 − 0.002·32 = 0.936; 2 A times these;
    //   needed 65/(0.91·90·0.65) = 1.221001 A (65/(0.90·90·0.62) = 1.294305; 65/(0.92·90·0.68) = 1.154447).
    [Theory]
    [InlineData(Drover, "F1-F3", 0.5045, 0.6497, 0.7177, Verdict.OverRating)]
    [InlineData(Drover, "F5", 2.7656, 3.2, 3.45, Verdict.Ample)]
    [InlineData(Tor, "F1", 0.7453, 0.8251, 0.8472, Verdict.OverGuideline)]
    [InlineData(Tor, "F2", 0.9573, 1.08, 1.0868, Verdict.Thin)]
    [InlineData(Tor, "F3", 1.5206, 1.5510, 1.5818, Verdict.Adequate)]
    [InlineData(Lath, "F1", 1.3691, 1.5233, 1.6216, Verdict.Adequate)]
    public async Task FuseHeadroom_InputsRecorded_IsWhatIsFoundByHand(string slug, string designators, double low, double nominal, double high, Verdict verdict)
    {
        var figure = FigureOf(await PublishedAsync(slug), designators);

        Assert.Equal(low, figure.Low!.Value, 0.0001);
        Assert.Equal(nominal, figure.Nominal!.Value, 0.0001);
        Assert.Equal(high, figure.High!.Value, 0.0001);
        Assert.Equal(verdict, figure.Verdict);
    }

    [Theory]
    [InlineData(Drover, "F4", "rated_current")]
    [InlineData(Tor, "F101, F102", "current_sharing")]
    public async Task FuseHeadroom_InputMissing_IsUnknownAndNamesIt(string slug, string designators, string missing)
    {
        var figure = FigureOf(await PublishedAsync(slug), designators);

        Assert.Equal(Verdict.Unknown, figure.Verdict);
        Assert.Null(figure.Nominal);
        Assert.Equal([missing], figure.Missing.Select(input => input.Code));
    }

    [Fact]
    public async Task FuseHeadroom_TorF3WithoutAmbient_IsStaticOnlyAndSoNotAmple() =>
        Assert.True((FigureOf(await PublishedAsync(Tor), "F3")).StaticOnly);

    [Fact]
    public async Task Corrections_Tor600_SecondRevisionSupersedesTheFirstAndMovesItsFigure()
    {
        var records = demo.Services.GetRequiredService<TeardownRecordQuery>();
        var first = await records.RevisionAsync(Tor, 1, Cancel);
        var second = await PublishedAsync(Tor);

        Assert.NotNull(first);
        Assert.Equal(RevisionState.Superseded, first.Revision.State);
        Assert.Equal(2, second.Revision.Number);
        Assert.Contains("0.90 → 0.83", second.Publications[0].Publication.Note, StringComparison.Ordinal);
        // With the manual's 24 V: needed 600/(0.893·24) = 27.9955 A, so 25.2/27.9955 = 0.9001.
        Assert.Equal(0.9001, FigureOf(first, "F1").Nominal!.Value, 0.0001);
        Assert.Equal(0.8251, FigureOf(second, "F1").Nominal!.Value, 0.0001);
        Assert.Equal(first.Tests.Count + 1, second.Tests.Count);
        Assert.Equal(first.Findings.Select(finding => finding.Id), second.Findings.Select(finding => finding.Id));
    }

    [Theory]
    [InlineData("kpd-318", new[] { Tor, Lath, Drover })]
    [InlineData("mwk-721", new[] { Tor, Drover })]
    [InlineData("hrb-1240", new[] { Tor, Drover })]
    [InlineData("qrf-226", new[] { Lath })]
    public async Task DesignsUsingFamily_Controller_FindsItsDesigns(string family, string[] designs)
    {
        var answer = await AskAsync("designs-using-family", new Dictionary<string, string> { ["family"] = family });

        Assert.Equal(designs, answer.Rows.Select(row => row.Teardown));
    }

    [Fact]
    public async Task ReadyQuestions_Examples_AreTheControllerOfAllThree()
    {
        var rows = await demo.Services.GetRequiredService<ReadyQuestionsQuery>().RunAsync(Cancel);

        Assert.Equal("kpd-318", rows.Single(row => row.Question.Slug == "designs-using-family").Examples["family"]);
    }

    [Fact]
    public async Task ThinnestFuse_AllCategories_RanksTheSixKnownAndNamesTheTwoUnknown()
    {
        var answer = await AskAsync("thinnest-fuse-headroom", new Dictionary<string, string>());

        Assert.Equal(["F1-F3", "F1", "F2", "F1", "F3", "F5"], answer.Rows.Select(row => row.ComponentName));
        Assert.Equal([Drover, Tor, Tor, Lath, Tor, Drover], answer.Rows.Select(row => row.Teardown));
        Assert.Equal(["F101, F102", "F4"], answer.NotRanked.Rows.Select(row => row.ComponentName));
    }

    [Fact]
    public async Task EnergyClaim_Tor600_IsMoreThanTheCellsAreMarkedFor()
    {
        var record = await PublishedAsync(Tor);
        var cells = record.Components.Single(component => component.FunctionClass == FunctionClass.Cell);

        Assert.Equal([512.0, 512.0], record.Claims.Where(claim => claim.Subject == "energy").Select(claim => claim.Value!.Value));
        Assert.Equal(32, cells.SeriesCount * cells.ParallelCount);
        Assert.Equal(32, cells.Quantity);
        // 32 × 4.5 Ah × 3.2 V = 460.8 Wh.
        Assert.Equal("PLK-32L45\n3.2V 4.5Ah", cells.MarkingAsRead);
        Assert.Equal(396, record.Tests.Single(test => test.Subject == "energy").Value);
    }

    [Theory]
    [InlineData(Drover)]
    [InlineData(Lath)]
    [InlineData(Tor)]
    public async Task Callouts_OnEachPicture_LieOnTheirPartsAndThePrintIsTheMarkingAsRead(string slug)
    {
        var record = await PublishedAsync(slug);
        var places = Places();
        var seen = 0;
        foreach (var callout in record.Callouts)
        {
            var photo = record.Photos.Single(photo => photo.Id == callout.PhotoId);
            var component = callout.ComponentId is { } id ? record.Components.Single(component => component.Id == id) : null;
            var name = component?.Designators ?? record.Ports.Single(port => port.Id == callout.PortId).Name;
            var place = places[Path.GetFileNameWithoutExtension(photo.FileName)!][name];

            Assert.InRange(callout.X, 0, 1);
            Assert.InRange(callout.Y, 0, 1);
            Assert.InRange(callout.X, place.X, place.X + place.Width);
            Assert.InRange(callout.Y, place.Y, place.Y + place.Height);
            Assert.Equal(place.IsGroup ? CalloutShape.Box : CalloutShape.Pin, callout.Shape);
            if (component is null)
                continue;
            Assert.Equal(photo.BoardId, component.BoardId);
            Assert.Equal(place.Marking, component.MarkingAsRead ?? "");
            seen++;
        }

        // Nothing that the table lists is missing from the drawings.
        Assert.Equal(record.Components.Count, seen);
    }

    [Theory]
    [InlineData(Drover)]
    [InlineData(Lath)]
    [InlineData(Tor)]
    public async Task Records_OfEachTeardown_AreDrawnDisclosedAndRestOnSomething(string slug)
    {
        var record = await PublishedAsync(slug);

        Assert.All(record.Photos, photo => Assert.True(photo.IsDrawing && photo.AltText is not null && photo.Caption is not null));
        Assert.NotEqual(SampleSource.NotStated, record.Revision.Obtained);
        Assert.NotNull(record.Revision.ObtainedNote);
        Assert.All(record.Ratings, rating => Assert.NotNull(rating.Source));
        Assert.All(record.RailQuantities, quantity => Assert.NotNull(quantity.Source));
        Assert.All(record.Tests, test => Assert.NotNull(test.Instrument));
        Assert.All(record.Findings, finding => Assert.NotEmpty(finding.ComponentIds.Concat(finding.TestIds)));
        Assert.NotEmpty(record.Steps);
        Assert.Contains(record.Ports, port => port.CapabilityWords.Length > 0);
        Assert.InRange(record.Components.Count(component => component.BoardId == record.Boards[0].Id), 12, 25);
        Assert.NotEmpty(Cautions.For(record.Revision, record.Facts));
    }

    [Fact]
    public async Task Markings_WornAway_AreKeptWithQuestionMarks()
    {
        var tor = await PublishedAsync(Tor);
        var drover = await PublishedAsync(Drover);

        Assert.Contains("?0A", tor.Components.Single(component => component.Designators == "K1").MarkingAsRead, StringComparison.Ordinal);
        Assert.Null(tor.Components.Single(component => component.Designators == "U2").FamilyId);
        Assert.Equal("?A", drover.Components.Single(component => component.Designators == "F4").MarkingAsRead);
    }

    private static Dictionary<string, Dictionary<string, Place>> Places()
    {
        using var stream = typeof(DemoCatalogue).Assembly.GetManifestResourceStream("Catalogue.Web.Demo.Pictures.anchors.json")!;
        return JsonSerializer.Deserialize<Dictionary<string, Dictionary<string, Place>>>(stream, SnakeCase)!;
    }

    private static Figure FigureOf(TeardownRecord record, string designators)
    {
        var component = record.Components.Single(component => component.Designators == designators);
        return record.Figures.Single(figure => figure.ComponentId == component.Id && figure.Rule == FuseHeadroom.Rule);
    }

    private async Task<TeardownRecord> PublishedAsync(string slug) =>
        await demo.Services.GetRequiredService<TeardownRecordQuery>().PublishedAsync(slug, Cancel) ?? throw new InvalidOperationException($"{slug} is not published.");

    private async Task<Answer> AskAsync(string slug, IReadOnlyDictionary<string, string> values)
    {
        var question = ReadyQuestions.All.Single(question => question.Slug == slug).Build(values);
        return Assert.IsType<ChangeOutcome<Answer>.Done>(await demo.Services.GetRequiredService<AskQuery>().RunAsync(question, Cancel)).Value;
    }

    private sealed record Place(double X, double Y, double Width, double Height, bool IsGroup, string Marking);
}
