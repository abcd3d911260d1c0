using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Identification;
using Catalogue.Testing;
using Catalogue.Testing.Identification;
using Npgsql;

namespace Catalogue.Data.Tests.Families;

public sealed class MarkingCandidatesQueryTests : IAsyncLifetime
{
    private CatalogueDatabaseFixture _database = null!;

    public async ValueTask InitializeAsync() => _database = await CatalogueDatabaseFixture.CreateAsync();

    public async ValueTask DisposeAsync() => await _database.DisposeAsync();

    [Fact]
    public async Task RunAsync_AMarkWithALookAlike_FindsTheFamilyFirst()
    {
        await PublishedAsync("808-7A-TR");
        var found = await AskAsync("8O8-7A", seesDrafts: false);
        Assert.Equal("808-7A", found[0].Name);
        Assert.Contains("O looks like 0", found[0].Candidate.Reasons[0], StringComparison.Ordinal);
        Assert.Null(MarkingCandidates.ToTake([.. found.Select(one => one.Candidate)]));
    }

    [Fact]
    public async Task RunAsync_AFamilyThatOnlyADraftMentions_IsNotShownToReaders()
    {
        var bench = new Bench(_database);
        var board = await bench.BoardAsync((await bench.TeardownAsync()).Id);
        await bench.ComponentAsync(board, new ComponentForm { PartNumber = "QX4R065N" });
        Assert.Empty(await AskAsync("QX4R065N", seesDrafts: false));
        Assert.Equal("QX4R065N", Assert.Single(await AskAsync("QX4R065N", seesDrafts: true)).Name);
    }

    [Fact]
    public async Task RunAsync_AlikeNumbers_AreOfferedAsKinAndNeverJoined()
    {
        await PublishedAsync("QS8205", "QS8205A");
        var found = await AskAsync("QS8205", seesDrafts: false);
        Assert.Equal(["QS8205", "QS8205A"], found.Select(one => one.Name));
        Assert.Equal("QS8205", MarkingCandidates.ToTake([.. found.Select(one => one.Candidate)])?.Name.Text);
    }

    [Fact]
    public async Task RunAsync_AHomoglyphOfAnotherFamily_IsFoundAndIsAnotherFamily()
    {
        await PublishedAsync("QLX-4N30D", "QL\u0425-4N30D");
        var found = await AskAsync("QLX-4N30D", seesDrafts: false);
        Assert.Equal(2, found.Count);
        Assert.True(found[0].Candidate.IsTied);
    }

    [Theory]
    [InlineData("")]
    [InlineData("---")]
    [InlineData("\u202e\u200f")]
    [InlineData("🙂🙂")]
    [InlineData("?????")]
    public async Task RunAsync_NothingThatCouldBeANumber_FindsNothing(string marking) => Assert.Empty(await AskAsync(marking, seesDrafts: true));

    [Fact]
    public async Task RunAsync_APartThatWasSeenInItsOwnUnitOnly_DoesNotCountAsSeen()
    {
        var teardown = await PublishedAsync("QX4R065N");
        var query = _database.Get<MarkingCandidatesQuery>();
        var there = await query.RunAsync(new MarkingQuestion { Marking = "QX4R065N" }, new MarkingCandidatesQuery.Place(teardown, null), true);
        Assert.Equal(0, Assert.Single(there).Candidate.Family.SeenInDesigns);
        Assert.Equal(1, Assert.Single(await AskAsync("QX4R065N", seesDrafts: true)).Candidate.Family.SeenInDesigns);
    }

    [Fact]
    public async Task MarkingKeys_OfTheDatabase_AgreeWithThoseOfTheDomain()
    {
        foreach (var number in InventedFamilies.Make(300, seed: 3).Select(family => family.Number).Concat(["808-7A", "A", "AB", "ABC", "QL\u0425-4\u039D30D", "1234567890123456789012345678901234567890", "----"]))
        {
            await using var command = _database.Source.CreateCommand("select marking_letters($1), marking_keys(marking_letters($1))");
            command.Parameters.Add(new NpgsqlParameter { Value = number });
            await using var reader = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken);
            Assert.True(await reader.ReadAsync(TestContext.Current.CancellationToken));
            var letters = MarkingKeys.Letters(number);
            Assert.Equal(letters, reader.GetString(0));
            Assert.Equal(MarkingKeys.Stored(letters).Order(StringComparer.Ordinal), reader.GetFieldValue<string[]>(1).Order(StringComparer.Ordinal));
        }
    }

    [Fact]
    public async Task RunAsync_OverDenseFamilies_FindsMarksWithErrors()
    {
        var all = InventedFamilies.Make(20_000, seed: 9);
        await InventedCatalogue.LoadAsync(_database, all);
        var query = _database.Get<MarkingCandidatesQuery>();
        foreach (var (errors, first, five) in ((int, double, double)[])[(0, 0.99, 1), (1, 0.83, 0.95), (2, 0.70, 0.88)])
        {
            var chance = new Random(errors);
            var (right, near) = (0, 0);
            const int Marks = 150;
            for (var i = 0; i < Marks; i++)
            {
                var place = chance.Next(all.Count);
                var (mark, _) = MangledMarking.Of(all[place].Number, all[place].Maker, errors, chance);
                var found = await query.RunAsync(new MarkingQuestion { Marking = mark }, null, seesDrafts: true, TestContext.Current.CancellationToken);
                var rank = found.ToList().FindIndex(one => one.Candidate.Family.Id.Value == InventedCatalogue.Id(place));
                right += rank == 0 ? 1 : 0;
                near += rank is >= 0 and < 5 ? 1 : 0;
            }

            Assert.True(right >= first * Marks && near >= five * Marks, FormattableString.Invariant($"{errors} errors: {right} first, {near} among five, of {Marks}"));
        }
    }

    private Task<IReadOnlyList<MarkingCandidatesQuery.Found>> AskAsync(string marking, bool seesDrafts) =>
        _database.Get<MarkingCandidatesQuery>().RunAsync(new MarkingQuestion { Marking = marking }, null, seesDrafts, TestContext.Current.CancellationToken);

    private async Task<Catalogue.Domain.Teardowns.TeardownId> PublishedAsync(params string[] numbers)
    {
        var bench = new Bench(_database);
        var teardown = await bench.TeardownAsync();
        var board = await bench.BoardAsync(teardown.Id);
        foreach (var number in numbers)
            await bench.ComponentAsync(board, new ComponentForm { PartNumber = number, FunctionClass = FunctionClass.Switch });
        await bench.PublishAsync(teardown.Slug);
        return teardown.Id;
    }
}
