using System.Net;
using System.Text;
using System.Text.Json;

namespace Catalogue.Web.Tests.Api;

/// <summary>The families beside one over the API: open to everybody for what is published.</summary>
/// <param name="site">The site.</param>
public sealed class FamilyNeighboursTests(SiteFixture site) : IClassFixture<SiteFixture>, IAsyncLifetime
{
    public async ValueTask InitializeAsync()
    {
        var slug = await TeardownAsync("Tor 600", "Q1,YTQ65-080,TO-247\nQ2,QX4R065N,TO247\nU1,808-7A,SOIC-8\nU2,8O8-7A,SOIC-8\nU3,808-7B,SOIC-8\n");
        foreach (var component in (await site.Writer.GetJsonAsync($"/api/v1/teardowns/{slug}?draft=true")).Items("boards").First().Items("components").Take(2))
        {
            await site.Writer.SendAsync(HttpMethod.Patch, $"/api/v1/components/{component.Text("id")}", new { function_class = "switch" }, HttpStatusCode.OK);
            await site.Writer.PostAsync($"/api/v1/components/{component.Text("id")}/ratings", new { kind = "rated_voltage", text = "650 V", evidence = "datasheet", source = "sheet" });
        }

        await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/publish", new { note = "" }, HttpStatusCode.OK);
        await TeardownAsync("Marl 140", "U1,8O8-7AA,SOIC-8\nU2,808-7C,SOIC-8\n");
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public async Task SecondSources_CarryNameReasonsAndNoRelation()
    {
        var answer = await site.Anonymous.GetJsonAsync("/api/v1/families/ytq65-080/neighbours");
        var item = Assert.Single(answer.Items("second_sources"));
        Assert.Equal(("qx4r065n", "QX4R065N"), (item.Text("family"), item.Text("name")));
        Assert.Equal(JsonValueKind.Null, item.GetProperty("relation").ValueKind);
        var reasons = item.Items("reasons").Select(reason => reason.GetString()).ToList();
        Assert.Contains("same package: TO-247", reasons);
        Assert.Contains("rated voltage: 650\u00A0V where at least 650\u00A0V is needed", reasons);
        Assert.Contains("rated current not known of either", reasons);
        Assert.Empty(answer.Items("look_alikes"));
        Assert.Empty(answer.Items("versions"));
    }

    [Fact]
    public async Task LookAlikesAndVersions_OfReaders_HoldNothingThatOnlyADraftMentions()
    {
        var reader = await site.Anonymous.GetJsonAsync("/api/v1/families/808-7a/neighbours");
        Assert.Equal(["8o8-7a"], reader.Items("look_alikes").Select(item => item.Text("family")));
        Assert.Equal(["808-7b"], reader.Items("versions").Select(item => item.Text("family")));
        var lab = await site.Reader.GetJsonAsync("/api/v1/families/808-7a/neighbours");
        Assert.Equal(["808-7b", "808-7c"], lab.Items("versions").Select(item => item.Text("family")));
        await site.Anonymous.GetJsonAsync("/api/v1/families/808-7c/neighbours", HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Relation_OfAReviewer_IsGivenAndGoesBefore()
    {
        await site.Database.SqlAsync("""
            insert into family_relations (one_id, other_id, kind, at, who)
            select least(a.id, b.id), greatest(a.id, b.id), 'second_source', now(), 'I. Sorrel' from families a, families b where a.slug = '808-7b' and b.slug = 'qx4r065n'
            """);
        var item = Assert.Single((await site.Anonymous.GetJsonAsync("/api/v1/families/808-7b/neighbours")).Items("second_sources"));
        Assert.Equal("second_source", item.Text("relation"));
        Assert.Equal("a reviewer confirmed it as a second source", item.Items("reasons").First().GetString());
    }

    [Fact]
    public async Task Family_ThatDoesNotExist_IsAProblemDocument() => await site.Anonymous.GetJsonAsync("/api/v1/families/no-such/neighbours", HttpStatusCode.NotFound);

    private async Task<string> TeardownAsync(string name, string rows)
    {
        var slug = (await site.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand = "Ferrowick", name, model = "M 1", category = "adapter" }, title = $"Ferrowick {name}" }, HttpStatusCode.Created)).Text("slug");
        var board = (await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/boards", new { name = "Main" }, HttpStatusCode.Created)).Text("id");
        await site.Writer.UploadAsync($"/api/v1/boards/{board}/components/import", Encoding.UTF8.GetBytes("Designator,MPN,Package\n" + rows), "list.csv", HttpStatusCode.OK);
        return slug;
    }
}
