using System.IO.Compression;
using System.Net;
using System.Text.Json;
using Catalogue.Data.Publishing;
using Catalogue.Data.Teardowns;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Api;

public sealed class ArchiveTests(SiteFixture site) : IClassFixture<SiteFixture>
{
    private const string Imports = "/api/v1/imports/teardown_archive";

    [Fact]
    public async Task Archive_OfATeardown_GoesIntoAnEmptyCatalogueAsItWas()
    {
        var (slug, photo) = await PublishAsync("Norrin", "Vale 30");
        var archive = await GetAsync($"/api/v1/teardowns/{slug}/archive");
        await using var elsewhere = new SiteFixture();
        await elsewhere.InitializeAsync();

        var foreseen = await elsewhere.Writer.UploadAsync(Imports + "?dry_run=true&wait=true", archive, "vale.zip", HttpStatusCode.OK);
        Assert.Equal(("done", "new", true), (foreseen.Text("state"), Only(foreseen).Text("action"), Report(foreseen).GetProperty("dry_run").GetBoolean()));
        await elsewhere.Anonymous.GetJsonAsync($"/api/v1/teardowns/{slug}", HttpStatusCode.NotFound);

        var run = await elsewhere.Writer.UploadAsync(Imports + "?wait=true", archive, "vale.zip", HttpStatusCode.OK);
        Assert.Equal(("done", true, 1), (run.Text("state"), Report(run).GetProperty("keeps_published").GetBoolean(), Report(run).GetProperty("photos").GetProperty("new").GetInt32()));
        var there = await elsewhere.Anonymous.GetJsonAsync($"/api/v1/teardowns/{slug}");
        Assert.Equal((await site.Anonymous.GetJsonAsync($"/api/v1/teardowns/{slug}")).GetRawText(), there.GetRawText());
        Assert.Equal(photo, Assert.Single(there.Items("photos")).Text("id"));

        var again = await elsewhere.Writer.UploadAsync(Imports + "?wait=true", archive, "vale.zip", HttpStatusCode.OK);
        Assert.Equal("same", Only(again).Text("action"));
        var listed = await elsewhere.Writer.GetJsonAsync("/api/v1/imports");
        Assert.Equal(3, listed.Items("items").Count());
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(elsewhere.Folder, "media", ".imports")));
    }

    [Fact]
    public async Task Import_WithoutWaiting_IsAcceptedAndToldOfAtItsAddress()
    {
        var (slug, _) = await PublishAsync("Norrin", "Vale 45");
        var archive = await GetAsync($"/api/v1/teardowns/{slug}/archive");

        var run = await site.Writer.UploadAsync(Imports, archive, "vale.zip", HttpStatusCode.Accepted);
        for (var i = 0; run.Text("state") is "waiting" or "running" && i < 100; i++)
        {
            await Task.Delay(100);
            run = await site.Reader.GetJsonAsync(run.Text("url"));
        }

        Assert.Equal(("done", "vale.zip"), (run.Text("state"), run.Text("file_name")));
        Assert.Equal((slug, "same"), (Only(run).Text("slug"), Only(run).Text("action")));
    }

    [Fact]
    public async Task Import_FromAnotherLab_ArrivesForReviewAndIsPublishedHere()
    {
        var (slug, _) = await PublishAsync("Norrin", "Vale 65");
        var archive = await GetAsync($"/api/v1/teardowns/{slug}/archive");
        await using var elsewhere = new SiteFixture();
        await elsewhere.InitializeAsync();
        await elsewhere.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand = "Norrin", name = "Vale 65", model = "V65", category = "charger" }, title = "Ours" });

        var run = await elsewhere.Writer.UploadAsync(Imports + "?wait=true", archive, "vale.zip", HttpStatusCode.OK);

        var item = Only(run);
        var address = item.Text("address");
        Assert.Equal((slug + "-2", false), (address, Report(run).GetProperty("keeps_published").GetBoolean()));
        Assert.StartsWith("Revision 1 (published), published ", Assert.Single(item.Items("history")).GetString(), StringComparison.Ordinal);
        await elsewhere.Anonymous.GetJsonAsync($"/api/v1/teardowns/{address}", HttpStatusCode.NotFound);
        Assert.Equal("in_review", (await elsewhere.Reader.GetJsonAsync($"/api/v1/teardowns/{address}?draft=true")).GetProperty("revision").Text("state"));
        await elsewhere.Writer.PostAsync($"/api/v1/teardowns/{address}/publish", new { note = "Checked." }, HttpStatusCode.OK);
        await elsewhere.Anonymous.GetJsonAsync($"/api/v1/teardowns/{address}");
    }

    [Fact]
    public async Task Import_WhatCannotBe_IsAnsweredBeforeOrToldInTheRun()
    {
        var run = await site.Writer.UploadAsync(Imports + "?wait=true", "hello"u8.ToArray(), "a.zip", HttpStatusCode.OK);
        Assert.Equal("refused", run.Text("state"));
        Assert.Contains("no zip archive", run.Text("reason"), StringComparison.Ordinal);

        await site.Writer.UploadAsync(Imports + "?wait=true", [], "a.zip", HttpStatusCode.BadRequest);
        Assert.Equal("dryrun", (await site.Writer.UploadAsync(Imports + "?dryrun=true", [1], "a.zip", HttpStatusCode.BadRequest)).Text("field"));
        Assert.Equal("dry_run", (await site.Writer.UploadAsync(Imports + "?dry_run=maybe", [1], "a.zip", HttpStatusCode.UnprocessableEntity)).Text("field"));
        Assert.Contains("administrator", (await site.Writer.UploadAsync(Imports + "?keep_published=true", [1], "a.zip", HttpStatusCode.UnprocessableEntity)).Text("detail"), StringComparison.Ordinal);
        await site.Writer.PostAsync(Imports, new { file = 1 }, HttpStatusCode.UnsupportedMediaType);
    }

    [Fact]
    public async Task Import_WhereAScriptMayNotPublish_ArrivesForReviewEvenInAnEmptyCatalogue()
    {
        var (slug, _) = await PublishAsync("Norrin", "Vale 90");
        var archive = await GetAsync($"/api/v1/teardowns/{slug}/archive");
        await using var elsewhere = new SiteFixture();
        await elsewhere.InitializeAsync();
        var form = new SettingsForm { LabName = "Tallow Lane Bench", RequiresApproval = true };
        Assert.IsType<ChangeOutcome<uint>.Done>(await elsewhere.Services.GetRequiredService<ChangeSettings>().RunAsync(form, null, new Editor("M. Adair"), default));

        var run = await elsewhere.Writer.UploadAsync(Imports + "?wait=true", archive, "vale.zip", HttpStatusCode.OK);

        Assert.False(Report(run).GetProperty("keeps_published").GetBoolean());
        await elsewhere.Anonymous.GetJsonAsync($"/api/v1/teardowns/{slug}", HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task Archive_Drafts_AreInItOnlyWhenAskedForAndNeverForStrangers()
    {
        var made = await site.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand = "Norrin", name = "Vale 12", model = "V12", category = "charger" }, title = "Draft" });
        var address = $"/api/v1/teardowns/{made.Text("slug")}/archive";

        await site.Anonymous.GetJsonAsync(address + "?draft=true", HttpStatusCode.Unauthorized);
        await site.Reader.GetJsonAsync(address, HttpStatusCode.NotFound);
        var archive = await GetAsync(address + "?draft=true");

        using var zip = new ZipArchive(new MemoryStream(archive));
        Assert.Contains(zip.Entries, entry => entry.FullName == $"teardowns/{made.Text("slug")}.jsonl");
    }

    [Fact]
    public async Task Archive_ForOthers_HoldsPublicCopiesAndNothingThatTheLabKeeps()
    {
        var (slug, _) = await PublishAsync("Norrin", "Vale 20");
        await site.Database.SqlAsync($"update teardowns set serial_number = 'SN-778' where slug = '{slug}'");

        using var zip = new ZipArchive(new MemoryStream(await GetAsync($"/api/v1/teardowns/{slug}/archive?for_others=true", tries: 100)));

        var names = zip.Entries.Select(entry => entry.FullName).ToList();
        Assert.EndsWith(".jpg", Assert.Single(names, name => name.StartsWith("photos/", StringComparison.Ordinal)), StringComparison.Ordinal);
        using var lines = new StreamReader(zip.GetEntry($"teardowns/{slug}.jsonl")!.Open());
        var text = await lines.ReadToEndAsync();
        Assert.DoesNotContain("SN-778", text, StringComparison.Ordinal);
        Assert.DoesNotContain("bench-photo.png", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\"published_by\":\"writer\"", text, StringComparison.Ordinal);
    }

    private async Task<(string Slug, string Photo)> PublishAsync(string brand, string name)
    {
        var made = await site.Writer.PostAsync("/api/v1/teardowns", new { product = new { brand, name, model = name.ToUpperInvariant(), category = "charger" }, title = name });
        var slug = made.Text("slug");
        var board = await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/boards", new { name = "Primary" });
        await site.Writer.UploadAsync($"/api/v1/boards/{board.Text("id")}/components/import", "Designator,Part number,Quantity\nQ1,NX7040,1\nU2,QX4410-TR,1\n"u8.ToArray(), "list.csv", HttpStatusCode.OK);
        var photo = await site.Writer.UploadAsync($"/api/v1/teardowns/{slug}/photos", Pictures.Png(300, 200, (byte)name.Length), "bench-photo.png", HttpStatusCode.Created);
        await site.Writer.PostAsync($"/api/v1/photos/{photo.Text("id")}/callouts", new { shape = "pin", x = 0.5, y = 0.25 });
        await site.Writer.PostAsync($"/api/v1/teardowns/{slug}/publish", new { note = "First." }, HttpStatusCode.OK);
        return (slug, photo.Text("id"));
    }

    private async Task<byte[]> GetAsync(string address, int tries = 1)
    {
        while (true)
        {
            using var response = await site.Reader.GetAsync(address);
            if (response.StatusCode is HttpStatusCode.ServiceUnavailable && --tries > 0)
            {
                await Task.Delay(200);
                continue;
            }

            Assert.Equal((HttpStatusCode.OK, "application/zip"), (response.StatusCode, response.Content.Headers.ContentType?.MediaType));
            return await response.Content.ReadAsByteArrayAsync();
        }
    }

    private static JsonElement Report(JsonElement run) => run.GetProperty("report");

    private static JsonElement Only(JsonElement run) => Assert.Single(Report(run).Items("teardowns"));
}
