using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Catalogue.Data.Imports;
using Catalogue.Domain.Imports;
using Catalogue.Web.Imports;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Api;

public sealed class ImportArticleTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    private const string Article = """
        ---
        title: Taken apart, the Slate 30
        brand: Wexley
        product: Slate 30
        model: WS-30
        category: charger
        date: 2024-05-03
        ---
        # First look

        Mass **118 g**, a [page](https://lab.example/).

        ![board, top](photos/top%20side.png)

        ## Main board

        | Ref | Value | Note |
        |-----|-------|------|
        | C1  | 68uF/63V \| 105 °C | main |
        | Q2  | 650V 0R19 | under the heatsink |

        Seen from below: ![the rating label](photos/label.png) as printed.

        ![gone](photos/none.png)

        ## How we test

        With a load.

        ## Conclusion

        Solid.
        """;

    private static int _articles;

    [Fact]
    public async Task Post_ArticleWithPictures_BecomesADraft()
    {
        var files = Bundle(("notes/article.md", Encoding.UTF8.GetBytes(Named(Article))), ("notes/photos/top side.png", Pictures.Png(1200, 30, 71)), ("notes/photos/label.png", Pictures.Png(40, 30, 72)), ("other.png", Pictures.Png(8, 8)));

        var foreseen = (await RunAsync(files, "article.zip", "dry_run=true")).GetProperty("report");

        Assert.Equal(JsonValueKind.Null, foreseen.GetProperty("teardown").ValueKind);
        Assert.Equal(["step", "step", "method", "finding"], foreseen.Items("sections").Select(section => section.Text("kind")));
        Assert.Equal(["would_add", "would_add", "refused"], foreseen.Items("pictures").Select(picture => picture.Text("outcome")));
        Assert.Equal(("Main board", true, 2), (foreseen.Items("lists").Single().Text("board"), foreseen.Items("lists").Single().GetProperty("board_sure").GetBoolean(), foreseen.Items("lists").Single().GetProperty("imported").GetInt32()));
        Assert.Equal(["other.png"], foreseen.Items("unused").Select(name => name.GetString()));
        Assert.Empty(foreseen.Items("missing"));

        var report = (await RunAsync(files, "article.zip", "")).GetProperty("report");

        var draft = await site.Writer.GetJsonAsync($"/api/v1/teardowns/{report.Text("teardown")}?draft=true");
        var board = Assert.Single(draft.Items("boards"));
        Assert.Equal("Main board", board.Text("name"));
        Assert.Equal(["C1", "Q2"], board.Items("components").Select(component => component.Text("designators")));
        Assert.Contains("68uF/63V | 105 °C", board.Items("components").First().GetProperty("imported_row").ToString(), StringComparison.Ordinal);
        var photos = draft.Items("photos").ToList();
        Assert.Equal(["board_top", "product"], photos.Select(photo => photo.Text("subject")));
        Assert.Equal(["board, top", "the rating label"], photos.Select(photo => photo.Text("alt_text")));
        var steps = draft.Items("steps").ToList();
        Assert.Equal(["First look", "Main board"], steps.Select(step => step.Text("heading")));
        Assert.Equal(photos[0].GetProperty("id").GetGuid(), steps[0].GetProperty("photo_id").GetGuid());
        Assert.DoesNotContain("![", steps[0].Text("markdown"), StringComparison.Ordinal);
        Assert.Contains("![the rating label](/media/", steps[1].Text("markdown"), StringComparison.Ordinal);
        Assert.Contains("![gone](photos/none.png)", steps[1].Text("markdown"), StringComparison.Ordinal);
        Assert.DoesNotContain("| C1", steps[1].Text("markdown"), StringComparison.Ordinal);
        Assert.Equal("Solid.", Assert.Single(draft.Items("findings")).Text("markdown"));
        var kept = await site.Reader.GetJsonAsync($"/api/v1/teardowns/{report.Text("teardown")}/article");
        Assert.Contains("| C1  | 68uF/63V", kept.Text("text"), StringComparison.Ordinal);
        Assert.Equal("notes/article.md", kept.Text("file_name"));
        await site.Anonymous.GetJsonAsync($"/api/v1/teardowns/{report.Text("teardown")}/article", HttpStatusCode.Unauthorized);
        await site.Anonymous.GetJsonAsync($"/api/v1/teardowns/{report.Text("teardown")}", HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Post_ArticleThatLeavesThingsOut_AsksForThem()
    {
        var article = Encoding.Latin1.GetBytes("Gerät geöffnet\n==============\n\nSpannung 20,1 V ±0,05 V.\n\n1. Deckel lösen\n2. Kühlkörper abziehen\n\nFußnote[^1]\n\n[^1]: Abstand 6,4 mm\n");

        var foreseen = (await RunAsync(article, "note.md", "dry_run=true")).GetProperty("report");
        var refused = await SendAsync(article, "note.md", "wait=true", [], HttpStatusCode.OK);

        Assert.Equal(["brand", "name", "model", "category"], foreseen.Items("missing").Select(name => name.GetString()));
        Assert.Equal(("Gerät geöffnet", "ISO-8859-1"), (foreseen.Text("title"), foreseen.Text("encoding")));
        Assert.Equal(("refused", "ISO-8859-1"), (refused.Text("state"), refused.GetProperty("report").Text("encoding")));
        Assert.Contains("brand", refused.Text("reason"), StringComparison.Ordinal);

        var query = $"brand=Wexley&name=Slate+{Interlocked.Increment(ref _articles)}&model=WS&category=adapter&date=2020-01-02";
        var done = (await RunAsync(article, "note.md", query)).GetProperty("report");

        var draft = await site.Writer.GetJsonAsync($"/api/v1/teardowns/{done.Text("teardown")}?draft=true");
        var step = Assert.Single(draft.Items("steps"));
        Assert.Equal("Gerät geöffnet", step.Text("heading"));
        Assert.Contains("2. Kühlkörper abziehen", step.Text("markdown"), StringComparison.Ordinal);
        Assert.Contains("20,1 V ±0,05 V", step.Text("markdown"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_ChoicesOfAPerson_CountMoreThanTheArticle()
    {
        var choices = new Dictionary<string, string> { ["sections"] = "{\"0\":\"finding\",\"3\":\"leave_out\"}", ["boards"] = "{\"0\":\"\"}" };

        var report = (await SendAsync(Encoding.UTF8.GetBytes(Named(Article)), "a.md", "wait=true&title=Another+title", choices, HttpStatusCode.OK)).GetProperty("report");

        var draft = await site.Writer.GetJsonAsync($"/api/v1/teardowns/{report.Text("teardown")}?draft=true");
        Assert.Equal("Another title", draft.Text("title"));
        Assert.Empty(draft.Items("boards"));
        Assert.Equal("First look", Assert.Single(draft.Items("findings")).Text("heading"));
        Assert.Contains("| C1  | 68uF/63V \\| 105 °C |", Assert.Single(draft.Items("steps")).Text("markdown"), StringComparison.Ordinal);
        Assert.Equal("The article came alone. Send it with its pictures in a zip file.", report.Items("pictures").First().Text("reason"));
    }

    [Theory]
    [InlineData("category=boat", "category")]
    [InlineData("date=yesterday", "date")]
    [InlineData("dry_run=1", "dry_run")]
    public async Task Post_WrongOptions_SayWhatWouldBeRight(string query, string field) =>
        Assert.Equal(field, (await SendAsync("# A"u8.ToArray(), "a.md", query, [], HttpStatusCode.UnprocessableEntity)).Text("field"));

    [Theory]
    [InlineData("sections", "[]")]
    [InlineData("sections", "{\"0\":\"chapter\"}")]
    [InlineData("sections", "{\"x\":\"step\"}")]
    [InlineData("boards", "{\"0\":1}")]
    public async Task Post_WrongChoices_SayWhatWouldBeRight(string field, string json) =>
        Assert.Equal(field, (await SendAsync("# A"u8.ToArray(), "a.md", "", new Dictionary<string, string> { [field] = json }, HttpStatusCode.UnprocessableEntity)).Text("field"));

    [Fact]
    public async Task Post_WhatIsNoArticle_IsRefused()
    {
        Assert.Contains("picture", await ReasonAsync(Pictures.Png(8, 8), ""), StringComparison.Ordinal);
        Assert.Contains("blanks", await ReasonAsync("   \n"u8.ToArray(), ""), StringComparison.Ordinal);
        Assert.Contains("no article", await ReasonAsync(Bundle(("a.png", Pictures.Png(8, 8))), ""), StringComparison.Ordinal);
        var two = Bundle(("a.md", "# A"u8.ToArray()), ("b.md", "# B"u8.ToArray()));
        Assert.Contains("several texts", await ReasonAsync(two, ""), StringComparison.Ordinal);
        Assert.Contains("no “c.md”", await ReasonAsync(two, "article=c.md"), StringComparison.Ordinal);
        Assert.Contains("section that is not there", (await SendAsync("# A"u8.ToArray(), "a.md", "wait=true", new Dictionary<string, string> { ["sections"] = "{\"7\":\"step\"}" }, HttpStatusCode.OK)).Text("reason"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Post_SameTextAgain_SaysWhereItWas()
    {
        var article = Encoding.UTF8.GetBytes(Named(Article));
        var first = (await RunAsync(article, "a.md", "")).GetProperty("report").Text("teardown");

        Assert.Equal(first, (await RunAsync(article, "a.md", "dry_run=true")).GetProperty("report").Text("same_as"));
    }

    [Fact]
    public async Task Run_BegunAgain_GoesOnWithTheSameDraft()
    {
        var import = site.Services.GetServices<IImportWorker>().Single(worker => worker.Kind is ImportKind.Article);
        var run = new ImportRun
        {
            Id = ImportRunId.New(),
            Kind = ImportKind.Article,
            FileName = "a.md",
            Options = new Dictionary<string, string>(),
            State = ImportState.Running,
            Who = "writer",
            AskedAt = site.Services.GetRequiredService<TimeProvider>().GetUtcNow(),
        };
        var article = Encoding.UTF8.GetBytes(Named(Article));

        var first = Assert.IsType<ImportOutcome.Done>(await import.RunAsync(Work(), default));
        var second = Assert.IsType<ImportOutcome.Done>(await import.RunAsync(Work(), default));

        Assert.Equal(((ArticleReport)first.Report).Teardown, ((ArticleReport)second.Report).Teardown);
        var draft = await site.Writer.GetJsonAsync($"/api/v1/teardowns/{((ArticleReport)first.Report).Teardown}?draft=true");
        Assert.Equal(2, Assert.Single(draft.Items("boards")).Items("components").Count());

        ImportWork Work() => new(run, new MemoryStream(article), (_, _, _) => Task.CompletedTask);
    }

    // Each test has a product of its own.
    private static string Named(string article) => article.Replace("Slate 30", $"Slate 30-{Interlocked.Increment(ref _articles)}", StringComparison.Ordinal);

    private static byte[] Bundle(params (string Name, byte[] Content)[] files) => ZipFiles.Of(files);

    private async Task<string> ReasonAsync(byte[] file, string query)
    {
        var run = await SendAsync(file, "a.md", $"wait=true&{query}".TrimEnd('&'), [], HttpStatusCode.OK);
        Assert.Equal("refused", run.Text("state"));
        return run.Text("reason");
    }

    private async Task<JsonElement> RunAsync(byte[] file, string name, string query)
    {
        var run = await SendAsync(file, name, $"wait=true&{query}".TrimEnd('&'), [], HttpStatusCode.OK);
        Assert.True(run.Text("state") == "done", run.ToString());
        return run;
    }

    private async Task<JsonElement> SendAsync(byte[] content, string name, string query, Dictionary<string, string> fields, HttpStatusCode expected)
    {
        using var form = new MultipartFormDataContent();
        foreach (var (field, text) in fields)
            form.Add(new StringContent(text), field);
        var file = new ByteArrayContent(content);
        file.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        form.Add(file, "file", name);
        using var response = await site.Writer.PostAsync($"/api/v1/imports/article?{query}", form);
        return await site.Writer.ReadEndOfRunAsync(response, expected);
    }
}
