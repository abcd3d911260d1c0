using System.Net;
using Catalogue.Data.Imports;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Imports;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Api;

public sealed class ImportsTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    [Fact]
    public async Task Post_KindThatNothingKnows_IsNotFoundAndSaysWhatThereIs()
    {
        var problem = await site.Writer.UploadAsync("/api/v1/imports/holiday_film", [1, 2, 3], "film.bin", HttpStatusCode.NotFound);

        Assert.Contains("holiday_film", problem.Text("detail"), StringComparison.Ordinal);
        Assert.Equal("kind", problem.Text("field"));
    }

    [Fact]
    public async Task Post_WithoutAWriteToken_IsRefused()
    {
        await site.Anonymous.UploadAsync("/api/v1/imports/article", [1], "a.md", HttpStatusCode.Unauthorized);
        await site.Reader.UploadAsync("/api/v1/imports/article", [1], "a.md", HttpStatusCode.Forbidden);
        await site.Anonymous.GetJsonAsync("/api/v1/imports", HttpStatusCode.Unauthorized);
        await site.Anonymous.GetJsonAsync($"/api/v1/imports/{Guid.NewGuid()}", HttpStatusCode.Unauthorized);
    }

    [Fact]
    public async Task Get_ARun_TellsWhatCameOfItAndStandsInTheListOfWhoAsked()
    {
        var runs = site.Services.GetRequiredService<ImportRuns>();
        var id = ImportRunId.New();
        await runs.OpenAsync(new ImportRuns.Request(id, ImportKind.Photos, "bench.zip", new Dictionary<string, string> { ["board"] = "A" }, new Editor("writer", IsPerson: false), null));
        await runs.FinishAsync(id, ImportState.Refused, "Nothing in it is a photo.", new { Files = 3 });

        var run = await site.Reader.GetJsonAsync($"/api/v1/imports/{id}");

        Assert.Equal(("refused", "Nothing in it is a photo.", "photos", "bench.zip"), (run.Text("state"), run.Text("reason"), run.Text("kind"), run.Text("file_name")));
        Assert.Equal(("A", 3), (run.GetProperty("options").Text("board"), run.GetProperty("report").GetProperty("files").GetInt32()));
        Assert.Equal(System.Text.Json.JsonValueKind.Null, run.GetProperty("parts_total").ValueKind);
        Assert.Equal(id.ToString(), Assert.Single((await site.Writer.GetJsonAsync("/api/v1/imports")).Items("items")).Text("id"));
        Assert.Empty((await site.Reader.GetJsonAsync("/api/v1/imports")).Items("items"));
        await site.Reader.GetJsonAsync($"/api/v1/imports/{Guid.NewGuid()}", HttpStatusCode.NotFound);
        await site.Reader.GetJsonAsync("/api/v1/imports?limit=0", HttpStatusCode.BadRequest);
    }
}
