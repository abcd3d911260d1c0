using System.Net;
using System.Text.Json;

namespace Catalogue.Web.Tests.Api;

/// <summary>Candidates of a recorded component, and taking one, over the API.</summary>
/// <param name="site">The site.</param>
public sealed class IdentificationTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    [Fact]
    public async Task Candidates_OfAMisreadPart_SayWhatTheyWouldChangeAndAreTaken()
    {
        var known = await BoardAsync("Id known");
        var original = await ComponentAsync(known.Board, new { part_number = "IDQ40-65N", function_class = "switch" });
        await site.Writer.PostAsync($"/api/v1/components/{original}/ratings", new { kind = "rated_voltage", text = "40 V", evidence = "read_on_part", source = "photo 2" }, HttpStatusCode.Created);
        await site.Writer.PostAsync($"/api/v1/teardowns/{known.Slug}/publish", new { note = "" }, HttpStatusCode.OK);
        var asked = await BoardAsync("Id asked");
        var rail = (await site.Writer.PostAsync($"/api/v1/teardowns/{asked.Slug}/rails", new { name = "Bus", kind = "dc_bus", max_voltage_v = new { nominal = 20, evidence = "measured" } }, HttpStatusCode.Created)).Text("id");
        var part = await ComponentAsync(asked.Board, new { marking_as_read = "IDQ4O-65N", designators = "Q7", rail_id = rail, circuit_position = "across_rail" });

        var answer = await ReadAsync($"/api/v1/components/{part}/candidates");
        Assert.Equal("IDQ4O-65N", answer.Text("text"));
        var first = answer.Items("candidates").First();
        Assert.Equal("idq40-65n", first.Text("family"));
        Assert.Contains("O looks like 0", first.Items("reasons").First().GetString(), StringComparison.Ordinal);
        Assert.Equal("rated_voltage", first.Items("ratings").Single().Text("kind"));
        var change = first.Items("would_change").Single(one => one.Text("rule") == "voltage_margin");
        Assert.Equal(("Q7", part), (change.Text("subject"), change.Text("component")));
        Assert.True(change.GetProperty("becomes_computable").GetBoolean());
        Assert.Equal(JsonValueKind.Null, change.GetProperty("from").ValueKind);

        var done = await site.Writer.PostAsync($"/api/v1/components/{part}/identify", new { family = "idq40-65n", take_ratings = true }, HttpStatusCode.OK);
        Assert.Equal(("inferred", "switch"), (done.Text("family_evidence"), done.Text("function_class")));
        Assert.Contains("IDQ40-65N", done.Items("ratings").Single().Text("source"), StringComparison.Ordinal);
        var draft = (await ReadAsync($"/api/v1/teardowns/{asked.Slug}?draft=true")).Items("boards").Single().Items("components").Single();
        Assert.Equal(("IDQ4O-65N", "idq40-65n"), (draft.Text("marking_as_read"), draft.Text("family")));
    }

    [Theory]
    [InlineData("--- //", "Neither a letter nor a digit")]
    [InlineData("🙂\u202e\u200f", "Neither a letter nor a digit")]
    [InlineData("IDX\u0410900", "U+0410")]
    public async Task Candidates_OfAnOddMarking_SayWhatIsOdd(string marking, string said)
    {
        var part = await ComponentAsync((await BoardAsync("Id odd")).Board, new { marking_as_read = marking });
        Assert.Contains((await ReadAsync($"/api/v1/components/{part}/candidates")).Items("warnings"), warning => warning.GetString()!.Contains(said, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Candidates_OfTheLongestMarking_Answer()
    {
        var part = await ComponentAsync((await BoardAsync("Id long")).Board, new { marking_as_read = string.Concat(Enumerable.Repeat("8O8-7A ", 71)) });
        await ReadAsync($"/api/v1/components/{part}/candidates");
    }

    [Fact]
    public async Task Identify_WhatIsWrong_IsRefused()
    {
        var part = await ComponentAsync((await BoardAsync("Id wrong")).Board, new { marking_as_read = "IDW1" });
        Assert.Equal("family", (await site.Writer.PostAsync($"/api/v1/components/{part}/identify", new { family = "no-such" }, HttpStatusCode.UnprocessableEntity)).Text("field"));
        Assert.Equal("family", (await site.Writer.PostAsync($"/api/v1/components/{part}/identify", new { }, HttpStatusCode.UnprocessableEntity)).Text("field"));
        using var missing = await site.Reader.GetAsync($"/api/v1/components/{Guid.NewGuid()}/candidates");
        using var anonymous = await site.Anonymous.GetAsync($"/api/v1/components/{part}/candidates");
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.Unauthorized), (missing.StatusCode, anonymous.StatusCode));
    }

    private async Task<(string Slug, string Board)> BoardAsync(string name)
    {
        var slug = (await site.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand = "Ferrowick", name, model = name, category = "adapter" }, title = name }, HttpStatusCode.Created)).Text("slug")!;
        return (slug, (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/boards", new { name = "Main" }, HttpStatusCode.Created)).Text("id")!);
    }

    private async Task<string> ComponentAsync(string board, object form) => (await site.Writer.PostAsync($"/api/v1/boards/{board}/components", form, HttpStatusCode.Created)).Text("id")!;

    private async Task<JsonElement> ReadAsync(string path) => JsonDocument.Parse(await site.Reader.GetStringAsync(path)).RootElement;
}
