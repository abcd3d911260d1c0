using System.Net;
using System.Text;

namespace Catalogue.Web.Tests.Families;

/// <summary>The public pages of families and makers: complete without a script, kept by their tag, silent about drafts.</summary>
/// <param name="site">The site.</param>
public sealed class FamilyPageTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    [Fact]
    public async Task Pages_OfAFamilyAndItsMaker_SayWhatIsKnownAndNothingOfDrafts()
    {
        var slug = await TeardownAsync("Tor 600", "Q1,YTQ65-080,TO-247\nQ2,YTQ6S-080,TO-247\nQ3,YTQ65-080G,TO-247\n");
        await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/publish", new { note = "" }, HttpStatusCode.OK);
        await TeardownAsync("Marl 140", "Q1,YTQ65-08O,TO-247\nQ2,YTQ65-080X,TO-247\n");
        await site.Database.SqlAsync("""
            insert into makers (id, name, name_key, slug) values (gen_random_uuid(), 'Yttrel Devices', 'yttreldevices', 'yttrel-devices');
            insert into maker_aliases (maker_id, name, name_key) select id, 'Yttrel Daughters', 'yttreldaughters' from makers where slug = 'yttrel-devices';
            insert into family_makers (family_id, maker_id) select f.id, m.id from families f, makers m where f.slug = 'ytq65-080' and m.slug = 'yttrel-devices';
            insert into family_top_marks (id, family_id, code, package) select gen_random_uuid(), id, 'A7T', 'SOT-23' from families where slug in ('ytq65-080', 'ytq6s-080', 'ytq65-08o');
            insert into family_ratings (id, family_id, kind, low, nominal, high, evidence, source) select gen_random_uuid(), id, 'rated_voltage', 650, 650, 650, 'datasheet', 'sheet, page 2' from families where slug = 'ytq65-080';
            """);

        var (page, tag) = await PageAsync("/families/ytq65-080");
        Assert.Contains("href=\"/families/ytq6s-080\"", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/families/ytq65-080g\"", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/makers/yttrel-devices\"", page, StringComparison.Ordinal);
        Assert.Contains("the family, as typical", page, StringComparison.Ordinal);
        Assert.Contains("A short code alone does not identify a part", page, StringComparison.Ordinal);
        Assert.DoesNotContain("ytq65-08o", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("ytq65-080x", page, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(" style=", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);

        using var again = new HttpRequestMessage(HttpMethod.Get, "/families/ytq65-080");
        again.Headers.TryAddWithoutValidation("If-None-Match", tag);
        Assert.Equal(HttpStatusCode.NotModified, (await site.Anonymous.SendAsync(again)).StatusCode);

        var (maker, _) = await PageAsync("/makers/yttrel-devices");
        Assert.Contains("Yttrel Daughters", maker, StringComparison.Ordinal);
        Assert.Contains("href=\"/families/ytq65-080\"", maker, StringComparison.Ordinal);
        var (brand, _) = await PageAsync("/makers/ferrowick");
        Assert.Contains("Tor 600", brand, StringComparison.Ordinal);
        Assert.DoesNotContain("Marl 140", brand, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await site.Anonymous.GetAsync("/families/ytq65-080x")).StatusCode);
    }

    private async Task<(string Text, string Tag)> PageAsync(string address)
    {
        using var response = await site.Anonymous.GetAsync(address);
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        return (await response.Content.ReadAsStringAsync(), response.Headers.ETag!.ToString());
    }

    private async Task<string> TeardownAsync(string name, string rows)
    {
        var slug = (await site.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand = "Ferrowick", name, model = "M 1", category = "adapter" }, title = $"Ferrowick {name}" }, HttpStatusCode.Created)).Text("slug");
        var board = (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/boards", new { name = "Main" }, HttpStatusCode.Created)).Text("id");
        await site.Writer.UploadAsync($"/api/v1/boards/{board}/components/import", Encoding.UTF8.GetBytes("Designator,MPN,Package\n" + rows), "list.csv", HttpStatusCode.OK);
        return slug;
    }
}
