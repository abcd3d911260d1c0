using System.Net;
using System.Text;
using System.Text.Json;

namespace Catalogue.Web.Tests.Api;

/// <summary>From a marking to part families over the API: open to everybody for what is published.</summary>
/// <param name="site">The site.</param>
public sealed class DecodeMarkingTests(SiteFixture site) : IClassFixture<SiteFixture>, IAsyncLifetime
{
    private const string Path = "/api/v1/decode/marking";

    public async ValueTask InitializeAsync()
    {
        var teardown = await site.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand = "Ferrowick", name = "Mark", model = "M 1", category = "adapter" }, title = "Ferrowick Mark" }, HttpStatusCode.Created);
        var slug = teardown.Text("slug");
        var board = (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/boards", new { name = "Main" }, HttpStatusCode.Created)).Text("id");
        await site.Writer.UploadAsync($"/api/v1/boards/{board}/components/import", Encoding.UTF8.GetBytes("Designator,MPN,Package\nU1,808-7A-TR,SOIC-8\nU2,818-7A,SOT-23-6\n"), "list.csv", HttpStatusCode.OK);
        await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/publish", new { note = "" }, HttpStatusCode.OK);
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task Text_WithALookAlike_FindsTheFamilyFirst()
    {
        var answer = await PostAsync(new { text = "8O8-7A" }, HttpStatusCode.OK);
        var first = answer.Items("candidates").First();
        Assert.Equal(("808-7a", "808-7A"), (first.Text("family"), first.Text("name")));
        Assert.InRange(first.GetProperty("score").GetDouble(), 0.9, 1);
        Assert.Equal("808-7A: O looks like 0", first.Items("reasons").First().GetString());
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("take").ValueKind);
    }

    [Fact]
    public async Task Package_ThatFitsAnother_ChangesTheOrder()
    {
        var answer = await PostAsync(new { text = "8?8-7A", package = "SOT23-6" }, HttpStatusCode.OK);
        Assert.Equal("818-7a", answer.Items("candidates").First().Text("family"));
    }

    [Fact]
    public async Task Text_ThatIsExact_MayBeTaken() => Assert.Equal("808-7a", (await PostAsync(new { text = "808-7A-TR" }, HttpStatusCode.OK)).Text("take"));

    [Theory]
    [InlineData("")]
    [InlineData("  \n ")]
    public async Task Text_ThatIsEmpty_IsRefused(string text) => Assert.Equal("text", (await PostAsync(new { text }, HttpStatusCode.UnprocessableEntity)).Text("field"));

    [Fact]
    public async Task Text_OfFiveThousandCharacters_IsRefused() =>
        Assert.Contains("5000", (await PostAsync(new { text = new string('8', 5000) }, HttpStatusCode.UnprocessableEntity)).Text("detail"), StringComparison.Ordinal);

    [Theory]
    [InlineData("--- ///")]
    [InlineData("🙂🙂")]
    [InlineData("\u202e\u200f")]
    [InlineData("?")]
    public async Task Text_WithoutLetterOrDigit_HasNoCandidatesAndSaysWhy(string text)
    {
        var answer = await PostAsync(new { text }, HttpStatusCode.OK);
        Assert.Empty(answer.Items("candidates"));
        Assert.Equal("Nothing in the text is a letter or a digit of a part number.", answer.Items("warnings").First().GetString());
    }

    [Fact]
    public async Task Text_WithAForeignLetter_SaysWhich()
    {
        var answer = await PostAsync(new { text = "808-7\u0410" }, HttpStatusCode.OK);
        Assert.Equal("808-7a", answer.Items("candidates").First().Text("family"));
        Assert.Contains("U+0410", Assert.Single(answer.Items("warnings")).GetString(), StringComparison.Ordinal);
    }

    private Task<JsonElement> PostAsync(object body, HttpStatusCode expected) => site.Anonymous.PostAsync(Path, body, expected);
}
