using System.Net;
using System.Text;
using System.Text.Json;

namespace Catalogue.Web.Tests.Api;

/// <summary>Source capabilities over the API: open to everybody, one item for each word, or the reason.</summary>
/// <param name="site">The site.</param>
public sealed class DecodePdoTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    private const string Address = "/api/v1/decode/pdo";
    private static readonly string[] Charger = ["0x0801912C", "0x0002D12C", "0x0004B12C", "0x00064145", "0xC9A42141"];

    [Fact]
    public async Task Words_OfEveryKind_GiveOneItemEach()
    {
        var answer = await site.Anonymous.PostAsync(Address, new { words = new[] { "0x0801912C", "4FC2D06C", "0x8F030096", "0xE004B1F4", "0xC9A43264", "0xF0000000", "0x00000000", "0x0003C0", "0xD230968C" } }, HttpStatusCode.OK);

        var items = answer.Items("items").ToList();
        Assert.Equal(["fixed", "battery", "variable", "spr_avs", "spr_pps", "reserved_apdo", "padding", "unreadable", "epr_avs"], items.Select(item => item.Text("kind")));
        Assert.Equal(Enumerable.Range(1, 9), items.Select(item => item.GetProperty("position").GetInt32()));
        Assert.Equal((5000, 5000, 5000, 3000, 15_000), (Number(items[0], "voltage_mv"), Number(items[0], "min_mv"), Number(items[0], "max_mv"), Number(items[0], "current_ma"), Number(items[0], "power_mw")));
        Assert.Equal(["unconstrained_power"], items[0].Items("flags").Select(flag => flag.GetString()));
        Assert.Equal((null, 9000, 12_600, null, 27_000), (Number(items[1], "voltage_mv"), Number(items[1], "min_mv"), Number(items[1], "max_mv"), Number(items[1], "current_ma"), Number(items[1], "power_mw")));
        Assert.Equal((9600, 12_000, 1500, null), (Number(items[2], "min_mv"), Number(items[2], "max_mv"), Number(items[2], "current_ma"), Number(items[2], "power_mw")));
        Assert.Equal((9000, 20_000, null, 3000, 5000), (Number(items[3], "min_mv"), Number(items[3], "max_mv"), Number(items[3], "current_ma"), Number(items[3], "current_9_15v_ma"), Number(items[3], "current_15_20v_ma")));
        Assert.Equal(["pps_power_limited"], items[4].Items("flags").Select(flag => flag.GetString()));
        Assert.Equal((null, "0xF0000000"), (Number(items[5], "max_mv"), items[5].Text("word")));
        Assert.Equal(("0x0003C0", "It is too short: 6 digits instead of 8."), (items[7].Text("word"), items[7].Text("reason")));
        Assert.Equal((15_000, 28_000, null, 140_000, 140), (Number(items[8], "min_mv"), Number(items[8], "max_mv"), Number(items[8], "current_ma"), Number(items[8], "power_mw"), Number(items[8], "pdp_w")));
        Assert.All(items, item => Assert.Equal("word", item.Text("source")));
        Assert.Contains(answer.Items("warnings"), warning => warning.GetString()!.Contains("Object 8", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Words_WithADeclaredPower_AreHeldAgainstTheRules()
    {
        var answer = await site.Anonymous.PostAsync(Address, new { words = Charger, declared_pdp_w = 100 }, HttpStatusCode.OK);

        Assert.Equal((65_000, true, false), (Number(answer, "best_fixed_power_mw"), answer.GetProperty("needs_5a_cable").GetBoolean(), answer.GetProperty("needs_epr_cable").GetBoolean()));
        var rules = answer.GetProperty("rules");
        Assert.Equal((false, "missing", "not_required"), (rules.GetProperty("supports_declared_power").GetBoolean(), rules.Text("spr_avs_state"), rules.Text("epr_avs_state")));
        Assert.Equal([20], rules.Items("fixed_voltages_below_rule_v").Select(voltage => voltage.GetInt32()));
        Assert.Equal(["met", "met", "met", "too_low"], rules.Items("voltages").Select(voltage => voltage.Text("outcome")));
        Assert.Equal(JsonValueKind.Null, (await site.Anonymous.PostAsync(Address, new { words = Charger }, HttpStatusCode.OK)).GetProperty("rules").ValueKind);
    }

    [Theory]
    [InlineData("A1 21 2C 91 01 08 2C D1 02 00", "bytes")]
    [InlineData("Source: 0801912C\r\n0002D12C", "word")]
    [InlineData("[1] 5V 3A\n[2] 9V 3A", "text")]
    public async Task Text_OfEveryOrigin_SaysSo(string text, string source)
    {
        var answer = await site.Anonymous.PostAsync(Address, new { text }, HttpStatusCode.OK);

        Assert.Equal([(5000, source), (9000, source)], answer.Items("items").Select(item => (item.GetProperty("voltage_mv").GetInt32(), item.Text("source"))));
    }

    [Fact]
    public async Task Text_WithASinksList_KeepsItApart()
    {
        var both = await site.Anonymous.PostAsync(Address, new { text = "Sink caps:\nPDO1: 0x3601912c\nSource caps:\nPDO1: 0x08019104\n" }, HttpStatusCode.OK);
        var alone = await site.Anonymous.PostAsync(Address, new { text = "Sink caps:\nPDO1: 0x3601912c\n", declared_pdp_w = 15 }, HttpStatusCode.OK);

        Assert.Equal("0x08019104", both.Items("items").Single().Text("word"));
        Assert.Equal("0x3601912C", both.Items("other_lists").Single().Items("items").Single().Text("word"));
        Assert.Equal("sink", alone.Items("items").Single().Text("label"));
        Assert.All(["best_fixed_power_mw", "needs_5a_cable", "rules"], name => Assert.Equal(JsonValueKind.Null, alone.GetProperty(name).ValueKind));
    }

    [Fact]
    public async Task SwappedWords_AreAskedAbout()
    {
        var text = await site.Anonymous.PostAsync(Address, new { text = "2c910108 2cd10200" }, HttpStatusCode.OK);
        var words = await site.Anonymous.PostAsync(Address, new { words = new[] { "2c910108", "2cd10200" } }, HttpStatusCode.OK);

        Assert.Equal(("0x0801912C", "as_written", "0x2C910108"), (text.Items("items").First().Text("word"), text.GetProperty("other_reading").Text("reading"), text.GetProperty("other_reading").Items("items").First().Text("word")));
        Assert.Equal(("0x2C910108", "bytes_swapped", "0x0801912C"), (words.Items("items").First().Text("word"), words.GetProperty("other_reading").Text("reading"), words.GetProperty("other_reading").Items("items").First().Text("word")));
        Assert.NotEmpty(text.Items("warnings"));
        Assert.NotEmpty(words.Items("warnings"));
    }

    [Fact]
    public async Task Words_AThousand_GiveAThousandItems()
    {
        var answer = await site.Anonymous.PostAsync(Address, new { words = Enumerable.Repeat("0x0801912C", 1000) }, HttpStatusCode.OK);

        Assert.Equal(1000, answer.Items("items").Count());
        Assert.InRange(answer.Items("warnings").Count(), 1, 101);
        await site.Anonymous.PostAsync(Address, new { words = Enumerable.Repeat("0x0801912C", 1001) }, HttpStatusCode.UnprocessableEntity);
    }

    [Theory]
    [InlineData("{}", HttpStatusCode.BadRequest)]
    [InlineData("", HttpStatusCode.BadRequest)]
    [InlineData("null", HttpStatusCode.BadRequest)]
    [InlineData("[]", HttpStatusCode.BadRequest)]
    [InlineData("{\"words\":null}", HttpStatusCode.BadRequest)]
    [InlineData("{\"words\":[\"0x0801912C\"],\"text\":\"0x0801912C\"}", HttpStatusCode.BadRequest)]
    [InlineData("{\"words\":[134320428]}", HttpStatusCode.BadRequest)]
    [InlineData("{\"words\":\"0x0801912C\"}", HttpStatusCode.BadRequest)]
    [InlineData("{\"word\":[\"0x0801912C\"]}", HttpStatusCode.BadRequest)]
    [InlineData("{\"text\":5}", HttpStatusCode.BadRequest)]
    [InlineData("{\"words\":[]}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("{\"text\":\"\"}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("{\"text\":\"hello\"}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("{\"text\":\"\\u0000\\ud800\"}", HttpStatusCode.BadRequest, HttpStatusCode.UnprocessableEntity)]
    [InlineData("{\"words\":[\"0x0801912C\"],\"declared_pdp_w\":0}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("{\"words\":[\"0x0801912C\"],\"declared_pdp_w\":1e300}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("{\"words\":[\"0x0801912C\"],\"declared_pdp_w\":\"NaN\"}", HttpStatusCode.BadRequest)]
    public async Task Request_ThatCannotBeAnswered_IsAProblem(string body, params HttpStatusCode[] statuses)
    {
        using var response = await site.Anonymous.PostAsync(Address, new StringContent(body, Encoding.UTF8, "application/json"));

        Assert.Contains(response.StatusCode, statuses);
        var problem = await Requests.ReadAsync(response, response.StatusCode);
        Assert.DoesNotContain("Catalogue.", problem.Text("detail"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Words_ThatAreNullOrEmpty_AreUnreadableItems()
    {
        using var response = await site.Anonymous.PostAsync(Address, new StringContent("{\"words\":[null,\"\",\"hello\",\"0x0801912C\"]}", Encoding.UTF8, "application/json"));

        var answer = await Requests.ReadAsync(response, HttpStatusCode.OK);
        Assert.Equal(["unreadable", "unreadable", "unreadable", "fixed"], answer.Items("items").Select(item => item.Text("kind")));
    }

    [Fact]
    public async Task Document_DescribesTheCall()
    {
        var document = await site.Anonymous.GetJsonAsync("/api/v1/openapi.json");

        var call = document.GetProperty("paths").GetProperty(Address).GetProperty("post");
        Assert.False(call.TryGetProperty("security", out _));
        Assert.Contains("Power Delivery", call.Text("summary"), StringComparison.Ordinal);
        Assert.Contains("pasted dump", call.GetProperty("requestBody").ToString() + document.GetProperty("components"), StringComparison.Ordinal);
    }

    private static int? Number(JsonElement item, string name) => item.GetProperty(name) is { ValueKind: JsonValueKind.Number } number ? number.GetInt32() : null;
}
