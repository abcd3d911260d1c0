using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Data.Questions;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Questions;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Families;

public sealed class MergeAndSplitTests : IAsyncLifetime
{
    private CatalogueDatabaseFixture _database = null!;

    public async ValueTask InitializeAsync() => _database = await CatalogueDatabaseFixture.CreateAsync();

    public async ValueTask DisposeAsync() => await _database.DisposeAsync();

    [Fact]
    public async Task Merge_OfTwoFamilies_CountsTogetherAndUndoRestoresEveryLink()
    {
        var one = await PublishedAsync("Tor", "QS8205");
        var two = await PublishedAsync("Lath", "QS8205A");
        var before = await RowsAsync();
        var merge = Bench.Done(await _database.Get<MergeFamilies>().RunAsync("qs8205a", "qs8205", "the same dies", Bench.Reviewer));

        Assert.Equal([one, two], await DesignsAsync("qs8205"));
        Assert.Equal([one, two], await AskedAsync("qs8205"));
        Assert.Equal("qs8205", Assert.IsType<FamilyQuery.Answer.Moved>(await _database.Get<FamilyQuery>().RunAsync("qs8205a", false)).Slug);
        Assert.Single((await _database.Get<FamiliesQuery>().RunAsync(null, null, 50, false)).Items);

        Bench.Done(await _database.Get<MergeFamilies>().UndoAsync(merge, Bench.Reviewer));
        Assert.Equal([one], await DesignsAsync("qs8205"));
        Assert.Equal([two], await DesignsAsync("qs8205a"));
        Assert.Equal(before, await RowsAsync());
    }

    [Fact]
    public async Task Merge_OfAMergedFamilyFurtherOn_LeadsOnAndUndoesInOrder()
    {
        foreach (var (name, number) in ((string, string)[])[("A", "QX1"), ("B", "QX2"), ("C", "QX3")])
            await PublishedAsync(name, number);
        var merges = _database.Get<MergeFamilies>();
        var first = Bench.Done(await merges.RunAsync("qx1", "qx2", null, Bench.Reviewer));
        var second = Bench.Done(await merges.RunAsync("qx2", "qx3", null, Bench.Reviewer));
        Assert.Equal(3, (await DesignsAsync("qx3")).Count);
        Assert.Equal("qx3", Assert.IsType<FamilyQuery.Answer.Moved>(await _database.Get<FamilyQuery>().RunAsync("qx1", false)).Slug);

        Assert.Contains("qx3", Assert.IsType<ChangeOutcome<FamilyMergeId>.Refused>(await merges.UndoAsync(first, Bench.Reviewer)).Reason, StringComparison.Ordinal);
        Bench.Done(await merges.UndoAsync(second, Bench.Reviewer));
        Assert.Equal(2, (await DesignsAsync("qx2")).Count);
        Bench.Done(await merges.UndoAsync(first, Bench.Reviewer));
        Assert.Single(await DesignsAsync("qx2"));
        Assert.IsType<ChangeOutcome<FamilyMergeId>.Refused>(await merges.UndoAsync(first, Bench.Reviewer));
    }

    [Theory]
    [InlineData("qx1", "qx1")]
    [InlineData("qx1", "nowhere")]
    [InlineData("qx1", null)]
    public async Task Merge_IntoNothingSensible_IsRefused(string slug, string? into)
    {
        await PublishedAsync("A", "QX1");
        Assert.Equal("into", Assert.IsType<ChangeOutcome<FamilyMergeId>.Refused>(await _database.Get<MergeFamilies>().RunAsync(slug, into, null, Bench.Reviewer)).Field);
    }

    [Fact]
    public async Task Split_OfAPublishedPart_LeavesItsRowAndCountsItElsewhere()
    {
        var one = await PublishedAsync("Tor", "QX4R");
        var two = await PublishedAsync("Lath", "QX4R", marking: "QX4RB\n2317");
        var rows = await RowsAsync();
        var split = Bench.Done(await _database.Get<SplitFamily>().RunAsync("qx4r", new SplitForm { Into = "QX4RB", Texts = ["qx4rb\n2317 "] }, Bench.Reviewer));

        Assert.Equal([one], await DesignsAsync("qx4r"));
        Assert.Equal([two], await DesignsAsync("qx4rb"));
        Assert.Equal([two], await AskedAsync("qx4rb"));
        Assert.Equal(rows, await RowsAsync());
        var record = (await _database.Get<TeardownRecordQuery>().PublishedAsync(two))!;
        Assert.Equal(("qx4r", "qx4rb"), (record.FamilyOf(record.Components[0])!.Slug, record.FamilyOf(record.Components[0])!.Now!.Slug));

        // A draft that is opened now takes the family it counts to along.
        var draft = await new Bench(_database).BoardAsync(record.Revision.TeardownId, "second");
        Assert.Equal(1, await _database.ScalarAsync<long>("select count(*) from components c join revisions r on r.id = c.revision_id join families f on f.id = c.family_id where r.state = 'draft' and f.slug = 'qx4rb'"));
        Assert.NotEqual(default, draft);

        Bench.Done(await _database.Get<SplitFamily>().UndoAsync(split, Bench.Reviewer));
        Assert.Equal([one, two], await DesignsAsync("qx4r"));
        Assert.Equal(0, await _database.ScalarAsync<long>("select count(*) from family_moves"));
    }

    [Fact]
    public async Task Split_OfADraftsPart_LinksItAnewAndUndoLinksItBack()
    {
        var bench = new Bench(_database);
        var board = await bench.BoardAsync((await bench.TeardownAsync()).Id);
        var stays = await bench.ComponentAsync(board, new ComponentForm { PartNumber = "QX4R" });
        var goes = await bench.ComponentAsync(board, new ComponentForm { PartNumber = "QX4R" });
        var split = Bench.Done(await _database.Get<SplitFamily>().RunAsync("qx4r", new SplitForm { Into = "QX4R-X", Components = [goes.Value] }, Bench.Reviewer));
        Assert.Equal(("qx4r", "qx4r-x"), (await FamilyOfAsync(stays), await FamilyOfAsync(goes)));
        Bench.Done(await _database.Get<SplitFamily>().UndoAsync(split, Bench.Reviewer));
        Assert.Equal(("qx4r", "qx4r"), (await FamilyOfAsync(stays), await FamilyOfAsync(goes)));
    }

    [Fact]
    public async Task Split_WithAName_TakesItAlongAndBack()
    {
        await PublishedAsync("Tor", "QX4R");
        var changes = _database.Get<FamilyChanges>();
        Bench.Done(await changes.AddAliasAsync("qx4r", "QX4R-B2", FamilyNameKind.OrderingVariant, Bench.Reviewer));
        var split = Bench.Done(await _database.Get<SplitFamily>().RunAsync("qx4r", new SplitForm { Into = "QX5", Aliases = ["QX4R-B2"] }, Bench.Reviewer));
        Assert.Equal("qx5", await _database.ScalarAsync<string>("select f.slug from family_aliases a join families f on f.id = a.family_id"));
        Bench.Done(await _database.Get<SplitFamily>().UndoAsync(split, Bench.Reviewer));
        Assert.Equal("qx4r", await _database.ScalarAsync<string>("select f.slug from family_aliases a join families f on f.id = a.family_id"));
    }

    [Fact]
    public async Task Split_OfNothing_IsRefused()
    {
        await PublishedAsync("Tor", "QX4R");
        Assert.IsType<ChangeOutcome<FamilySplitId>.Refused>(await _database.Get<SplitFamily>().RunAsync("qx4r", new SplitForm { Into = "QX5", Texts = ["ZZ9"] }, Bench.Reviewer));
        Assert.Equal(0, await _database.ScalarAsync<long>("select count(*) from families where match_key = 'QX5'"));
    }

    [Fact]
    public async Task Alias_OfAnotherFamily_IsRefusedWithTheWayToMergeIt()
    {
        await PublishedAsync("Tor", "QX4R");
        await PublishedAsync("Lath", "QX5");
        var refused = Assert.IsType<ChangeOutcome<string>.Refused>(await _database.Get<FamilyChanges>().AddAliasAsync("qx4r", "QX5-TR", FamilyNameKind.OtherNumber, Bench.Reviewer));
        Assert.Contains("Merge it", refused.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Alias_ThatWasAdded_JoinsPartsFromThenOn()
    {
        await PublishedAsync("Tor", "QX4R");
        Bench.Done(await _database.Get<FamilyChanges>().AddAliasAsync("qx4r", "OLD-77", FamilyNameKind.OtherNumber, Bench.Reviewer));
        var two = await PublishedAsync("Lath", "old-77-TR");
        Assert.Contains(two, await DesignsAsync("qx4r"));
    }

    [Fact]
    public async Task Amend_OfFacts_ChecksAndPutsPackagesAsTheTradeDoes()
    {
        await PublishedAsync("Tor", "QX4R");
        var changes = _database.Get<FamilyChanges>();
        Bench.Done(await changes.AmendAsync("qx4r", null, form => Amended(form, "qx4r", "https://maker.example/qx4r.pdf", "DPAK"), Bench.Reviewer));
        await using var context = await _database.ContextAsync();
        var family = context.Families.Single();
        Assert.Equal(("qx4r", "TO-252"), (family.Name, Assert.Single(family.Packages)));

        Assert.Equal("name", Assert.IsType<ChangeOutcome<FamilyId>.Refused>(await changes.AmendAsync("qx4r", null, form => Amended(form, "QX5", null, "DPAK"), Bench.Reviewer)).Field);
        Assert.Equal("datasheet_url", Assert.IsType<ChangeOutcome<FamilyId>.Refused>(await changes.AmendAsync("qx4r", null, form => Amended(form, "QX4R", "javascript:alert(1)", "DPAK"), Bench.Reviewer)).Field);
        Assert.IsType<ChangeOutcome<FamilyId>.Stale>(await changes.AmendAsync("qx4r", family.Version + 1, form => Amended(form, "QX4R", null, "DPAK"), Bench.Reviewer));
    }

    [Fact]
    public async Task TopMark_ThatTwoFamiliesShare_LeadsToBoth()
    {
        await PublishedAsync("Tor", "QX4R");
        await PublishedAsync("Lath", "QX5");
        var changes = _database.Get<FamilyChanges>();
        Bench.Done(await changes.AddTopMarkAsync("qx4r", new TopMarkForm { Code = "A6T", Maker = "Marnholt" }, Bench.Reviewer));
        Bench.Done(await changes.AddTopMarkAsync("qx5", new TopMarkForm { Code = "A6T", Maker = "Ulbrecken" }, Bench.Reviewer));
        var found = await _database.Get<MarkingCandidatesQuery>().RunAsync(new() { Marking = "A6T" }, null, seesDrafts: false);
        Assert.Equal(["qx4r", "qx5"], found.Select(one => one.Slug).Order());
        Assert.All(found, one => Assert.True(one.Candidate.IsTied));
    }

    private static ChangeOutcome<FamilyForm> Amended(FamilyForm form, string name, string? datasheet, string package)
    {
        (form.Name, form.DatasheetUrl, form.Packages) = (name, datasheet, [package]);
        return new ChangeOutcome<FamilyForm>.Done(form);
    }

    private async Task<List<string>> DesignsAsync(string slug) =>
        await _database.Get<FamilyQuery>().RunAsync(slug, seesDrafts: false) is FamilyQuery.Answer.Found found ? [.. found.Family.Uses.Select(use => use.Teardown).Distinct().OrderByDescending(name => name)] : [];

    private async Task<List<string>> AskedAsync(string slug)
    {
        var answer = Bench.Done(await _database.Get<AskQuery>().RunAsync(new Question { Subject = QuestionSubject.Designs, Has = [new QuestionCondition { Family = slug }] }));
        return [.. answer.Rows.Select(row => row.Teardown).OrderByDescending(name => name)];
    }

    private Task<string> FamilyOfAsync(ComponentId id) => _database.ScalarAsync<string>($"select f.slug from components c join families f on f.id = c.family_id where c.id = '{id}'");

    // Every row that a merge or split could touch, and must not.
    private Task<string> RowsAsync() => _database.ScalarAsync<string>("select string_agg(c::text || f.match_key || coalesce(f.merged_into_id::text, '-'), '|' order by c.id, c.revision_id) from components c join families f on f.id = c.family_id");

    private async Task<string> PublishedAsync(string name, string number, string? marking = null)
    {
        var bench = new Bench(_database);
        var teardown = await bench.TeardownAsync(name: name);
        await bench.ComponentAsync(await bench.BoardAsync(teardown.Id), new ComponentForm { PartNumber = number, MarkingAsRead = marking });
        await bench.PublishAsync(teardown.Slug);
        return teardown.Slug;
    }
}
