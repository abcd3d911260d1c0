using System.Net;
using System.Net.Http.Headers;
using System.Text;

namespace Catalogue.Web.Tests.Api;

/// <summary>Whatever is sent, the answer is a problem document that says what and why, nothing is half-written, and the site goes on.</summary>
/// <param name="site">The site.</param>
public sealed class BadInputTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    [Theory]
    [InlineData("/api")]
    [InlineData("/api/v1")]
    [InlineData("/api/v1/nothing")]
    [InlineData("/api/v2/teardowns")]
    [InlineData("/api/v1/teardowns/no-such-slug")]
    [InlineData("/api/v1/families/no-such-family")]
    [InlineData("/media/not-a-hash/480.jpg")]
    public async Task UnknownPath_WithOrWithoutAToken_IsNotFound(string path)
    {
        await site.Anonymous.GetJsonAsync(path, HttpStatusCode.NotFound);
        await site.Writer.GetJsonAsync(path, HttpStatusCode.NotFound);
    }

    [Theory]
    [InlineData("DELETE", "/api/v1/teardowns")]
    [InlineData("PUT", "/api/v1/families")]
    [InlineData("POST", "/health/live")]
    public async Task WrongMethod_IsSaidWithWhatIsAllowed(string method, string path)
    {
        using var response = await site.Writer.SendAsync(new HttpRequestMessage(new HttpMethod(method), path));

        await Requests.ReadAsync(response, HttpStatusCode.MethodNotAllowed);
        Assert.NotEmpty(response.Content.Headers.Allow);
    }

    [Fact]
    public async Task WrongToken_IsRefused_AlsoWhereNobodyNeedSignIn()
    {
        using var stranger = site.Client("cat_wrong");

        await stranger.GetJsonAsync("/api/v1/teardowns", HttpStatusCode.Unauthorized);
        await stranger.PostAsync("/api/v1/teardowns", Product(), HttpStatusCode.Unauthorized);
        await site.Anonymous.PostAsync("/api/v1/teardowns", Product(), HttpStatusCode.Unauthorized);
        await site.Reader.PostAsync("/api/v1/teardowns", Product(), HttpStatusCode.Forbidden);
    }

    [Fact]
    public async Task Draft_WithoutAToken_IsRefused()
    {
        var (slug, _) = await OpenAsync();

        await site.Anonymous.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true", HttpStatusCode.Unauthorized);
        await site.Anonymous.GetJsonAsync($"/api/v1/teardowns/{slug}", HttpStatusCode.NotFound);
        await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true");
    }

    [Theory]
    [InlineData("")]
    [InlineData("{")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("{\"title\":\"t\",\"product\":null}")]
    [InlineData("{\"product\":{\"brand\":\"A\",\"name\":\"B\",\"model\":\"C\",\"category\":\"toaster\"},\"title\":\"T\"}")]
    [InlineData("{\"product\":{\"brand\":\"A\",\"name\":\"B\",\"model\":\"C\",\"category\":1},\"title\":\"T\"}")]
    [InlineData("{\"product\":{\"brand\":\"A\",\"name\":\"B\",\"category\":\"charger\"},\"title\":\"T\"}")]
    [InlineData("{\"product\":{\"brand\":\"A\",\"name\":\"B\",\"model\":\"C\",\"category\":\"charger\"},\"title\":\"T\",\"colour\":\"red\"}")]
    public async Task Json_ThatCannotBeRead_IsABadRequest(string body)
    {
        using var response = await site.Writer.PostAsync("/api/v1/teardowns", new StringContent(body, Encoding.UTF8, "application/json"));

        var problem = await Requests.ReadAsync(response, HttpStatusCode.BadRequest);
        Assert.DoesNotContain("Catalogue.", problem.Text("detail"), StringComparison.Ordinal);
        Assert.DoesNotContain("NewTeardown", problem.Text("detail"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/api/v1/questions/designs-using-family/answer?family=%00", HttpStatusCode.BadRequest)]
    [InlineData("/api/v1/questions/designs-using-family/answer?family=a%00b", HttpStatusCode.OK)]
    [InlineData("/api/v1/teardowns?brand=%00", HttpStatusCode.NotFound)]
    public async Task Query_WithANul_IsAnsweredAsWithoutIt(string path, HttpStatusCode status) => await site.Anonymous.GetJsonAsync(path, status);

    [Theory]
    [InlineData("/ask/designs-using-family?family=%00")]
    [InlineData("/ask/designs-using-family?family=a%00b")]
    [InlineData("/search?q=%00%01")]
    public async Task Page_AskedWithANul_IsNoOutage(string path) => Assert.Equal(HttpStatusCode.OK, (await site.Anonymous.GetAsync(path)).StatusCode);

    [Theory]
    [InlineData("{\"subject\":\"designs\",\"has\":[{\"family\":\"a\\u0000b\"}]}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("{\"subject\":\"designs\",\"has\":[null]}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("{\"subject\":\"designs\",\"has\":null}", HttpStatusCode.BadRequest)]
    public async Task Ask_WithNulOrNull_IsSaid(string question, HttpStatusCode status)
    {
        using var response = await site.Anonymous.PostAsync("/api/v1/ask", new StringContent(question, Encoding.UTF8, "application/json"));

        await Requests.ReadAsync(response, status);
    }

    [Theory]
    [InlineData("{\"category\":null}")]
    [InlineData("{\"obtained\":null}")]
    [InlineData("{\"standfirst\":\"\\ud800\"}")]
    [InlineData("{\"\\ud800\":1}")]
    [InlineData("{\"Title\":\"cased\"}")]
    public async Task Patch_ThatCannotBeMeant_IsRefusedAndChangesNothing(string patch)
    {
        var (slug, _) = await OpenAsync();

        using var response = await site.Writer.PatchAsync($"/api/v1/teardowns/{slug}", new StringContent(patch, Encoding.UTF8, "application/json"));

        await Requests.ReadAsync(response, HttpStatusCode.BadRequest);
        var draft = await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true");
        Assert.Equal(("power_station", "Tor 600"), (draft.GetProperty("product").Text("category"), draft.Text("title")));
    }

    [Fact]
    public async Task Patch_OfAFieldThatMayBeMissing_TakesItAway()
    {
        var (slug, board) = await OpenAsync();
        var component = (await site.Writer.PostAsync($"/api/v1/boards/{board}/components", new { role = "switch", package = "TO-220", parallel = 4 })).Text("id");

        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/components/{component}", new { package = (string?)null }, HttpStatusCode.OK);
        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/components/{component}", new { parallel = (int?)null }, HttpStatusCode.BadRequest);
        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/components/{component}", new { family = "a\0b" }, HttpStatusCode.UnprocessableEntity);

        var row = (await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true")).Items("boards").Single().Items("components").Single();
        Assert.Equal((System.Text.Json.JsonValueKind.Null, 4), (row.GetProperty("package").ValueKind, row.GetProperty("parallel").GetInt32()));
    }

    [Fact]
    public async Task Photo_ForAnUnknownBoard_IsRefusedBeforeItIsTakenIn()
    {
        var (slug, _) = await OpenAsync();
        var before = Stored();

        await site.Writer.UploadAsync($"/api/v1/teardowns/{slug}/photos?board={Guid.NewGuid()}", Pictures.Png(33, 44, 7), "a.png", HttpStatusCode.NotFound);

        Assert.Equal(before, Stored());
    }

    [Fact]
    public async Task Photo_ThatBreaksOff_IsTheSendersFault()
    {
        var (slug, _) = await OpenAsync();
        var cut = new ByteArrayContent([.. "--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"a.png\"\r\n\r\n"u8, .. Pictures.Png(40, 40, 3)]);
        cut.Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=b");

        using var response = await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/photos", cut);

        await Requests.ReadAsync(response, HttpStatusCode.BadRequest);
    }

    [Fact]
    public async Task Photo_WithALongNameOfOddLetters_IsTakenIn()
    {
        var (slug, _) = await OpenAsync();

        await site.Writer.UploadAsync($"/api/v1/teardowns/{slug}/photos", Pictures.Png(41, 40, 3), new string('a', 254) + "\U0001F600.png", HttpStatusCode.Created);
    }

    [Fact]
    public async Task Charset_ThatIsUnknown_IsSaid()
    {
        using var content = new StringContent("{}");
        content.Headers.ContentType = MediaTypeHeaderValue.Parse("application/json; charset=bogus");
        using var response = await site.Writer.PostAsync("/api/v1/teardowns", content);

        await Requests.ReadAsync(response, HttpStatusCode.UnsupportedMediaType);
    }

    [Fact]
    public async Task Parameter_OfTheWrongKind_IsSaidWithoutTypesOfOurs()
    {
        var problem = await site.Anonymous.GetJsonAsync("/api/v1/teardowns?limit=many", HttpStatusCode.BadRequest);

        Assert.Equal("limit cannot be “many”; GET /api/v1/openapi.json lists the parameters and their values.", problem.Text("detail"));
    }

    [Theory]
    [InlineData("/api/v1/teardowns")]
    [InlineData("/api/v1/questions")]
    [InlineData("/health/live")]
    public async Task Head_OfWhatCanBeRead_IsAnswered(string path)
    {
        using var response = await site.Anonymous.SendAsync(new HttpRequestMessage(HttpMethod.Head, path));

        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
    }

    [Fact]
    public async Task SignIn_SentToFromAMadeUpHost_StaysOnThisSite()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/lab");
        request.Headers.Host = "elsewhere.example";
        request.Headers.Add("X-Forwarded-Host", "elsewhere.example");
        using var response = await site.Anonymous.SendAsync(request);

        Assert.Equal("/sign-in?then=%2Flab", response.Headers.Location?.OriginalString);
    }

    [Fact]
    public async Task ContentType_ThatIsNotTaken_IsSaid()
    {
        var (slug, board) = await OpenAsync();

        using var text = await site.Writer.PostAsync("/api/v1/teardowns", new StringContent("hello", Encoding.UTF8, "text/plain"));
        using var json = await site.Writer.PostAsync($"/api/v1/boards/{board}/components/import", new StringContent("{}", Encoding.UTF8, "application/json"));
        using var photo = await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/photos", new StringContent("{}", Encoding.UTF8, "application/json"));

        await Requests.ReadAsync(text, HttpStatusCode.UnsupportedMediaType);
        await Requests.ReadAsync(json, HttpStatusCode.UnsupportedMediaType);
        await Requests.ReadAsync(photo, HttpStatusCode.UnsupportedMediaType);
    }

    [Fact]
    public async Task Photo_ThatIsNone_IsRefusedAndLeavesNothing()
    {
        var (slug, _) = await OpenAsync();
        var path = $"/api/v1/teardowns/{slug}/photos";
        var before = Stored();

        await site.Writer.UploadAsync(path, Encoding.UTF8.GetBytes("This is a letter, not a picture."), "photo.jpg", HttpStatusCode.UnsupportedMediaType);
        await site.Writer.UploadAsync(path, [], "photo.jpg", HttpStatusCode.UnsupportedMediaType);
        await site.Writer.UploadAsync(path, "GIF89a"u8.ToArray(), "photo.gif", HttpStatusCode.UnsupportedMediaType);
        await site.Writer.UploadAsync(path, "<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>"u8.ToArray(), "photo.svg", HttpStatusCode.UnsupportedMediaType);
        await site.Writer.UploadAsync(path, Pictures.Claiming(30_000, 30_000), "huge.png", HttpStatusCode.UnprocessableEntity);
        await site.Writer.UploadAsync(path, Pictures.Png(600, 400)[..900], "cut.png", HttpStatusCode.UnprocessableEntity);

        Assert.Empty((await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true")).Items("photos"));
        Assert.Equal(before, Stored());
    }

    [Fact]
    public async Task Upload_OfTwoGigabytes_IsRefusedBeforeItIsRead()
    {
        var (slug, board) = await OpenAsync();

        foreach (var path in new[] { $"/api/v1/teardowns/{slug}/photos", $"/api/v1/boards/{board}/components/import" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new TwoGigabytes() };
            request.Headers.ExpectContinue = true;
            using var response = await site.Writer.SendAsync(request);
            await Requests.ReadAsync(response, HttpStatusCode.RequestEntityTooLarge);
        }

        await site.Anonymous.GetJsonAsync("/health/ready");
    }

    [Fact]
    public async Task Json_OfThreeMegabytes_IsTooLarge()
    {
        using var response = await site.Writer.PostAsync("/api/v1/ask", new StringContent("\"" + new string('a', 3_000_000) + "\"", Encoding.UTF8, "application/json"));

        await Requests.ReadAsync(response, HttpStatusCode.RequestEntityTooLarge);
    }

    [Fact]
    public async Task List_WithoutAHeader_IsRefusedAndLeavesNothing()
    {
        var (slug, board) = await OpenAsync();
        var path = $"/api/v1/boards/{board}/components/import";

        await site.Writer.UploadAsync(path, Encoding.UTF8.GetBytes("hello\nworld\n"), "list.csv", HttpStatusCode.UnprocessableEntity);
        await site.Writer.UploadAsync(path, Encoding.UTF8.GetBytes("Reference,Value,Quantity\n"), "list.csv", HttpStatusCode.UnprocessableEntity);
        await site.Writer.UploadAsync(path, Pictures.Png(20, 20), "list.csv", HttpStatusCode.UnprocessableEntity);

        Assert.Empty((await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true")).Items("boards").Single().Items("components"));
    }

    [Fact]
    public async Task Multipart_WithoutAFileOrBrokenOff_IsABadRequest()
    {
        var (slug, _) = await OpenAsync();
        using var form = new MultipartFormDataContent { { new StringContent("x"), "other" } };
        using var none = await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/photos", form);
        await Requests.ReadAsync(none, HttpStatusCode.BadRequest);

        var broken = new ByteArrayContent("--b\r\nContent-Disposition: form-data; name=\"other\"\r\n\r\nabc"u8.ToArray());
        broken.Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=b");
        using var cut = await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/photos", broken);
        await Requests.ReadAsync(cut, HttpStatusCode.BadRequest);
    }

    [Theory]
    [InlineData("{\"subject\":\"designs\",\"limit\":0}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("{\"subject\":\"recipes\"}", HttpStatusCode.BadRequest)]
    [InlineData("{\"subject\":\"components\",\"rank_by\":{\"figure\":\"beauty\"}}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("{\"subject\":\"components\"}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("{\"subject\":\"designs\",\"after\":\"nonsense\"}", HttpStatusCode.UnprocessableEntity)]
    public async Task Ask_WhatCannotBeAsked_IsSaid(string question, HttpStatusCode status)
    {
        using var response = await site.Anonymous.PostAsync("/api/v1/ask", new StringContent(question, Encoding.UTF8, "application/json"));

        await Requests.ReadAsync(response, status);
    }

    [Theory]
    [InlineData("/api/v1/teardowns?category=toaster")]
    [InlineData("/api/v1/teardowns?limit=0")]
    [InlineData("/api/v1/teardowns?limit=many")]
    [InlineData("/api/v1/products?after=%00")]
    [InlineData("/api/v1/questions/designs-using-family/answer")]
    [InlineData("/api/v1/questions/thinnest-fuse-headroom/answer?category=toaster")]
    public async Task List_AskedWrongly_IsABadRequest(string path) => await site.Anonymous.GetJsonAsync(path, HttpStatusCode.BadRequest);

    [Theory]
    [InlineData("search=%00%01")]
    [InlineData("search=%F0%9F%94%8B")]
    [InlineData("search='; drop table teardowns; --")]
    [InlineData("search=%25_%5C")]
    public async Task Search_ForAnything_IsAnswered(string query)
    {
        foreach (var list in new[] { "teardowns", "products", "makers", "families" })
            await site.Anonymous.GetJsonAsync($"/api/v1/{list}?{query}");
    }

    [Fact]
    public async Task Callout_OutsideThePicture_IsRefused()
    {
        var (slug, board) = await OpenAsync();
        var photo = (await site.Writer.UploadAsync($"/api/v1/teardowns/{slug}/photos?board={board}", Pictures.Png(64, 48, 9), "a.png", HttpStatusCode.Created)).Text("id");

        foreach (var body in new object[] { new { x = 1.2, y = 0.5 }, new { x = 0.5 }, new { shape = "box", x = 0.5, y = 0.5, width = 0.9, height = 0.1 }, new { shape = "polygon", corners = new[] { 0.1, 0.1 } }, new { x = 0.5, y = 0.5, component_id = Guid.NewGuid() } })
            await site.Writer.PostAsync($"/api/v1/photos/{photo}/callouts", body, HttpStatusCode.UnprocessableEntity);
        Assert.Empty((await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true")).Items("photos").Single().Items("callouts"));
    }

    [Fact]
    public async Task Patch_WithAnOldVersion_IsAConflict()
    {
        var (slug, board) = await OpenAsync();
        var version = (await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true")).Items("boards").Single().GetProperty("version").GetUInt32();

        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/boards/{board}?version={version}", new { name = "First" }, HttpStatusCode.OK);
        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/boards/{board}?version={version}", new { name = "Second" }, HttpStatusCode.Conflict);

        Assert.Equal("First", (await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true")).Items("boards").Single().Text("name"));
    }

    [Fact]
    public async Task Answers_OfEveryKind_CarryTheStrictHeaders()
    {
        foreach (var path in new[] { "/api/v1/teardowns", "/api/v1/nothing", "/health/live" })
        {
            using var response = await site.Anonymous.GetAsync(path);
            Assert.Contains("default-src 'none'", Assert.Single(response.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
            Assert.Equal("nosniff", Assert.Single(response.Headers.GetValues("X-Content-Type-Options")));
            Assert.False(response.Headers.Contains("Set-Cookie"));
            Assert.False(response.Headers.Contains("Server"));
        }
    }

    private List<string> Stored() => [.. Directory.EnumerateFiles(Path.Combine(site.Folder, "media"), "*", SearchOption.AllDirectories).Where(file => !file.Contains("-w", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    private static object Product() => new { product = new { brand = "Ferrowick", name = "Tor 600", model = "TOR600", category = "power_station" }, title = "Tor 600" };

    private async Task<(string Slug, string Board)> OpenAsync()
    {
        var slug = (await site.Writer.PostAsync("/api/v1/teardowns", Product())).Text("slug");
        return (slug, (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/boards", new { name = "Main" })).Text("id"));
    }

    private sealed class TwoGigabytes : HttpContent
    {
        private const long Length = 2L * 1024 * 1024 * 1024;

        public TwoGigabytes() => Headers.ContentType = MediaTypeHeaderValue.Parse("multipart/form-data; boundary=b");

        protected override async Task SerializeToStreamAsync(Stream stream, TransportContext? context)
        {
            var block = new byte[1024 * 1024];
            for (long sent = 0; sent < Length; sent += block.Length)
                await stream.WriteAsync(block);
        }

        protected override bool TryComputeLength(out long length)
        {
            length = Length;
            return true;
        }
    }
}
