using System.Net;
using System.Text;
using System.Text.Json;

namespace Catalogue.Web.Tests.Api;

/// <summary>Changing, merging and splitting families, and the worklist, over the API.</summary>
/// <param name="site">The site.</param>
public sealed class FamilyChangesTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    [Fact]
    public async Task Merge_AndUndo_MoveTheDesignsOfAFamily()
    {
        var one = await PublishedAsync("Merge one", "MW71-A");
        var two = await PublishedAsync("Merge two", "MW71-B");
        var merge = (await site.Writer.PostAsync("/api/v1/families/mw71-b/merge", new { into = "mw71-a", note = "one die" }, HttpStatusCode.Created)).Text("id");
        Assert.Equal([one, two], await DesignsAsync("mw71-a"));
        var part = (await GetAsync($"/api/v1/teardowns/{two}")).Items("boards").Single().Items("components").Single();
        Assert.Equal(("mw71-b", "mw71-a"), (part.Text("family"), part.Text("family_now")));

        await site.Writer.PostAsync($"/api/v1/merges/{merge}/undo", new { }, HttpStatusCode.OK);
        Assert.Equal([one], await DesignsAsync("mw71-a"));
        Assert.Equal([two], await DesignsAsync("mw71-b"));
        await site.Writer.PostAsync($"/api/v1/merges/{merge}/undo", new { }, HttpStatusCode.UnprocessableEntity);
    }

    [Fact]
    public async Task Split_AndUndo_MoveChosenParts()
    {
        var one = await PublishedAsync("Split one", "SW40");
        var two = await PublishedAsync("Split two", "SW40");
        var part = (await GetAsync($"/api/v1/teardowns/{two}")).Items("boards").Single().Items("components").Single().Text("id");
        var split = (await site.Writer.PostAsync("/api/v1/families/sw40/split", new { into = "SW40-X9", components = new[] { part } }, HttpStatusCode.Created)).Text("id");
        Assert.Equal([one], await DesignsAsync("sw40"));
        Assert.Equal([two], await DesignsAsync("sw40-x9"));
        await site.Writer.PostAsync($"/api/v1/splits/{split}/undo", new { }, HttpStatusCode.OK);
        Assert.Equal([one, two], await DesignsAsync("sw40"));
    }

    [Fact]
    public async Task Facts_NamesAndRatings_AreChangedAndChecked()
    {
        await PublishedAsync("Facts", "FC12");
        await site.Writer.SendAsync(HttpMethod.Patch, "/api/v1/families/fc12", new { function_class = "switch", packages = new[] { "DPAK" }, datasheet_url = "https://maker.example/fc12.pdf" }, HttpStatusCode.OK);
        await site.Writer.SendAsync(HttpMethod.Patch, "/api/v1/families/fc12", new { datasheet_url = "javascript:alert(1)" }, HttpStatusCode.UnprocessableEntity);
        await site.Writer.SendAsync(HttpMethod.Patch, "/api/v1/families/no-such", new { note = "x" }, HttpStatusCode.NotFound);
        await site.Writer.PostAsync("/api/v1/families/fc12/aliases", new { name = "FC12-OLD" }, HttpStatusCode.Created);
        await site.Writer.PostAsync("/api/v1/families/fc12/top_marks", new { code = "F2", maker = "Marnholt" }, HttpStatusCode.Created);
        await site.Writer.PostAsync("/api/v1/families/fc12/makers", new { maker = "Marnholt" }, HttpStatusCode.Created);
        await site.Writer.PostAsync("/api/v1/families/fc12/ratings", new { kind = "rated_voltage", text = "40 V", evidence = "datasheet" }, HttpStatusCode.Created);
        await site.Writer.PostAsync("/api/v1/families/fc12/ratings", new { kind = "rated_voltage", text = "40 A" }, HttpStatusCode.UnprocessableEntity);
        var answer = await site.Anonymous.PostAsync("/api/v1/decode/marking", new { text = "FC12OLD" }, HttpStatusCode.OK);
        Assert.Equal("fc12", answer.Items("candidates").First().Text("family"));
        var family = await GetAsync("/api/v1/families/fc12");
        Assert.Equal(("TO-252", "Marnholt"), (family.Items("packages").Single().GetString(), family.Items("makers").Single().GetString()));
        Assert.Equal(("FC12-OLD", "F2", 40.0), (family.Items("other_numbers").Single().Text("name"), family.Items("top_marks").Single().Text("code"), family.Items("typical_ratings").Single().GetProperty("nominal").GetDouble()));
    }

    [Fact]
    public async Task Maker_Renamed_IsFoundUnderBothNamesAndKeepsItsAddress()
    {
        await PublishedAsync("Maker", "MK55");
        await site.Writer.PostAsync("/api/v1/families/mk55/makers", new { maker = "Ulbrecken Semi" }, HttpStatusCode.Created);
        await site.Writer.SendAsync(HttpMethod.Patch, "/api/v1/makers/ulbrecken-semi", new { name = "Ulbrecken Power" }, HttpStatusCode.OK);
        await site.Writer.PostAsync("/api/v1/makers/ulbrecken-semi/aliases", new { name = "three bars in a ring" }, HttpStatusCode.Created);
        await site.Writer.PostAsync("/api/v1/makers/ulbrecken-semi/aliases", new { name = "Three bars, in a ring" }, HttpStatusCode.UnprocessableEntity);
        await site.Writer.PostAsync("/api/v1/makers/ferrowick/aliases", new { name = "ulbrecken semi" }, HttpStatusCode.UnprocessableEntity);
        await PublishedAsync("Maker two", "MK56");
        await site.Writer.PostAsync("/api/v1/families/mk56/makers", new { maker = "ulbrecken SEMI" }, HttpStatusCode.Created);
        Assert.Equal("Ulbrecken Power", (await GetAsync("/api/v1/families/mk56")).Items("makers").Single().GetString());
    }

    [Fact]
    public async Task Entries_OfAFamily_AreTakenAwayByWhatItsAnswerNames()
    {
        await PublishedAsync("Entries", "EN21");
        await PublishedAsync("Entries other", "EN22");
        await site.Writer.PostAsync("/api/v1/families/en21/aliases", new { name = "EN21-OLD", kind = "other_number" }, HttpStatusCode.Created);
        await site.Writer.PostAsync("/api/v1/families/en21/top_marks", new { code = "E2" }, HttpStatusCode.Created);
        await site.Writer.PostAsync("/api/v1/families/en21/makers", new { maker = "Marnholt" }, HttpStatusCode.Created);
        await site.Writer.PostAsync("/api/v1/families/en21/ratings", new { kind = "rated_voltage", text = "40 V" }, HttpStatusCode.Created);
        await site.Writer.PostAsync("/api/v1/families/en21/relations", new { family = "en22", kind = "look_alike", note = "one digit apart" }, HttpStatusCode.Created);
        var family = await GetAsync("/api/v1/families/en21");
        Assert.Equal(("en22", "look_alike", "one digit apart"), (family.Items("relations").Single().Text("family"), family.Items("relations").Single().Text("kind"), family.Items("relations").Single().Text("note")));
        Assert.Equal("en21", (await GetAsync("/api/v1/families/en22")).Items("relations").Single().Text("family"));

        foreach (var entry in (string[])["aliases/EN21-OLD", $"top_marks/{family.Items("top_marks").Single().Text("id")}", $"ratings/{family.Items("typical_ratings").Single().Text("id")}", "makers/marnholt", "relations/en22"])
        {
            await site.Writer.SendAsync(HttpMethod.Delete, $"/api/v1/families/en21/{entry}", null, HttpStatusCode.OK);
            await site.Writer.SendAsync(HttpMethod.Delete, $"/api/v1/families/en21/{entry}", null, HttpStatusCode.NotFound);
        }

        var bare = await GetAsync("/api/v1/families/en21");
        Assert.All((string[])["other_numbers", "top_marks", "typical_ratings", "makers", "relations"], list => Assert.Empty(bare.Items(list)));
    }

    [Fact]
    public async Task Patch_WithAVersionThatWasOvertaken_ChangesNothing()
    {
        await PublishedAsync("Patched", "PA33");
        var version = (await ReadAsync("/api/v1/families/pa33")).GetProperty("version").GetUInt32();
        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/families/pa33?version={version}", new { note = "mine" }, HttpStatusCode.OK);
        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/families/pa33?version={version}", new { note = "late" }, HttpStatusCode.Conflict);
        Assert.Equal("mine", (await ReadAsync("/api/v1/families/pa33")).Text("note"));
        Assert.Null((await GetAsync("/api/v1/families/pa33")).Text("note"));
    }

    [Fact]
    public async Task History_WithFamiliesThatOnlyDraftsHold_IsNotForReaders()
    {
        await PublishedAsync("History", "HI60");
        await PublishedAsync("History two", "HI61");
        await DraftAsync("History draft", "Designator,MPN\nU1,HI62\nU2,HI63\n");
        await site.Writer.PostAsync("/api/v1/families/hi60/relations", new { family = "hi62", kind = "second_source" }, HttpStatusCode.Created);
        await site.Writer.PostAsync("/api/v1/families/hi61/merge", new { into = "hi60", note = "one die" }, HttpStatusCode.Created);
        await site.Writer.PostAsync("/api/v1/families/hi63/merge", new { into = "hi60", note = "not yet published" }, HttpStatusCode.Created);
        var all = await ReadAsync("/api/v1/families/hi60");
        Assert.Equal(["hi63", "hi61"], all.Items("merges").Select(step => step.Text("from")));
        Assert.Equal("hi62", all.Items("relations").Single().Text("family"));

        var open = await GetAsync("/api/v1/families/hi60");
        var step = open.Items("merges").Single();
        Assert.Equal(((string?)"hi61", (string?)"hi60", (string?)null, (string?)null), ((string?)step.Text("from"), step.Text("into"), step.Text("who"), step.Text("note")));
        Assert.Empty(open.Items("relations"));
    }

    [Theory]
    [InlineData("split", "{\"texts\":[\"SP98\"]}")]
    [InlineData("split", "{\"into\":\"a header, 5 ways, straight\",\"texts\":[\"SP98\"]}")]
    [InlineData("split", "{\"into\":\"SP98\",\"texts\":[\"SP98\"]}")]
    [InlineData("merge", "{\"into\":null}")]
    [InlineData("merge", "{\"into\":\"sp98\"}")]
    [InlineData("relations", "{\"family\":\"sp98\",\"kind\":\"look_alike\"}")]
    public async Task Change_ThatMakesNoSense_IsRefusedWithAReason(string what, string body)
    {
        await PublishedAsync($"Sense {what} {body.Length}", "SP98");
        using var answer = await site.Writer.PostAsync($"/api/v1/families/sp98/{what}", new StringContent(body, Encoding.UTF8, "application/json"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
    }

    [Fact]
    public async Task Maker_ThatOnlyADraftMentions_IsNotForReaders()
    {
        await PublishedAsync("Maker seen", "MS70");
        await site.Writer.PostAsync("/api/v1/families/ms70/makers", new { maker = "Halvern Devices" }, HttpStatusCode.Created);
        var maker = await GetAsync("/api/v1/makers/halvern-devices");
        Assert.Equal(("Halvern Devices", "ms70"), (maker.Text("name"), maker.Items("families").Single().Text("slug")));

        await DraftAsync("Maker unseen", "Designator,MPN\nU1,MS71\n");
        await site.Writer.PostAsync("/api/v1/families/ms71/makers", new { maker = "Only Drafted" }, HttpStatusCode.Created);
        using var unseen = await site.Anonymous.GetAsync("/api/v1/makers/only-drafted");
        Assert.Equal(HttpStatusCode.NotFound, unseen.StatusCode);
        Assert.Equal("Only Drafted", (await ReadAsync("/api/v1/makers/only-drafted")).Text("name"));
    }

    [Fact]
    public async Task Worklist_OfUnidentifiedParts_IsResolvedOnceForAll()
    {
        await PublishedAsync("List known", "WL808-7A");
        var slug = await DraftAsync("List draft", "Designator,MPN\nU9,\n");
        var board = JsonDocument.Parse(await site.Reader.GetStringAsync($"/api/v1/teardowns/{slug}?draft=true")).RootElement.Items("boards").Single().Text("id");
        await site.Writer.PostAsync($"/api/v1/boards/{board}/components", new { marking_as_read = "WL8O8-7A" }, HttpStatusCode.Created);
        var list = await ReadAsync("/api/v1/worklists/unidentified?limit=50");
        var item = list.Items("items").Single(one => one.Text("marking") == "WL8O8-7A");
        Assert.Equal("wl808-7a", item.Items("candidates").First().Text("family"));
        var component = item.Items("components").Single();
        Assert.Equal(slug, component.Text("teardown"));
        var done = await site.Writer.PostAsync("/api/v1/worklists/unidentified/resolve", new { key = item.Text("key"), family = "wl808-7a", evidence = "decoded" }, HttpStatusCode.OK);
        Assert.Equal(1, done.Items("teardowns").Single().GetProperty("components").GetInt32());
        Assert.DoesNotContain((await ReadAsync("/api/v1/worklists/unidentified?limit=50")).Items("items"), one => one.Text("marking") == "WL8O8-7A");
        using var refused = await site.Anonymous.GetAsync("/api/v1/worklists/unidentified");
        Assert.Equal(HttpStatusCode.Unauthorized, refused.StatusCode);
    }

    private async Task<string> PublishedAsync(string name, string number)
    {
        var slug = await DraftAsync(name, $"Designator,MPN\nU1,{number}\n");
        await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/publish", new { note = "" }, HttpStatusCode.OK);
        return slug;
    }

    private async Task<string> DraftAsync(string name, string list)
    {
        var slug = (await site.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand = "Ferrowick", name, model = name, category = "adapter" }, title = name }, HttpStatusCode.Created)).Text("slug")!;
        var board = (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/boards", new { name = "Main" }, HttpStatusCode.Created)).Text("id");
        await site.Writer.UploadAsync($"/api/v1/boards/{board}/components/import", Encoding.UTF8.GetBytes(list), "list.csv", HttpStatusCode.OK);
        return slug;
    }

    private async Task<List<string?>> DesignsAsync(string slug) => [.. (await GetAsync($"/api/v1/families/{slug}/designs")).Items("items").Select(item => item.Text("teardown")).Order()];

    private async Task<JsonElement> GetAsync(string path) => JsonDocument.Parse(await site.Anonymous.GetStringAsync(path)).RootElement;

    private async Task<JsonElement> ReadAsync(string path) => JsonDocument.Parse(await site.Reader.GetStringAsync(path)).RootElement;
}
