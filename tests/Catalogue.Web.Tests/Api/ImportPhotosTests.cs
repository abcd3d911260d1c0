using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using Catalogue.Data.Imports;
using Catalogue.Data.Photos;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Imports;
using Catalogue.Domain.Photos;
using Catalogue.Media.Photos;
using Catalogue.Web.Imports;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Api;

public sealed class ImportPhotosTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    private static int _teardowns;

    [Fact]
    public async Task Post_ZipOfPictures_GoesWhereNamesSay()
    {
        var slug = await TeardownAsync();
        var board = await BoardAsync(slug, "Main power board");
        await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/steps", new { heading = "Open the case" });
        var zip = ZipFiles.Of(
            ("shots/Board A/top.png", Pictures.Png(40, 30, 10)),
            ("shots/Board A/bottom.png", Pictures.Png(40, 30, 11)),
            ("shots/DC-DC/IMG_0007.png", Pictures.Png(40, 30, 12)),
            ("shots/label.png", Pictures.Png(40, 30, 13)),
            ("shots/step-01-lid-off.png", Pictures.Png(40, 30, 14)),
            ("shots/rating label.png", Pictures.Png(40, 30, 13)),
            ("shots/__MACOSX/._label.png", [1]),
            ("shots/Thumbs.db", [1, 2]),
            ("shots/notes.txt", "no picture"u8.ToArray()),
            ("shots/empty.jpg", []),
            ("../outside.png", Pictures.Png(8, 8)),
            ("shots/broken.png", Pictures.Png(40, 30, 15)[..^30]),
            ("shots/wrong.jpg", Pictures.Png(40, 30, 16)));

        var foreseen = await RunAsync(slug, zip, "&dry_run=true");

        Assert.True(foreseen.GetProperty("dry_run").GetBoolean());
        Assert.Equal(13, foreseen.Items("entries").Count());
        Assert.Equal("would_add", Entry(foreseen, "shots/Board A/top.png").Text("outcome"));
        Assert.Equal((7, 1, 3, 2), Counts(foreseen));
        Assert.Empty((await DraftAsync(slug)).Items("photos"));

        var report = await RunAsync(slug, zip);

        Assert.Equal((6, 1, 4, 2), Counts(report));
        var top = Entry(report, "shots/Board A/top.png");
        Assert.Equal(("added", "board_top", board), (top.Text("outcome"), top.GetProperty("place").Text("subject"), top.GetProperty("place").GetProperty("board").GetGuid()));
        Assert.True(top.GetProperty("sure").GetBoolean());
        Assert.NotEmpty(top.Items("reasons"));
        Assert.Equal(("added", "DC-DC", false), (Entry(report, "shots/DC-DC/IMG_0007.png").Text("outcome"), Entry(report, "shots/DC-DC/IMG_0007.png").GetProperty("place").Text("new_board"), Entry(report, "shots/DC-DC/IMG_0007.png").GetProperty("sure").GetBoolean()));
        Assert.Equal("repeated", Entry(report, "shots/rating label.png").Text("outcome"));
        Assert.Contains("content is PNG", Entry(report, "shots/wrong.jpg").Text("reason"), StringComparison.Ordinal);
        Assert.Contains("leads out", Entry(report, "../outside.png").Text("reason"), StringComparison.Ordinal);
        Assert.Equal("refused", Entry(report, "shots/broken.png").Text("outcome"));
        var draft = await DraftAsync(slug);
        Assert.Equal(["Main power board", "DC-DC"], draft.Items("boards").Select(item => item.Text("name")));
        Assert.Equal(6, draft.Items("photos").Count());
        Assert.Equal(Entry(report, "shots/step-01-lid-off.png").GetProperty("photo").GetGuid(), Assert.Single(draft.Items("steps")).GetProperty("photo_id").GetGuid());
    }

    [Fact]
    public async Task Post_SameZipAgain_AddsNothing()
    {
        var slug = await TeardownAsync();
        var zip = ZipFiles.Of(("board a top.png", Pictures.Png(20, 20, 1)), ("board a bottom.png", Pictures.Png(20, 20, 2)));
        await RunAsync(slug, zip);

        Assert.Equal((0, 2, 0, 0), Counts(await RunAsync(slug, zip, "&dry_run=true")));
        Assert.Equal((0, 2, 0, 0), Counts(await RunAsync(slug, zip)));
        Assert.Equal(2, (await DraftAsync(slug)).Items("photos").Count());
    }

    [Fact]
    public async Task Post_PlacesThatAPersonGave_CountMoreThanNames()
    {
        var slug = await TeardownAsync();
        var board = await BoardAsync(slug, "Main power board");
        var zip = ZipFiles.Of(("IMG_1.png", Pictures.Png(20, 20, 1)), ("IMG_2.png", Pictures.Png(20, 20, 2)), ("IMG_3.png", Pictures.Png(20, 20, 3)));
        var places = JsonSerializer.Serialize(new Dictionary<string, object>
        {
            ["IMG_1.png"] = new { subject = "board_bottom", board },
            ["IMG_2.png"] = new { subject = "detail", new_board = "Output board", caption = "The output fuse" },
            ["IMG_3.png"] = new { leave_out = true },
        });

        var report = await RunAsync(slug, zip, places: places);

        Assert.Equal((2, 0, 0, 1), Counts(report));
        var photos = (await DraftAsync(slug)).Items("photos").ToList();
        Assert.Equal(("board_bottom", board), (photos[0].Text("subject"), photos[0].GetProperty("board_id").GetGuid()));
        Assert.Equal("The output fuse", photos[1].Text("caption"));
        Assert.Equal("left_out", Entry(report, "IMG_3.png").Text("outcome"));
    }

    [Theory]
    [InlineData("no json")]
    [InlineData("[1]")]
    [InlineData("{\"a.png\":{\"subject\":\"roof\"}}")]
    [InlineData("{\"a.png\":{\"subject\":\"board_top\"}}")]
    [InlineData("{\"a.png\":{\"subject\":\"detail\",\"step\":2}}")]
    [InlineData("{\"a.png\":{\"subject\":\"step\",\"step\":0}}")]
    [InlineData("{\"a.png\":{\"colour\":1}}")]
    [InlineData("{\"a.png\":null}")]
    public async Task Post_PlacesThatSayNothing_AreRefusedBeforeTheRun(string places)
    {
        var slug = await TeardownAsync();

        var problem = await SendAsync($"/api/v1/imports/photos?teardown={slug}", ZipFiles.Of(("a.png", Pictures.Png(8, 8))), places, HttpStatusCode.UnprocessableEntity);

        Assert.Equal("places", problem.Text("field"));
    }

    [Fact]
    public async Task Post_WrongRequests_SayWhatWouldBeRight()
    {
        var slug = await TeardownAsync();
        var zip = ZipFiles.Of(("a.png", Pictures.Png(8, 8)));

        Assert.Equal("teardown", (await SendAsync("/api/v1/imports/photos", zip, null, HttpStatusCode.UnprocessableEntity)).Text("field"));
        Assert.Equal("teardown", (await SendAsync("/api/v1/imports/photos?teardown=none-such", zip, null, HttpStatusCode.UnprocessableEntity)).Text("field"));
        Assert.Equal("dry_run", (await SendAsync($"/api/v1/imports/photos?teardown={slug}&dry_run=maybe", zip, null, HttpStatusCode.UnprocessableEntity)).Text("field"));
        var refused = await SendAsync($"/api/v1/imports/photos?teardown={slug}&wait=true", Pictures.Png(8, 8), null, HttpStatusCode.OK);
        Assert.Equal("refused", refused.Text("state"));
        Assert.Contains("no zip file", refused.Text("reason"), StringComparison.Ordinal);
        var unknown = await SendAsync($"/api/v1/imports/photos?teardown={slug}&wait=true", zip, "{\"b.png\":{\"leave_out\":true}}", HttpStatusCode.OK);
        Assert.Contains("b.png", unknown.Text("reason"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_BrokenOffInTheMiddle_GoesOnWithoutDoubling()
    {
        var slug = await TeardownAsync();
        var import = site.Services.GetRequiredService<PhotosImport>();
        var zip = ZipFiles.Of(("board a top.png", Pictures.Png(20, 20, 31)), ("board a bottom.png", Pictures.Png(20, 20, 32)), ("board b top.png", Pictures.Png(20, 20, 33)));
        var run = new ImportRun
        {
            Id = ImportRunId.New(),
            Kind = ImportKind.Photos,
            Options = new Dictionary<string, string> { ["teardown"] = slug },
            State = ImportState.Running,
            Who = "writer",
            AskedAt = site.Services.GetRequiredService<TimeProvider>().GetUtcNow(),
        };

        await Assert.ThrowsAsync<OperationCanceledException>(() =>
            import.RunAsync(new ImportWork(run, new MemoryStream(zip), (done, _, _) => done == 2 ? throw new OperationCanceledException() : Task.CompletedTask), default));
        Assert.Equal(2, (await DraftAsync(slug)).Items("photos").Count());
        var again = Assert.IsType<ImportOutcome.Done>(await import.RunAsync(new ImportWork(run, new MemoryStream(zip), (_, _, _) => Task.CompletedTask), default));

        Assert.Equal((3, 0, 0), (((PhotosReport)again.Report).Added, ((PhotosReport)again.Report).AlreadyThere, ((PhotosReport)again.Report).Refused));
        var draft = await DraftAsync(slug);
        Assert.Equal(3, draft.Items("photos").Count());
        Assert.Equal(["Board A", "Board B"], draft.Items("boards").Select(item => item.Text("name")));
    }

    [Fact]
    public async Task PostPhoto_WithAPath_GoesWhereItSaysAndOnlyOnce()
    {
        var slug = await TeardownAsync();
        var address = $"/api/v1/teardowns/{slug}/photos?path={Uri.EscapeDataString("Platine 2/Rückseite.png")}";

        var first = await site.Writer.UploadAsync(address, Pictures.Png(20, 20, 41), "Rückseite.png", HttpStatusCode.Created);
        var second = await site.Writer.UploadAsync(address, Pictures.Png(20, 20, 41), "Rückseite.png", HttpStatusCode.OK);

        Assert.Equal(first.GetProperty("id").GetGuid(), second.GetProperty("id").GetGuid());
        Assert.Equal((false, true), (first.GetProperty("already_there").GetBoolean(), second.GetProperty("already_there").GetBoolean()));
        var photo = Assert.Single((await DraftAsync(slug)).Items("photos"));
        Assert.Equal("board_bottom", photo.Text("subject"));
        await site.Writer.UploadAsync($"/api/v1/teardowns/{slug}/photos?subject=detail&step=3", Pictures.Png(8, 8), "a.png", HttpStatusCode.BadRequest);
        await site.Writer.UploadAsync($"/api/v1/teardowns/{slug}/photos?board={Guid.NewGuid()}&new_board=X", Pictures.Png(8, 8), "a.png", HttpStatusCode.BadRequest);
    }

    [Fact]
    public async Task Place_PictureOnABoardThatIsGone_IsRefused()
    {
        var slug = await TeardownAsync();
        var teardown = await site.Services.GetRequiredService<TeardownChanges>().FindAsync(slug);
        var intake = site.Services.GetRequiredService<PhotoIntake>();
        var accepted = Assert.IsType<PhotoReceipt.Accepted>(await intake.ReceiveAsync(new MemoryStream(Pictures.Png(20, 20, 51)), default));

        var outcome = await site.Services.GetRequiredService<PlacePhoto>().RunAsync(
            teardown!.Value, accepted.ToTakenIn("a.png"), new PhotoPlace(PhotoSubject.BoardTop, Domain.Teardowns.BoardId.New()), new Editor("writer", IsPerson: false));

        Assert.Equal("board", Assert.IsType<ChangeOutcome<PlacePhoto.Placed>.Refused>(outcome).Field);
    }

    private static (int Added, int AlreadyThere, int Refused, int Skipped) Counts(JsonElement report) =>
        (report.GetProperty("added").GetInt32(), report.GetProperty("already_there").GetInt32(), report.GetProperty("refused").GetInt32(), report.GetProperty("skipped").GetInt32());

    private static JsonElement Entry(JsonElement report, string path) => report.Items("entries").Single(entry => entry.Text("path") == path);

    private async Task<JsonElement> RunAsync(string slug, byte[] zip, string query = "", string? places = null)
    {
        var run = await SendAsync($"/api/v1/imports/photos?teardown={slug}&wait=true{query}", zip, places, HttpStatusCode.OK);
        Assert.True(run.Text("state") == "done", run.ToString());
        return run.GetProperty("report");
    }

    private async Task<JsonElement> SendAsync(string path, byte[] zip, string? places, HttpStatusCode expected)
    {
        using var form = new MultipartFormDataContent();
        if (places is not null)
            form.Add(new StringContent(places), "places");
        var file = new ByteArrayContent(zip);
        file.Headers.ContentType = new MediaTypeHeaderValue("application/zip");
        form.Add(file, "file", "shots.zip");
        using var response = await site.Writer.PostAsync(path, form);
        return await site.Writer.ReadEndOfRunAsync(response, expected);
    }

    private async Task<string> TeardownAsync() => (await site.Writer.PostAsync(
        "/api/v1/teardowns",
        new { product = new { brand = "Wexley", name = $"Slate {Interlocked.Increment(ref _teardowns)}", model = "WS-65", category = "charger" }, title = "A charger" })).Text("slug");

    private async Task<Guid> BoardAsync(string slug, string name) => (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/boards", new { name })).GetProperty("id").GetGuid();

    private Task<JsonElement> DraftAsync(string slug) => site.Writer.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true");
}
