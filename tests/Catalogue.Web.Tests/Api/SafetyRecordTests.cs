using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using Catalogue.Domain.Isolation;

namespace Catalogue.Web.Tests.Api;

/// <summary>Isolation paths and discharge readings as a script at the bench writes and reads them.</summary>
/// <param name="site">The site.</param>
public sealed class SafetyRecordTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    private static readonly object Path = new
    {
        from = "primary pads of U2",
        to = "secondary pads of U2",
        path_kind = "creepage",
        low_mm = 7.0,
        nominal_mm = 7.2,
        high_mm = 7.4,
        method = "caliper",
        narrowest_groove_mm = 1.5,
        working_voltage_v = 240,
        insulation = "reinforced",
        overvoltage_category = 2,
        pollution_degree = 2,
        material_group = "three_a",
        altitude_m = 2000,
        frequency_hz = 0,
        is_coated = false,
        remark = "The slot is followed.",
    };

    [Fact]
    public async Task IsolationPath_Written_IsReadBackWithWhatItSaysAndWhoDecides()
    {
        var slug = await OpenAsync();
        var id = (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/isolation_paths", Path)).Text("id");

        var path = (await DraftAsync(slug)).Items("isolation_paths").Single();
        Assert.Equal(id, path.Text("id"));
        foreach (var sent in JsonSerializer.SerializeToElement(Path).EnumerateObject())
            Assert.True(JsonElement.DeepEquals(sent.Value, path.GetProperty(sent.Name)) || sent.Value.GetDouble() == path.GetProperty(sent.Name).GetDouble(), sent.Name);
        var note = path.GetProperty("note");
        Assert.Equal(("clearly_above", 5, "medium"), (note.Text("outcome"), note.GetProperty("compare_with_mm").GetDouble(), note.Text("compare_with_mark")));
        Assert.Equal(IsolationNote.Deferral, note.Text("defers_to"));
        Assert.NotEmpty(note.Items("reasons"));

        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/isolation_paths/{id}", new { low_mm = 5.1, remark = (string?)null }, HttpStatusCode.OK);
        path = (await DraftAsync(slug)).Items("isolation_paths").Single();
        Assert.Equal("near_or_below_ask", path.GetProperty("note").Text("outcome"));
        Assert.Equal(JsonValueKind.Null, path.GetProperty("remark").ValueKind);

        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/isolation_paths/{id}", new { pollution_degree = 3 }, HttpStatusCode.OK);
        note = (await DraftAsync(slug)).Items("isolation_paths").Single().GetProperty("note");
        Assert.Equal(("not_assessable", JsonValueKind.Null), (note.Text("outcome"), note.GetProperty("compare_with_mm").ValueKind));
    }

    [Fact]
    public async Task DischargeReading_Written_IsReadBackInUtcAndIsPublishedWithItsCautionBesideIt()
    {
        var slug = await OpenAsync();
        var rail = (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/rails", new { name = "HV bus", kind = "dc_bus", max_voltage_v = 372 })).Text("id");
        var id = (await site.Writer.PostAsync(
            $"/api/v1/teardowns/{slug}/discharge_readings", new { rail_id = rail, place = "C1", nominal_v = 0.4, high_v = 0.5, taken_at = "2026-03-09T15:05:00+01:00", instrument = "Pardel meter" })).Text("id");
        await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/publish", new { }, HttpStatusCode.OK);

        var published = await site.Anonymous.GetJsonAsync($"/api/v1/teardowns/{slug}");

        var reading = published.Items("discharge_readings").Single();
        Assert.Equal((id, rail, "C1", 0.4, 0.4, 0.5), (reading.Text("id"), reading.Text("rail_id"), reading.Text("place"), reading.GetProperty("low_v").GetDouble(), reading.GetProperty("nominal_v").GetDouble(), reading.GetProperty("high_v").GetDouble()));
        Assert.Equal(new DateTimeOffset(2026, 3, 9, 14, 5, 0, TimeSpan.Zero), reading.GetProperty("taken_at").GetDateTimeOffset());
        Assert.Equal(new DateTimeOffset(2026, 3, 9, 14, 15, 0, TimeSpan.Zero), reading.GetProperty("fresh_until").GetDateTimeOffset());
        Assert.Equal(rail, published.Items("cautions").Single(caution => caution.Text("key").StartsWith("charged_capacitor", StringComparison.Ordinal)).Text("rail_id"));
        using var page = await site.Anonymous.GetAsync($"/teardowns/{slug}");
        var html = await page.Content.ReadAsStringAsync();
        Assert.Contains("9 Mar 2026, 14:05 UTC", html, StringComparison.Ordinal);
        Assert.Contains("Treat it as live until measured", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("isolation_paths", "{\"from\":\"a\"}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("isolation_paths", "{\"from\":\"a\\u0000b\",\"to\":\"c\"}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("isolation_paths", "{\"from\":\"a\",\"to\":\"c\",\"nominal_mm\":-1}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("isolation_paths", "{\"from\":\"a\",\"to\":\"c\",\"nominal_mm\":1e300}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("isolation_paths", "{\"from\":\"a\",\"to\":\"c\",\"nominal_mm\":1e999}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("isolation_paths", "{\"from\":\"a\",\"to\":\"c\",\"low_mm\":1}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("isolation_paths", "{\"from\":\"a\",\"to\":\"c\",\"pollution_degree\":9}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("isolation_paths", "{\"from\":\"a\",\"to\":\"c\",\"pollution_degree\":1.5}", HttpStatusCode.BadRequest)]
    [InlineData("isolation_paths", "{\"from\":\"a\",\"to\":\"c\",\"path_kind\":\"tunnel\"}", HttpStatusCode.BadRequest)]
    [InlineData("isolation_paths", "{\"from\":\"a\",\"to\":\"c\",\"nominal_mm\":\"NaN\"}", HttpStatusCode.BadRequest)]
    [InlineData("isolation_paths", "{\"from\":\"a\",\"to\":\"c\",\"outcome\":\"clearly_above\"}", HttpStatusCode.BadRequest)]
    [InlineData("isolation_paths", "{\"from\":\"\\ud800\",\"to\":\"c\"}", HttpStatusCode.BadRequest)]
    [InlineData("discharge_readings", "{\"place\":\"C1\",\"taken_at\":\"2026-03-09T14:05:00Z\"}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("discharge_readings", "{\"place\":\"C1\",\"nominal_v\":0.4}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("discharge_readings", "{\"place\":\"C1\",\"nominal_v\":-340,\"taken_at\":\"2026-03-09T14:05:00Z\"}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("discharge_readings", "{\"place\":\"C1\",\"nominal_v\":0.4,\"taken_at\":\"2999-03-09T14:05:00Z\"}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("discharge_readings", "{\"place\":\"C1\\u0007\",\"nominal_v\":0.4,\"taken_at\":\"2026-03-09T14:05:00Z\"}", HttpStatusCode.UnprocessableEntity)]
    [InlineData("discharge_readings", "{\"place\":\"C1\",\"nominal_v\":0.4,\"taken_at\":\"2026-03-09T14:05:00\"}", HttpStatusCode.BadRequest)]
    [InlineData("discharge_readings", "{\"place\":\"C1\",\"nominal_v\":0.4,\"taken_at\":\"2026-03-09\"}", HttpStatusCode.BadRequest)]
    [InlineData("discharge_readings", "{\"place\":\"C1\",\"nominal_v\":0.4,\"taken_at\":1}", HttpStatusCode.BadRequest)]
    [InlineData("discharge_readings", "{\"place\":\"\\ud800\",\"nominal_v\":0.4,\"taken_at\":\"2026-03-09T14:05:00Z\"}", HttpStatusCode.BadRequest)]
    [InlineData("discharge_readings", "{\"place\":\"C1\",\"nominal_v\":0.4,\"taken_at\":\"2026-03-09T14:05:00Z\",\"rail_id\":\"01890000-0000-7000-8000-000000000000\"}", HttpStatusCode.UnprocessableEntity)]
    public async Task Record_OutOfSense_IsRefusedAndLeavesNothing(string records, string body, HttpStatusCode expected)
    {
        var slug = await OpenAsync();
        using var content = new StringContent(body, Encoding.UTF8, new MediaTypeHeaderValue("application/json"));
        using var response = await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/{records}", content);

        await Requests.ReadAsync(response, expected);
        Assert.Empty((await DraftAsync(slug)).Items(records));
    }

    [Theory]
    [InlineData("isolation_paths")]
    [InlineData("discharge_readings")]
    public async Task Record_SavedTwiceFromOneVersion_IsAConflictAndIsRemovedByDelete(string records)
    {
        var slug = await OpenAsync();
        var body = records == "isolation_paths" ? Path : new { place = "C1", nominal_v = 0.4, taken_at = "2026-03-09T14:05:00Z" };
        var id = (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/{records}", body)).Text("id");
        var version = (await DraftAsync(slug)).Items(records).Single().GetProperty("version").GetUInt32();
        object change = records == "isolation_paths" ? new { method = "section" } : new { instrument = "Pardel meter" };

        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/{records}/{id}?version={version}", change, HttpStatusCode.OK);
        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/{records}/{id}?version={version}", change, HttpStatusCode.Conflict);
        await site.Reader.SendAsync(HttpMethod.Delete, $"/api/v1/{records}/{id}", null, HttpStatusCode.Forbidden);
        await site.Anonymous.SendAsync(HttpMethod.Post, $"/api/v1/teardowns/{slug}/{records}", body, HttpStatusCode.Unauthorized);
        await site.Writer.SendAsync(HttpMethod.Delete, $"/api/v1/{records}/{id}", null, HttpStatusCode.OK);
        Assert.Empty((await DraftAsync(slug)).Items(records));
        await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/{records}/{id}", change, HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Document_DescribesTheirFields()
    {
        var schemas = (await site.Anonymous.GetJsonAsync("/api/v1/openapi.json")).GetProperty("components").GetProperty("schemas");

        Assert.Contains("millimetre", schemas.GetProperty("MeasuredPathForm").GetProperty("properties").GetProperty("nominal_mm").ToString(), StringComparison.Ordinal);
        Assert.Contains("offset from UTC", schemas.GetProperty("DischargeReadingForm").GetProperty("properties").GetProperty("taken_at").ToString(), StringComparison.Ordinal);
    }

    private Task<JsonElement> DraftAsync(string slug) => site.Reader.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true");

    private async Task<string> OpenAsync() => (await site.Writer.PostAsync(
        "/api/v1/teardowns", new { product = new { brand = "Ferrowick", name = "Tor 600", model = "TOR600", category = "power_station" }, title = "Tor 600" })).Text("slug");
}
