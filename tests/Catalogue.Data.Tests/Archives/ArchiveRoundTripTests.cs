using System.Text;
using System.Text.Json;
using Catalogue.Data.Archives;
using Catalogue.Data.Components;
using Catalogue.Data.Teardowns;
using Catalogue.Testing;
using Json.Schema;

namespace Catalogue.Data.Tests.Archives;

public sealed class ArchiveRoundTripTests : DatabaseTests
{
    private readonly HandPhotos _photos = new();

    [Theory]
    [InlineData(1)]
    [InlineData(20_311)]
    public async Task ExportImportExport_OfARandomCatalogue_GivesTheSameLines(int seed)
    {
        await new RandomCatalogue(Database, _photos, seed).FillAsync(6);
        var first = await ExportAsync(Database, new ExportArchive.Request { WithDrafts = true }, _photos);
        await using var other = await CatalogueDatabaseFixture.CreateAsync();
        var store = new HandPhotos();

        var report = await ImportAsync(other, first, store);

        Assert.True(report.KeepsPublished);
        Assert.Equal((6, 8, 0), (report.Teardowns.Count(item => item.Action is ArchiveReport.Action.New), report.Families.New, report.Families.Conflicts.Count));
        var second = await ExportAsync(other, new ExportArchive.Request { WithDrafts = true }, store);
        AssertSame(ArchiveText.Open(first), ArchiveText.Open(second));
        // What questions read is there as well, and the running numbers go on.
        Assert.True(await other.ScalarAsync<long>("select count(*) from current_figures") > 0);
        var next = await new Bench(other).TeardownAsync("Ferrowick", "Tor 900");
        Assert.Equal(7, await other.ScalarAsync<int>($"select number from teardowns where slug = '{next.Slug}'"));
    }

    [Fact]
    public async Task Import_OfTheSameArchiveAgain_ChangesNothing()
    {
        await new RandomCatalogue(Database, _photos, 7).FillAsync(5);
        var archive = await ExportAsync(Database, new ExportArchive.Request { WithDrafts = true }, _photos);
        await using var other = await CatalogueDatabaseFixture.CreateAsync();
        await ImportAsync(other, archive, new HandPhotos());
        var before = await CountsAsync(other);

        foreach (var (catalogue, keeps) in new[] { (other, false), (other, true), (Database, false) })
        {
            var report = await ImportAsync(catalogue, archive, _photos, keeps);

            Assert.All(report.Teardowns, item => Assert.True(item.Action is ArchiveReport.Action.Same, string.Join(" ", item.Notes.Prepend(item.Slug))));
            Assert.Equal((0, 8, 0), (report.Families.New, report.Families.Same, report.Families.Differing));
            Assert.Equal((0, 0), (report.Makers.New, report.Makers.Differing));
        }

        Assert.Equal(before, await CountsAsync(other));
    }

    [Fact]
    public async Task Import_OfWhatIsGivenAway_ArrivesAsDraftsForReviewWithItsHistoryAsText()
    {
        await new RandomCatalogue(Database, _photos, 11).FillAsync(5);
        await Database.SqlAsync($"insert into renditions (sha256, width_pixels, height_pixels, store_name, content_sha256, bytes) select sha256, {HandPhotos.Width}, {HandPhotos.Height}, sha256 || '.png', sha256, 5 from media_files");
        var archive = await ExportAsync(Database, new ExportArchive.Request { ForOthers = true }, _photos);
        var text = ArchiveText.Open(archive);
        Assert.DoesNotContain("SN 4711", string.Concat(text.Entries.Where(entry => entry.Key.EndsWith(".jsonl", StringComparison.Ordinal)).Select(entry => Encoding.UTF8.GetString(entry.Value))), StringComparison.Ordinal);
        Assert.DoesNotContain("M. Adair", string.Concat(text.Entries.Where(entry => entry.Key.StartsWith("teardowns/", StringComparison.Ordinal)).Select(entry => Encoding.UTF8.GetString(entry.Value))), StringComparison.Ordinal);
        await using var other = await CatalogueDatabaseFixture.CreateAsync();

        // The public copy is a JPEG, and the store of this test says PNG of everything.
        var store = new HandPhotos();
        var refusal = await RunAsync(other, archive, store, keeps: false);
        Assert.IsType<ImportArchive.Outcome.Refused>(refusal);
        Assert.Equal(0, await other.ScalarAsync<long>("select count(*) from teardowns"));
        foreach (var name in text.Entries.Keys.Where(name => name.StartsWith("photos/", StringComparison.Ordinal)).ToList())
        {
            text.Entries[Path.ChangeExtension(name, "png")] = text.Entries[name];
            text.Entries.Remove(name);
        }

        text.Entries["photos.jsonl"] = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(text.Entries["photos.jsonl"]).Replace("\"jpeg\"", "\"png\"", StringComparison.Ordinal).Replace(".jpg", ".png", StringComparison.Ordinal));
        var report = await ImportAsync(other, text.Pack(), store);

        Assert.False(report.KeepsPublished);
        Assert.Equal(3, report.Teardowns.Count);
        var item = report.Teardowns[0];
        Assert.Equal((ArchiveReport.Action.New, 1), (item.Action, item.Revisions));
        Assert.Contains(item.History, line => line.StartsWith("Revision 5 (published), published 2031-", StringComparison.Ordinal));
        Assert.Equal("in_review", await other.ScalarAsync<string>("select string_agg(distinct state, ',') from revisions"));
        Assert.Equal(0, await other.ScalarAsync<long>("select count(*) from publications"));
        var again = await ImportAsync(other, text.Pack(), store);
        Assert.All(again.Teardowns, same => Assert.True(same.Action is ArchiveReport.Action.Same, string.Join(" ", same.Notes)));
    }

    [Fact]
    public async Task Import_IntoACatalogueWithWorkOfItsOwn_IsForReviewUnlessAnAdministratorSaysOtherwise()
    {
        await new RandomCatalogue(Database, _photos, 3).FillAsync(2);
        var archive = await ExportAsync(Database, new ExportArchive.Request(), _photos);
        foreach (var keeps in new[] { false, true })
        {
            await using var other = await CatalogueDatabaseFixture.CreateAsync();
            var own = await new Bench(other).TeardownAsync("Órdoñez & Søn", "Lath 0 ⚡");

            var foreseen = await ImportAsync(other, archive, new HandPhotos(), keeps, dryRun: true);
            Assert.Equal(1, await other.ScalarAsync<long>("select count(*) from teardowns"));
            Assert.Equal(0, await other.ScalarAsync<long>("select count(*) from families"));
            var report = await ImportAsync(other, archive, new HandPhotos(), keeps);

            Assert.Equal(JsonSerializer.Serialize(foreseen with { DryRun = false }), JsonSerializer.Serialize(report));
            Assert.Equal(own.Slug + "-2", report.Teardowns[0].Address);
            Assert.Contains("belongs to another teardown", report.Teardowns[0].Notes[0], StringComparison.Ordinal);
            Assert.Equal(keeps ? 2 : 0, await other.ScalarAsync<long>("select count(*) from revisions where state = 'published'"));
            Assert.NotNull(await other.Get<TeardownRecordQuery>().LatestAsync(report.Teardowns[0].Address!));
        }
    }

    [Fact]
    public async Task Import_ATeardownThatWasEditedSince_LeavesItAndSaysWhatDiffers()
    {
        var made = await Bench.TeardownAsync();
        await Bench.BoardAsync(made.Id);
        await Bench.PublishAsync(made.Slug);
        var archive = ArchiveText.Open(await ExportAsync(Database, new ExportArchive.Request(), _photos));
        var entry = ArchiveForm.TeardownEntry(made.Slug);
        archive.WithLine(entry, archive.LineOf(entry, "board"), line => line.Replace("Main power board", "Power board", StringComparison.Ordinal));

        var report = await ImportAsync(Database, archive.Pack(), _photos);

        var item = Assert.Single(report.Teardowns);
        Assert.Equal((ArchiveReport.Action.Differing, "Revision 1 differs in: board."), (item.Action, Assert.Single(item.Notes)));
        Assert.Equal("Main power board", await Database.ScalarAsync<string>("select name from boards"));
    }

    [Fact]
    public async Task Import_AfterABreak_GoesOnWhereItWas()
    {
        await new RandomCatalogue(Database, _photos, 5).FillAsync(5);
        var archive = await ExportAsync(Database, new ExportArchive.Request { WithDrafts = true }, _photos);
        await using var other = await CatalogueDatabaseFixture.CreateAsync();
        var store = new HandPhotos();
        using var cut = new CancellationTokenSource();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => other.Get<ImportArchive>().RunAsync(
            archive, Request(false, false), store.Photos, (done, _, _) => done == 7 ? cut.CancelAsync() : Task.CompletedTask, cut.Token));
        Assert.Equal(2, await other.ScalarAsync<long>("select count(*) from teardowns"));

        var report = await ImportAsync(other, archive, store);

        Assert.True(report.KeepsPublished);
        Assert.Equal((2, 3), (report.Teardowns.Count(item => item.Action is ArchiveReport.Action.Same), report.Teardowns.Count(item => item.Action is ArchiveReport.Action.New)));
        AssertSame(ArchiveText.Open(archive), ArchiveText.Open(await ExportAsync(other, new ExportArchive.Request { WithDrafts = true }, store)));
    }

    [Fact]
    public async Task Import_FamiliesThatAreHere_AreFoundByMatchKeyAloneAndLeftAsTheyAre()
    {
        var made = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(made.Id);
        await Bench.ComponentAsync(board, new ComponentForm { Designators = "U1", PartNumber = "QX4410" });
        await Bench.ComponentAsync(board, new ComponentForm { Designators = "U2", PartNumber = "QX4411" });
        await Bench.PublishAsync(made.Slug);
        var archive = await ExportAsync(Database, new ExportArchive.Request(), _photos);
        await using var other = await CatalogueDatabaseFixture.CreateAsync();
        var bench = new Bench(other);
        var own = await bench.TeardownAsync("Quelvane", "Lath 65");
        await bench.ComponentAsync(await bench.BoardAsync(own.Id), new ComponentForm { Designators = "U9", PartNumber = "QX4410" });
        await other.SqlAsync("update families set note = 'Seen hot.'");

        var report = await ImportAsync(other, archive, new HandPhotos());

        Assert.Equal((1, 0, 1, "QX4410: note"), (report.Families.New, report.Families.Same, report.Families.Differing, Assert.Single(report.Families.Differences)));
        Assert.Equal("Seen hot.", await other.ScalarAsync<string>("select note from families where match_key = 'QX4410'"));
        Assert.Equal(2, await other.ScalarAsync<long>("select count(*) from components c join families f on f.id = c.family_id where f.match_key = 'QX4410'"));
    }

    [Fact]
    public async Task Lines_OfARandomCatalogue_AreValidByTheSchemasInTheArchive()
    {
        await new RandomCatalogue(Database, _photos, 23).FillAsync(5);
        var archive = ArchiveText.Open(await ExportAsync(Database, new ExportArchive.Request { WithDrafts = true }, _photos));
        var schemas = ArchiveKind.All.ToDictionary(kind => kind.Name, kind => JsonSchema.FromText(Encoding.UTF8.GetString(archive.Entries[ArchiveForm.SchemaEntry(kind.Name)])));
        var seen = new HashSet<string>();

        foreach (var entry in archive.Entries.Keys.Where(name => name.EndsWith(".jsonl", StringComparison.Ordinal)))
        {
            foreach (var line in archive.Lines(entry))
            {
                using var json = JsonDocument.Parse(line);
                var kind = json.RootElement.GetProperty("record").GetString()!;
                seen.Add(kind);
                var result = schemas[kind].Evaluate(json.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true });
                Assert.True(result.IsValid, $"{line}\n{string.Join("\n", result.Details.Where(detail => detail.HasErrors).SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Value}")))}");
            }
        }

        Assert.Equal(ArchiveKind.All.Select(kind => kind.Name).ToHashSet(), seen);
    }

    [Fact]
    public async Task Export_OfAnAddressThatIsNotThere_SaysSo()
    {
        var made = await Bench.TeardownAsync();

        foreach (var (slug, drafts) in new[] { ("nowhere", true), (made.Slug, false) })
        {
            var outcome = await Database.Get<ExportArchive>().RunAsync(
                new ExportArchive.Request { Teardowns = [slug], WithDrafts = drafts }, _photos.Photos, _ => throw new InvalidOperationException("Nothing is written."), null);

            Assert.Contains(slug, Assert.IsType<ExportArchive.Outcome.NotFound>(outcome).Reason, StringComparison.Ordinal);
        }
    }

    internal static async Task<MemoryStream> ExportAsync(CatalogueDatabaseFixture database, ExportArchive.Request request, HandPhotos photos)
    {
        var stream = new MemoryStream();
        Assert.IsType<ExportArchive.Outcome.Written>(await database.Get<ExportArchive>().RunAsync(request, photos.Photos, _ => Task.FromResult<Stream>(stream), null));
        stream.Position = 0;
        return stream;
    }

    private static async Task<ArchiveReport> ImportAsync(CatalogueDatabaseFixture database, Stream archive, HandPhotos photos, bool keeps = false, bool dryRun = false)
    {
        var outcome = await RunAsync(database, archive, photos, keeps, dryRun);
        return outcome is ImportArchive.Outcome.Done done ? done.Report : throw new InvalidOperationException($"It was not brought in: {outcome}");
    }

    private static Task<ImportArchive.Outcome> RunAsync(CatalogueDatabaseFixture database, Stream archive, HandPhotos photos, bool keeps, bool dryRun = false) =>
        database.Get<ImportArchive>().RunAsync(archive, Request(keeps, dryRun), photos.Photos, (_, _, _) => Task.CompletedTask);

    private static ImportArchive.Request Request(bool keeps, bool dryRun) => new(Bench.Reviewer, dryRun, keeps, MayPublish: true);

    private static async Task<string> CountsAsync(CatalogueDatabaseFixture database)
    {
        var tables = new[] { "teardowns", "revisions", "components", "figures", "current_figures", "publications", "families", "family_aliases", "family_ratings", "makers", "maker_aliases", "photos", "media_files", "audit_entries" };
        var counts = new List<long>();
        foreach (var table in tables)
            counts.Add(await database.ScalarAsync<long>($"select count(*) from {table}"));
        return string.Join(' ', counts);
    }

    private static void AssertSame(ArchiveText first, ArchiveText second)
    {
        Assert.Equal(first.Entries.Keys, second.Entries.Keys);
        foreach (var name in first.Entries.Keys)
        {
            if (name.EndsWith(".jsonl", StringComparison.Ordinal))
                Assert.Equal(first.Lines(name), second.Lines(name));
            else
                Assert.Equal(first.Entries[name], second.Entries[name]);
        }
    }
}
