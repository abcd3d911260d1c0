using System.Net;
using System.Text;
using System.Text.Json;

namespace Catalogue.Web.Tests.Api;

/// <summary>Reading the names of packages over the API: open to everybody, nothing stored.</summary>
/// <param name="site">The site.</param>
public sealed class DecodePackageTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    private const string Path = "/api/v1/decode/package";

    [Theory]
    [InlineData("sot 23-5", "SOT-23-5", 5, "smd_small")]
    [InlineData("DO-214AC", "SMA", 2, "diode_smd")]
    [InlineData("D2PAK-7", "TO-263-7", 7, "smd_power")]
    [InlineData("C_0805_2012Metric", "0805", 2, "chip")]
    [InlineData("CP_Radial_D6.3mm_P2.50mm", "radial", 2, "wired")]
    [InlineData("VQFN-20", "QFN-20", 20, "leadless")]
    public async Task Text_ThatNamesAPackage_GivesItsCanonicalName(string text, string canonical, int pins, string kind)
    {
        var answer = await PostAsync(new { text }, HttpStatusCode.OK);

        Assert.Equal((text, canonical, pins, kind), (answer.Text("as_written"), answer.Text("canonical"), answer.GetProperty("pins").GetInt32(), answer.Text("kind")));
        Assert.Empty(answer.Items("warnings"));
    }

    [Fact]
    public async Task Text_WithSizes_GivesThemInMillimetre()
    {
        var answer = await PostAsync(new { text = "QFN-20-1EP_3x3mm_P0.4mm_EP1.65x1.65mm" }, HttpStatusCode.OK);

        Assert.Equal(("3x3", 0.4, "1.65x1.65"), (answer.Text("body_mm"), answer.GetProperty("pitch_mm").GetDouble(), answer.Text("exposed_pad_mm")));
    }

    [Fact]
    public async Task Text_OfAnOutline_GivesOtherNamesAndWhatItIsMistakenFor()
    {
        var answer = await PostAsync(new { text = "SOT23" }, HttpStatusCode.OK);

        Assert.Equal(["TO-236", "TO-236AB"], answer.Items("synonyms").Select(name => name.GetString()));
        Assert.Contains("SC-59", answer.Items("easily_mistaken_for").Select(name => name.GetString()));
        Assert.Equal(answer.Items("easily_mistaken_for").Count(), answer.Items("told_apart_by").Count());
        Assert.Equal("pins assumed", Assert.Single(answer.Items("warnings")).GetString());
        Assert.Equal("high", answer.Text("confidence"));
    }

    [Fact]
    public async Task Text_ThatIsAmbiguous_SaysWhatWasAssumed()
    {
        var answer = await PostAsync(new { text = "0603" }, HttpStatusCode.OK);

        Assert.Equal(("0603", "1608", "1.6x0.8"), (answer.Text("canonical"), answer.Text("metric"), answer.Text("nominal_body_mm")));
        Assert.Equal("imperial assumed: metric 0603 is imperial 0201", Assert.Single(answer.Items("warnings")).GetString());
    }

    [Theory]
    [InlineData("FOO-77X", "unknown, kept as written")]
    [InlineData("SOT-23/SOT-323", "names more than one package (SOT-23, SOT-323), kept as written")]
    public async Task Text_ThatNamesNoOnePackage_StaysAsWrittenWithTheReason(string text, string reason)
    {
        var answer = await PostAsync(new { text }, HttpStatusCode.OK);

        Assert.Equal(text, answer.Text("as_written"));
        Assert.All(new[] { "canonical", "pins", "kind", "body_mm" }, name => Assert.Equal(JsonValueKind.Null, answer.GetProperty(name).ValueKind));
        Assert.Equal(reason, Assert.Single(answer.Items("warnings")).GetString());
    }

    [Fact]
    public async Task Text_EmptyOrTooLong_IsRefusedWithTheReason()
    {
        foreach (var text in new[] { "", " \u00A0", new string('9', 20_000) })
            Assert.Equal("text", (await PostAsync(new { text }, HttpStatusCode.UnprocessableEntity)).Text("field"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{}")]
    [InlineData("{\"text\":5}")]
    [InlineData("{\"text\":null}")]
    [InlineData("{\"text\":\"SMA\",\"pins\":2}")]
    public async Task Body_ThatCannotBeRead_IsABadRequest(string body)
    {
        using var response = await site.Anonymous.PostAsync(Path, new StringContent(body, Encoding.UTF8, "application/json"));

        await Requests.ReadAsync(response, HttpStatusCode.BadRequest);
    }

    private Task<JsonElement> PostAsync(object body, HttpStatusCode expected) => site.Anonymous.PostAsync(Path, body, expected);
}
