using System.IO.Compression;
using System.Text;
using System.Text.Json.Nodes;
using Catalogue.Data.Archives;
using Catalogue.Data.Components;
using Catalogue.Domain.Components;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Archives;

/// <summary>What is wrong with an archive is said with its entry and line, and nothing of it is taken.</summary>
public sealed class ArchiveRefusalTests : DatabaseTests, IAsyncDisposable
{
    private const string Entry = "teardowns/ferrowick-tor-600.jsonl";
    private readonly HandPhotos _photos = new();

    // Nothing ever arrives in it.
    private CatalogueDatabaseFixture? _other;

    private static (string Name, string Reason)[] BadNames =>
    [
        ("../teardowns/a.jsonl", "leads out of the archive"),
        ("/etc/passwd", "leads out of the archive"),
        ("teardowns/../../a.jsonl", "leads out of the archive"),
        ("C:/a.jsonl", "leads out of the archive"),
        ("teardowns\\a.jsonl", "leads out of the archive"),
        ("teardowns/a.jsonl\n", "no entry of that name"),
        ("teardowns/Ä.jsonl", "no entry of that name"),
        ("notes.txt", "no entry of that name"),
        (Entry, "stands twice"),
        ("teardowns/a.jsonl", "The manifest does not list it"),
    ];

    private static (string Kind, string Old, string Changed, string Reason)[] BadLines =>
    [
        ("component", "\"quantity\":", "\"quanity\":", "The field “quanity” is not known in lines of the kind “component”"),
        ("component", "\"is_fitted\":true", "\"is_fitted\":\"yes\"", "The field “is_fitted” holds what it cannot hold: \"yes\""),
        ("component", "\"is_fitted\":true,", "", "lacks the field “is_fitted”"),
        ("component", "\"is_fitted\":true", "\"is_fitted\":true,\"is_fitted\":true", "A field stands twice"),
        ("component", "\"record\":\"component\"", "\"record\":\"gadget\"", "Lines of the kind “gadget” are not known"),
        ("component", "{\"record\"", "[{\"record\"", "not JSON"),
        ("component", "\"role\":\"pack fuse\"", "\"role\":\"pack \\u0000 fuse\"", "NUL"),
        ("component", "\"role\":\"pack fuse\"", "\"role\":\"pack \\ud800 fuse\"", "half of a character"),
        ("component", "\"parallel_count\":1", "\"parallel_count\":0", "1 or more"),
        ("component", "\"parallel_count\":1", "\"parallel_count\":1e99", "parallel_count"),
        ("component", "\"function_class\":\"blade_fuse\"", "\"function_class\":\"magic\"", "function_class"),
        ("component", "\"revision\":1", "\"revision\":7", "of revision 7"),
        ("component", "\"family\":null", "\"family\":\"QX1\"", "The family “QX1” is not in families.jsonl"),
        ("component", "\"board_id\":\"0", "\"board_id\":\"f", "refers to the board"),
        ("component", "\"marking_as_read\":null", "\"marking_as_read\":\"" + Long + "\"", "at most 500 are taken"),
        ("rating", "\"low\":", "\"low\":1e999,\"x\":", "not known"),
        ("rating", "\"high\":40", "\"high\":1e999", "beyond what a number can hold"),
        ("rating", "\"high\":40", "\"high\":39", "in that order"),
        ("rating", "\"low\":40", "\"low\":-40", "above zero"),
        ("revision", "\"number\":1", "\"number\":0", "1 or more"),
        ("revision", "\"state\":\"published\"", "\"state\":\"draft\"", "published_at"),
        ("revision", "\"published_at\":\"2031", "\"published_at\":\"31", "published_at"),
        ("teardown", "ferrowick-tor-600", "other", "is the name of the entry"),
        ("teardown", "\"record\":\"teardown\"", "\"record\":\"maker\"", "not known in lines of the kind “maker”"),
    ];

    private static string Long => new('m', 501);

    /// <inheritdoc />
    public new async ValueTask DisposeAsync()
    {
        if (_other is not null)
            await _other.DisposeAsync();
        await base.DisposeAsync();
    }

    [Fact]
    public async Task Import_EntryOfABadName_IsRefused()
    {
        var archive = await ArchiveAsync();
        foreach (var (name, reason) in BadNames)
        {
            await RefusesAsync(
                archive.Pack(more: zip =>
                {
                    using var entry = zip.CreateEntry(name).Open();
                    entry.Write("{}\n"u8);
                }),
                reason);
        }
    }

    [Fact]
    public async Task Import_BadLine_IsRefusedByEntryAndLine()
    {
        var whole = (await ArchiveAsync()).Pack();
        foreach (var (kind, old, changed, reason) in BadLines)
        {
            var archive = ArchiveText.Open(whole);
            var number = archive.LineOf(Entry, kind);
            Assert.Contains(old, archive.Lines(Entry)[number - 1], StringComparison.Ordinal);

            await RefusesAsync(archive.WithLine(Entry, number, line => line.Replace(old, changed, StringComparison.Ordinal)).Pack(), $"{Entry}, line {number}:", reason);
        }
    }

    [Fact]
    public async Task Import_LineOfTenMegabytes_IsRefused()
    {
        var archive = await ArchiveAsync();
        archive.WithLine(Entry, 4, _ => $"{{\"record\":\"{new string('x', 10_000_000)}\"}}");

        await RefusesAsync(archive.Pack(level: CompressionLevel.NoCompression), $"{Entry}, line 4: It is longer than 4 MiB");
    }

    [Fact]
    public async Task Import_LinesInAnotherOrder_AreRefused()
    {
        var archive = await ArchiveAsync();
        var lines = archive.Lines(Entry);
        var board = archive.LineOf(Entry, "board") - 1;
        archive.Entries[Entry] = Encoding.UTF8.GetBytes(string.Join('\n', [.. lines[..board], .. lines[(board + 1)..], lines[board]]));

        await RefusesAsync(archive.Pack(), "Lines of the kind “board” stand before those of the kind");
    }

    [Fact]
    public async Task Import_IdOrNameThatStandsTwice_IsRefused()
    {
        var twice = await ArchiveAsync();
        var rail = twice.LineOf(Entry, "rail");
        twice.WithLine(Entry, rail, line => line + "\n" + line);
        await RefusesAsync(twice.Pack(), $"line {rail + 1}: The id", "stands twice");

        var named = await ArchiveAsync();
        named.WithLine(Entry, rail, line => line + "\n" + line.Replace("\"id\":\"0", "\"id\":\"e", StringComparison.Ordinal));
        await RefusesAsync(named.Pack(), $"line {rail + 1}: Another rail of this revision has the same name");
    }

    [Fact]
    public async Task Import_ManifestThatLies_IsRefused()
    {
        var archive = await ArchiveAsync();

        await RefusesAsync(archive.Pack(manifest => manifest["version"] = 2), "manifest.json", "version 2 of the form");
        await RefusesAsync(archive.Pack(manifest => manifest["form"] = "other"), "manifest.json", "Its form is not");
        await RefusesAsync(archive.Pack(manifest => manifest["surprise"] = 1), "manifest.json", "cannot be read");
        await RefusesAsync(archive.Pack(manifest => Listed(manifest, Entry)["sha256"] = new string('0', 64)), Entry, "changed or damaged");
        await RefusesAsync(archive.Pack(manifest => Listed(manifest, Entry)["bytes"] = 3), Entry, "longer than the 3 bytes");
        await RefusesAsync(archive.Pack(manifest => Listed(manifest, Entry)["name"] = "teardowns/gone.jsonl"), "which is not in the archive");
        archive.Entries.Remove("makers.jsonl");
        await RefusesAsync(archive.Pack(manifest => manifest["entries"]!.AsArray().Add(Listed(manifest, Entry).DeepClone())), "twice");

        static JsonNode Listed(JsonObject manifest, string name) => manifest["entries"]!.AsArray().First(entry => (string?)entry!["name"] == name)!;
    }

    [Fact]
    public async Task Import_FileThatIsNoZip_IsRefused()
    {
        await RefusesAsync(new MemoryStream("hello"u8.ToArray()), "no zip archive");
        await RefusesAsync(new MemoryStream(), "no zip archive");
        var whole = (await ArchiveAsync()).Pack().ToArray();
        foreach (var length in new[] { whole.Length - 1, whole.Length - 30, whole.Length / 2, 100 })
            await RefusesAsync(new MemoryStream(whole[..length]), "cut off");
        // An end without a beginning.
        await RefusesAsync(new MemoryStream(whole[^400..]), "zip archive");
        using var empty = new MemoryStream();
        using (new ZipArchive(empty, ZipArchiveMode.Create, leaveOpen: true))
        {
        }

        await RefusesAsync(empty, "holds no manifest.json");
    }

    [Fact]
    public async Task Import_AnyByteChanged_IsRefusedOrTheSame()
    {
        var whole = (await ArchiveAsync()).Pack().ToArray();
        var chance = new Random(4711);
        for (var i = 0; i < 60; i++)
        {
            var changed = (byte[])whole.Clone();
            changed[chance.Next(changed.Length)] ^= (byte)(1 << chance.Next(8));

            var outcome = await RunAsync(new MemoryStream(changed), dryRun: true);

            Assert.True(outcome is ImportArchive.Outcome.Refused or ImportArchive.Outcome.Done);
        }
    }

    [Fact]
    public async Task Import_EntryThatUnpacksToFarMore_IsRefused()
    {
        var archive = await ArchiveAsync();
        archive.Entries["teardowns/bomb.jsonl"] = new byte[20_000_000];

        await RefusesAsync(archive.Pack(), "teardowns/bomb.jsonl", "200 times its packed length");
    }

    [Fact]
    public async Task Import_DirectoryThatClaimsMillionsOfEntries_IsRefusedBeforeItIsRead()
    {
        var bytes = (await ArchiveAsync()).Pack().ToArray();
        var end = bytes.AsSpan().LastIndexOf("PK\u0005\u0006"u8);
        // Twelve bytes in: the length of the directory.
        BitConverter.TryWriteBytes(bytes.AsSpan(end + 12), 2_000_000_000u);

        await RefusesAsync(new MemoryStream(bytes), "more than 300000 entries");
    }

    [Fact]
    public async Task Import_EncryptedOrLinkedEntry_IsRefused()
    {
        var bytes = (await ArchiveAsync()).Pack().ToArray();
        var directory = bytes.AsSpan().IndexOf("PK\u0001\u0002"u8);
        var encrypted = (byte[])bytes.Clone();
        // Eight bytes into the first entry of the directory: the flags, whose lowest bit says encrypted.
        encrypted[directory + 8] |= 1;
        await RefusesAsync(new MemoryStream(encrypted), "encrypted");

        // Forty: the attributes outside the form of zip, in whose upper half Unix keeps the kind of file.
        BitConverter.TryWriteBytes(bytes.AsSpan(directory + 38), 0xA1FF_0000u);
        await RefusesAsync(new MemoryStream(bytes), "It is a link");
    }

    [Fact]
    public async Task Import_PictureThatIsNone_IsRefusedBeforeAnythingIsTaken()
    {
        var made = await TeardownAsync();
        var sha = _photos.Put([0xBA, 0xD0, 1]);
        await Database.SqlAsync($"insert into media_files (sha256, kind, bytes, width_pixels, height_pixels, received_at) values ('{sha}', 'png', 3, 640, 480, now())");
        Bench.Done(await Database.Get<Photos.PhotoChanges>().AddAsync(made, new Photos.PhotoChanges.TakenIn(sha, "png", 3, 640, 480, null), new Photos.PhotoForm(), Bench.Reviewer));
        await Bench.PublishAsync("ferrowick-tor-600");
        var archive = ArchiveText.Open(await ArchiveRoundTripTests.ExportAsync(Database, new ExportArchive.Request(), _photos));

        // A preview decodes no picture.
        await using (var other = await CatalogueDatabaseFixture.CreateAsync())
        {
            var reason = Assert.IsType<ImportArchive.Outcome.Refused>(await RunAsync(archive.Pack(), dryRun: false, other)).Reason;
            Assert.Equal($"photos/{sha}.png: It is no picture.", reason);
            Assert.Equal(0, await other.ScalarAsync<long>("select (select count(*) from teardowns) + (select count(*) from makers)"));
        }

        archive.WithLine("photos.jsonl", 1, line => line.Replace("640", "641", StringComparison.Ordinal));
        await RefusesAsync(archive.Pack(), Entry, "641 × 480 pixels");
        archive.Entries["photos.jsonl"] = [];
        await RefusesAsync(archive.Pack(), Entry, "is not in photos.jsonl");
    }

    [Fact]
    public async Task Import_RevisionOfAnotherTeardown_IsRefused()
    {
        var archive = await ArchiveAsync();
        archive.WithLine(Entry, 1, line => line.Replace("\"id\":\"0", "\"id\":\"d", StringComparison.Ordinal));

        Assert.Contains("belongs to another teardown", Assert.IsType<ImportArchive.Outcome.Refused>(await Database.Get<ImportArchive>().RunAsync(archive.Pack(), Request(false), _photos.Photos, (_, _, _) => Task.CompletedTask)).Reason, StringComparison.Ordinal);
        Assert.Equal(1, await Database.ScalarAsync<long>("select count(*) from teardowns"));
    }

    [Fact]
    public async Task Import_FamiliesThatDoNotGoTogether_AreRefused()
    {
        await ArchiveAsync("QX4410", "QX4411");
        var first = await ArchiveRoundTripTests.ExportAsync(Database, new ExportArchive.Request(), _photos);
        foreach (var (old, changed, reason) in new[]
        {
            ("\"match_key\":\"QX4410\"", "\"match_key\":\"qx4410\"", "no match key"),
            ("\"match_key\":\"QX4410\"", "\"match_key\":\"QX4411\"", "stands twice"),
            ("\"merged_into\":null", "\"merged_into\":\"QX4410\"", "which is not in families.jsonl or was merged itself"),
            ("\"makers\":[]", "\"makers\":[\"Nobody\"]", "The maker “Nobody” is not in makers.jsonl"),
            ("\"datasheet_url\":null", "\"datasheet_url\":\"javascript:alert(1)\"", "begins with http"),
            ("\"slug\":\"qx4410\"", "\"slug\":\"../x\"", "“slug”"),
        })
        {
            var archive = ArchiveText.Open(first);
            archive.WithLine("families.jsonl", 1, line => line.Replace(old, changed, StringComparison.Ordinal));

            await RefusesAsync(archive.Pack(), "families.jsonl, line", reason);
        }
    }

    private async Task<ArchiveText> ArchiveAsync(params string[] numbers)
    {
        if (await Database.ScalarAsync<long>("select count(*) from teardowns") == 0)
        {
            var teardown = await TeardownAsync();
            var board = await Bench.BoardAsync(teardown, "Second board");
            foreach (var number in numbers)
                await Bench.ComponentAsync(board, new ComponentForm { PartNumber = number });
            await Bench.PublishAsync("ferrowick-tor-600");
        }

        return ArchiveText.Open(await ArchiveRoundTripTests.ExportAsync(Database, new ExportArchive.Request(), _photos));
    }

    private async Task<Domain.Teardowns.TeardownId> TeardownAsync()
    {
        var made = await Bench.TeardownAsync();
        var pack = await Bench.PackAsync(made.Id, 40, 600, 0.9);
        var fuse = await Bench.FuseAsync(await Bench.BoardAsync(made.Id), pack, 40);
        await Bench.RatingAsync(fuse, RatingKind.RatedVoltage, 80);
        return made.Id;
    }

    private async Task RefusesAsync(Stream archive, params string[] fragments)
    {
        foreach (var dryRun in new[] { true, false })
        {
            archive.Position = 0;
            var outcome = await RunAsync(archive, dryRun, _other ??= await CatalogueDatabaseFixture.CreateAsync());

            var reason = Assert.IsType<ImportArchive.Outcome.Refused>(outcome).Reason;
            Assert.All(fragments, fragment => Assert.Contains(fragment, reason, StringComparison.Ordinal));
            if (!dryRun)
                Assert.Equal(0, await _other.ScalarAsync<long>("select (select count(*) from teardowns) + (select count(*) from families) + (select count(*) from makers) + (select count(*) from media_files)"));
        }
    }

    private Task<ImportArchive.Outcome> RunAsync(Stream archive, bool dryRun, CatalogueDatabaseFixture? other = null) =>
        (other ?? Database).Get<ImportArchive>().RunAsync(archive, Request(dryRun), new HandPhotos().Photos, (_, _, _) => Task.CompletedTask);

    private static ImportArchive.Request Request(bool dryRun) => new(Bench.Reviewer, dryRun, KeepPublished: false, MayPublish: true);
}
