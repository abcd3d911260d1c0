using System.Net;
using System.Text;
using System.Text.Json;

namespace Catalogue.Web.Tests.Api;

/// <summary>Facts that come through the API and the figures and suggestions that follow from them.</summary>
/// <param name="site">The site.</param>
public sealed class FigurePathTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    [Fact]
    public async Task Facts_OfFuseBusAndCapacitor_GiveTheirFigures()
    {
        var (slug, parts) = await TeardownAsync("Brackel 40", "Ref;Value;Description\nF1;35A;\nBT1;;\nC1;120uF;bulk capacitor\n");
        var pack = await RailAsync(slug, new { name = "Pack", kind = "pack", max_voltage_v = 16.8, path_resistance_ohm = 0.002 });
        var bus = await RailAsync(slug, new { name = "Bulk bus", kind = "dc_bus", line_voltage_v = new { low = 90, nominal = 230, high = 264 }, line_frequency_hz = 50, max_power_w = 65, efficiency = 0.9 });
        await ChangeAsync(parts[0], new { rail_id = pack, function_class = "blade_fuse" });
        await ChangeAsync(parts[1], new { rail_id = pack, function_class = "cell", series = 4, parallel = 2 });
        await ChangeAsync(parts[2], new { rail_id = bus, function_class = "aluminium_capacitor" });
        await RateAsync(parts[0], new { kind = "breaking_current", text = "1 kA", condition = "at 32 V dc" });
        await RateAsync(parts[1], new { kind = "cell_resistance", text = "20 mohm", evidence = "measured" });
        await RateAsync(parts[2], new { kind = "capacitance", text = "120 uF" });
        await RateAsync(parts[2], new { kind = "rated_life", text = "5000 h", evidence = "datasheet" });
        await RateAsync(parts[2], new { kind = "max_temperature", text = "105 degC" });
        await RateAsync(parts[2], new { kind = "part_temperature", text = "72 degC", evidence = "measured" });

        var draft = await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true");

        // 16.8 V / (4 / 2 × 20 mΩ + 2 mΩ) = 400 A; 1000 / 400.
        Assert.Equal(2.5, Nominal(draft, "breaking_capacity"), 1e-9);
        Assert.Equal(85.7315, Figure(draft, "bus_valley").GetProperty("low").GetDouble(), 0.0005);
        Assert.Equal(308.234, Nominal(draft, "bus_valley"), 0.005);
        // 5000 h × 2^3.3.
        Assert.Equal(49245.8, Nominal(draft, "aluminium_life") / 3600, 0.1);
        Assert.DoesNotContain(draft.Items("figures"), figure => figure.Text("rule") == "bus_ripple");
        Assert.Contains(draft.Items("rails").SelectMany(rail => rail.Items("quantities")), quantity => quantity.Text("kind") == "path_resistance" && quantity.Text("unit") == "ohm");
    }

    [Theory]
    [InlineData("""{"path_resistance_ohm":-0.001}""", "path_resistance_ohm")]
    [InlineData("""{"prospective_current_a":0}""", "prospective_current_a")]
    [InlineData("""{"prospective_current_a":1e300}""", "prospective_current_a")]
    [InlineData("""{"line_voltage_v":-230}""", "line_voltage_v")]
    [InlineData("""{"line_voltage_v":{"low":264,"nominal":230,"high":90}}""", "line_voltage_v")]
    public async Task Rail_WithAQuantityThatCannotBe_IsRefused(string quantity, string field)
    {
        var (slug, _) = await TeardownAsync("Brackel 41", "Ref\nF1\n");
        var rail = await RailAsync(slug, new { name = "Bus", kind = "dc_bus" });
        var problem = await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/rails/{rail}", JsonSerializer.Deserialize<JsonElement>(quantity), HttpStatusCode.UnprocessableEntity);
        Assert.Contains(field, problem.GetRawText(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("rated_life", "2000 V")]
    [InlineData("rated_life", "-5 h")]
    [InlineData("rated_life", "2,000 h")]
    [InlineData("part_temperature", "-300 degC")]
    [InlineData("cell_resistance", "0 ohm")]
    [InlineData("breaking_current", "1e300 A")]
    public async Task Rating_ThatCannotBe_IsRefused(string kind, string text)
    {
        var (_, parts) = await TeardownAsync("Brackel 42", "Ref\nF1\n");
        await site.Writer.PostAsync($"/api/v1/components/{parts[0]}/ratings", new { kind, text }, HttpStatusCode.UnprocessableEntity);
    }

    [Fact]
    public async Task Suggestions_OfABoard_StandInTheDraftAloneAndGoWhenTaken()
    {
        var (slug, parts) = await TeardownAsync("Brackel 43", "Ref\nT1\nQ1\nC1\nU2\n");
        await ChangeAsync(parts[0], new { function_class = "transformer" });
        await ChangeAsync(parts[1], new { function_class = "switch", circuit_position = "flyback_primary" });
        await ChangeAsync(parts[2], new { function_class = "aluminium_capacitor" });
        await ChangeAsync(parts[3], new { function_class = "optocoupler" });
        await RateAsync(parts[1], new { kind = "rated_voltage", text = "650 V" });
        await RateAsync(parts[2], new { kind = "rated_voltage", text = "400 V" });

        var board = (await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true")).Items("boards").Single();
        var suggested = Assert.Single(board.Items("suggested_topologies"));
        Assert.Equal(("flyback", "flyback"), (suggested.Text("topology"), suggested.Text("tag")));
        Assert.Contains("There is an optocoupler or another isolated feedback link.", suggested.Items("reasons").Select(reason => reason.GetString()));
        Assert.Empty(board.Items("topology"));

        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/boards/{board.Text("id")}", new { topology = new[] { "flyback" } }, HttpStatusCode.OK);
        Assert.Empty((await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true")).Items("boards").Single().Items("suggested_topologies"));
        await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/publish", new { note = "" }, HttpStatusCode.OK);
        Assert.Equal(JsonValueKind.Null, (await site.Anonymous.GetJsonAsync($"/api/v1/teardowns/{slug}")).Items("boards").Single().GetProperty("suggested_topologies").ValueKind);
    }

    private static JsonElement Figure(JsonElement teardown, string rule) => teardown.Items("figures").Single(found => found.Text("rule") == rule);

    private static double Nominal(JsonElement teardown, string rule) => Figure(teardown, rule).GetProperty("nominal").GetDouble();

    // A teardown with one board of a list; its slug and the ids of its parts.
    private async Task<(string Slug, IReadOnlyList<string> Parts)> TeardownAsync(string name, string list)
    {
        var slug = (await site.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand = "Quelvane", name, model = "BR", category = "charger" }, title = "A charger" })).Text("slug");
        var board = (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/boards", new { name = "Main board" })).Text("id");
        await site.Writer.UploadAsync($"/api/v1/boards/{board}/components/import", Encoding.UTF8.GetBytes(list), "list.csv", HttpStatusCode.OK);
        var draft = await site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true");
        return (slug, [.. draft.Items("boards").Single().Items("components").Select(part => part.Text("id"))]);
    }

    private async Task<string> RailAsync(string slug, object rail) => (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/rails", rail)).Text("id");

    private Task ChangeAsync(string part, object change) => site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/components/{part}", change, HttpStatusCode.OK);

    private Task RateAsync(string part, object rating) => site.Writer.PostAsync($"/api/v1/components/{part}/ratings", rating);
}
