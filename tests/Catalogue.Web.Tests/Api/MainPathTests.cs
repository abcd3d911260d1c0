using System.Net;
using System.Text;
using System.Text.Json;

namespace Catalogue.Web.Tests.Api;

/// <summary>From an empty catalogue to a published teardown, through the API alone.</summary>
/// <param name="site">The site.</param>
public sealed class MainPathTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    private const string List = "Ref;Value;Package;Qty;MPN\nF1;35A;blade;1;FR-35-B\nU1;;sop 16;1;MWK-721-TR\n\"C1, C2\";220u;radial;2;OND-LH-450\n";

    [Fact]
    public async Task MainPath_FromNothingToAPublishedTeardown()
    {
        var made = await site.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand = "Ferrowick", name = "Tor 600", model = "TOR600-EU", category = "power_station" }, title = "A 600 W station" });
        var slug = made.Text("slug");
        var board = (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/boards", new { name = "Main power board" })).Text("id");

        var report = await site.Writer.UploadAsync($"/api/v1/boards/{board}/components/import", Encoding.UTF8.GetBytes(List), "list.csv", HttpStatusCode.OK);
        Assert.Equal((3, 3), (report.GetProperty("rows").GetInt32(), report.GetProperty("imported").GetInt32()));
        Assert.Equal((";", "UTF-8"), (report.Text("delimiter"), report.Text("encoding")));

        var photo = await site.Writer.UploadAsync($"/api/v1/teardowns/{slug}/photos?board={board}", Pictures.Png(1200, 800), "board.png", HttpStatusCode.Created);
        Assert.Equal((1200, 800), (photo.GetProperty("width").GetInt32(), photo.GetProperty("height").GetInt32()));

        var draft = await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true");
        var components = draft.Items("boards").Single().Items("components").ToList();
        Assert.Equal(["F1", "U1", "C1, C2"], components.Select(row => row.Text("designators")));
        Assert.Equal("mwk-721", components[1].Text("family"));
        Assert.Equal("MWK-721-TR", components[1].GetProperty("imported_row").Text("MPN"));
        Assert.Equal(("sop 16", "SOIC-16"), (components[1].Text("package"), components[1].Text("package_canonical")));
        Assert.Equal(("blade", JsonValueKind.Null), (components[0].Text("package"), components[0].GetProperty("package_canonical").ValueKind));
        var fuse = components[0].Text("id");

        var callout = await site.Writer.PostAsync($"/api/v1/photos/{photo.Text("id")}/callouts", new { x = 0.25, y = 0.5, component_id = fuse });
        Assert.Equal(1, callout.GetProperty("number").GetInt32());
        var rail = (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/rails", new
        {
            name = "Pack",
            kind = "pack",
            min_voltage_v = new { low = 21.8, nominal = 22.0, high = 22.2, evidence = "measured", source = "test 2" },
            max_voltage_v = 29.2,
            max_power_w = 600,
            efficiency = 0.893,
        })).Text("id");
        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/components/{fuse}", new { rail_id = rail, function_class = "blade_fuse", marking_as_read = "35" }, HttpStatusCode.OK);
        await site.Writer.PostAsync($"/api/v1/components/{fuse}/ratings", new { kind = "rated_current", text = "35 A", evidence = "read_on_part", source = "photo 1" });

        var published = await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/publish", new { note = "" }, HttpStatusCode.OK);
        Assert.Equal(1, published.GetProperty("revision").GetInt32());
        Assert.Equal(slug, new Uri(published.Text("url")).Segments[^1]);

        var page = await site.Anonymous.GetJsonAsync($"/api/v1/teardowns/{slug}");
        var figure = page.Items("figures").Single(found => found.Text("rule") == "fuse_headroom");
        // 35 × 0.75 = 26.25 A; 600 / (0.893 × 22) = 30.541 A; 0.8595. Low: 600 / (0.893 × 21.8) = 30.821 A; 0.8517.
        Assert.Equal(0.8595, figure.GetProperty("nominal").GetDouble(), 0.0001);
        Assert.Equal(0.8517, figure.GetProperty("low").GetDouble(), 0.0001);
        Assert.Equal("over_guideline", figure.Text("verdict"));
        Assert.True(figure.GetProperty("static_only").GetBoolean());
        Assert.Contains(figure.GetProperty("working").Items("steps"), step => step.Text("symbol") == "headroom");
        Assert.Equal(JsonValueKind.Null, page.Items("boards").Single().Items("components").First().GetProperty("imported_row").ValueKind);

        var designs = await site.Anonymous.GetJsonAsync("/api/v1/families/mwk-721/designs");
        Assert.Equal(slug, designs.Items("items").Single().Text("teardown"));
        var asked = await site.Anonymous.PostAsync("/api/v1/ask", new { subject = "components", rank_by = new { figure = "fuse_headroom" } }, HttpStatusCode.OK);
        Assert.Equal(slug, asked.Items("rows").First().Text("teardown"));
        var answered = await site.Anonymous.GetJsonAsync("/api/v1/questions/designs-using-family/answer?family=mwk-721");
        Assert.Equal(slug, answered.Items("rows").Single().Text("teardown"));

        await RenditionsAppearAsync(page.Items("photos").Single());
        var csv = await site.Anonymous.GetStringAsync($"/api/v1/teardowns/{slug}/components.csv");
        Assert.StartsWith("board,board_name,number,", csv, StringComparison.Ordinal);
        Assert.Contains("35\u00A0A (read on part)", csv, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Csv_ACellThatASpreadsheetWouldRun_IsDisarmed()
    {
        var slug = (await site.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand = "Quelvane", name = "Lath 65", model = "L65", category = "charger" }, title = "Formula" })).Text("slug");
        var board = (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/boards", new { name = "Main" })).Text("id");
        await site.Writer.PostAsync($"/api/v1/boards/{board}/components", new { role = "=1+1", description = "say \"hello\", then go" });
        await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/publish", new { }, HttpStatusCode.OK);

        var csv = await site.Anonymous.GetStringAsync($"/api/v1/teardowns/{slug}/components.csv");

        Assert.Contains("\"'=1+1\"", csv, StringComparison.Ordinal);
        Assert.Contains("\"say \"\"hello\"\", then go\"", csv, StringComparison.Ordinal);
    }

    private async Task RenditionsAppearAsync(JsonElement photo)
    {
        var urls = photo.Items("renditions").Select(rendition => rendition.Text("url")).ToList();
        Assert.Equal(3, urls.Count);
        foreach (var url in urls)
        {
            HttpResponseMessage response;
            var tries = 0;
            while ((response = await site.Anonymous.GetAsync(url)).StatusCode == HttpStatusCode.ServiceUnavailable && tries++ < 80)
                await Task.Delay(250);
            Assert.Equal(HttpStatusCode.OK, response.StatusCode);
            Assert.Equal("image/jpeg", response.Content.Headers.ContentType?.MediaType);
            Assert.Contains("immutable", response.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
            using var again = new HttpRequestMessage(HttpMethod.Get, url);
            again.Headers.IfNoneMatch.Add(response.Headers.ETag!);
            Assert.Equal(HttpStatusCode.NotModified, (await site.Anonymous.SendAsync(again)).StatusCode);
        }
    }
}
