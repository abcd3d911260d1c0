using System.Net;
using System.Text;
using System.Text.Json;

namespace Catalogue.Web.Tests.Api;

/// <summary>Reading quantities and value codes over the API: open to everybody, nothing stored.</summary>
/// <param name="site">The site.</param>
public sealed class DecodeQuantityTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    private const string Path = "/api/v1/decode/quantity";

    [Theory]
    [InlineData("47uF/63V", null, "4.7E-05 F 4.7E-05 4.7E-05|63 V 63 63")]
    [InlineData("10kΩ±1%", null, "10000 ohm 9900 10100")]
    [InlineData("100-240V~ 50/60Hz 1.5A", null, "null V 100 240|50 Hz 50 50|60 Hz 60 60|1.5 A 1.5 1.5")]
    [InlineData("-20…60 °C", null, "null degC -20 60")]
    [InlineData("≤ 0.1 W", null, "null W null 0.1")]
    [InlineData("2.9mΩ", null, "0.0029 ohm 0.0029 0.0029")]
    [InlineData("104K", "capacitor", "1E-07 F 9E-08 1.1E-07")]
    [InlineData("472", "resistor", "4700 ohm 4700 4700")]
    [InlineData("4R7", "inductor", "4.7E-06 H 4.7E-06 4.7E-06")]
    [InlineData("68V", "varistor", "68 V 68 68")]
    [InlineData("16.000MHz", "crystal", "16000000 Hz 16000000 16000000")]
    [InlineData("T3.15AL250V", "fuse", "3.15 A 3.15 3.15|250 V 250 250")]
    [InlineData("650V 0R19", "mosfet", "650 V 650 650|0.19 ohm 0.19 0.19")]
    [InlineData("85 %", "", "0.85 ratio 0.85 0.85")]
    public async Task Text_WithOneReading_GivesQuantitiesInSi(string text, string? kind, string expected)
    {
        var answer = await PostAsync(new { text, kind }, HttpStatusCode.OK);

        Assert.Equal(expected, string.Join('|', answer.Items("quantities").Select(Line)));
        Assert.Empty(answer.Items("ambiguous"));
    }

    [Fact]
    public async Task Text_WithCountCurrentAndWords_GivesThemBeside()
    {
        var answer = await PostAsync(new { text = "2x15A fast, 12V⎓" }, HttpStatusCode.OK);

        Assert.Equal(2, answer.Items("quantities").First().GetProperty("count").GetInt32());
        Assert.Equal("2x15A", answer.Items("quantities").First().Text("text"));
        Assert.Equal("dc", answer.Items("quantities").Last().Text("current"));
        Assert.Equal("fast", Assert.Single(answer.Items("unread")).GetString());
    }

    [Theory]
    [InlineData("10M", "capacitor", "0.01 F 0.01 0.01;10000000 F 10000000 10000000")]
    [InlineData("1.000 mAh", null, "0.001 Ah 0.001 0.001;1 Ah 1 1")]
    [InlineData("1.000k", "resistor", "1000 ohm 1000 1000;1000000 ohm 1000000 1000000")]
    [InlineData("220", "resistor", "22 ohm 22 22;220 ohm 220 220")]
    public async Task Text_WithEqualReadings_GivesAllAndChoosesNone(string text, string? kind, string expected)
    {
        var answer = await PostAsync(new { text, kind }, HttpStatusCode.OK);

        Assert.Empty(answer.Items("quantities"));
        Assert.Equal(expected, string.Join(';', answer.Items("ambiguous").Select(way => string.Join('|', way.Items("quantities").Select(Line)))));
        Assert.All(answer.Items("ambiguous"), way => Assert.NotEmpty(way.Text("text")));
    }

    [Fact]
    public async Task Text_WithASurerReading_GivesItAndShowsTheOther()
    {
        var answer = await PostAsync(new { text = "22R", kind = "resistor" }, HttpStatusCode.OK);

        Assert.Equal("22 ohm 22 22", Line(Assert.Single(answer.Items("quantities"))));
        Assert.Equal([22, 1.65], answer.Items("ambiguous").Select(way => way.Items("quantities").Single().GetProperty("value").GetDouble()));
    }

    [Theory]
    [InlineData("abc", null)]
    [InlineData("", null)]
    [InlineData("1e400 V", null)]
    [InlineData("-47uF", "capacitor")]
    [InlineData("104", null)]
    public async Task Text_ThatIsNoQuantity_IsRefusedWithTheReason(string text, string? kind)
    {
        var problem = await PostAsync(new { text, kind }, HttpStatusCode.UnprocessableEntity);

        Assert.Equal("text", problem.Text("field"));
    }

    [Fact]
    public async Task Kind_Unknown_NamesTheKnownOnes()
    {
        var problem = await PostAsync(new { text = "5V", kind = "toaster" }, HttpStatusCode.BadRequest);

        Assert.Equal("kind", problem.Text("field"));
        foreach (var known in new[] { "resistor", "capacitor", "inductor", "fuse", "varistor" })
            Assert.Contains(known, problem.Text("detail"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("{\"text\":null}")]
    [InlineData("{\"text\":5}")]
    [InlineData("{\"text\":\"5V\",\"unit\":\"V\"}")]
    public async Task Body_ThatCannotBeRead_IsABadRequest(string body)
    {
        using var response = await site.Anonymous.PostAsync(Path, new StringContent(body, Encoding.UTF8, "application/json"));

        await Requests.ReadAsync(response, HttpStatusCode.BadRequest);
    }

    [Fact]
    public async Task Text_OfManyCharacters_IsRefused() => await PostAsync(new { text = new string('9', 20_000) }, HttpStatusCode.UnprocessableEntity);

    private Task<JsonElement> PostAsync(object body, HttpStatusCode expected) => site.Anonymous.PostAsync(Path, body, expected);

    private static string Line(JsonElement quantity) => $"{Number(quantity, "value")} {quantity.Text("unit")} {Number(quantity, "low")} {Number(quantity, "high")}";

    private static string Number(JsonElement quantity, string name) =>
        quantity.GetProperty(name) is { ValueKind: JsonValueKind.Number } number ? number.GetDouble().ToString("R", System.Globalization.CultureInfo.InvariantCulture) : "null";
}
