using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Families;

/// <summary>Taking a split back, and splitting while others work.</summary>
public sealed class SplitFamilyTests : DatabaseTests
{
    private SplitFamily Splits => Database.Get<SplitFamily>();

    private MergeFamilies Merges => Database.Get<MergeFamilies>();

    [Fact]
    public async Task Undo_OfNamesThatAMergedFamilyBrought_GivesThemBackToThatFamily()
    {
        await PublishedAsync("Tor", "QX4R");
        await PublishedAsync("Lath", "QX5");
        var changes = Database.Get<FamilyChanges>();
        Bench.Done(await changes.AddAliasAsync("qx4r", "QX4R-B2", FamilyNameKind.OrderingVariant, Bench.Reviewer));
        Bench.Done(await changes.AddAliasAsync("qx5", "QX5-OLD", FamilyNameKind.OtherNumber, Bench.Reviewer));
        var mark = Bench.Done(await changes.AddTopMarkAsync("qx4r", new TopMarkForm { Code = "A6T" }, Bench.Reviewer));
        var apart = await StateAsync();
        var merge = Bench.Done(await Merges.RunAsync("qx4r", "qx5", null, Bench.Reviewer));
        var merged = await StateAsync();

        var split = Bench.Done(await Splits.RunAsync("qx5", new SplitForm { Into = "QX6", Texts = ["QX4R"], Aliases = ["QX4R-B2", "QX5-OLD"], TopMarks = [mark.Value] }, Bench.Reviewer));
        Assert.Equal(3, await Database.ScalarAsync<long>("select count(*) from (select family_id from family_aliases union all select family_id from family_top_marks) n join families f on f.id = n.family_id where f.slug = 'qx6'"));

        Bench.Done(await Splits.UndoAsync(split, Bench.Reviewer));
        Assert.Equal(merged, await StateAsync());
        Bench.Done(await Merges.UndoAsync(merge, Bench.Reviewer));
        Assert.Equal(apart, await StateAsync());
    }

    [Fact]
    public async Task Undo_WithADraftOpenedSince_TakesItBackToo()
    {
        var one = await PublishedAsync("Tor", "QX4R");
        var split = Bench.Done(await Splits.RunAsync("qx4r", new SplitForm { Into = "QX6", Texts = ["QX4R"] }, Bench.Reviewer));
        await Bench.BoardAsync((await Database.Get<TeardownRecordQuery>().PublishedAsync(one))!.Id, "second");
        Assert.Equal("qx4r published, qx6 draft", await LinksAsync());

        Bench.Done(await Splits.UndoAsync(split, Bench.Reviewer));
        Assert.Equal("qx4r published, qx4r draft", await LinksAsync());
        Assert.Equal(0, await Database.ScalarAsync<long>("select count(*) from family_moves"));
    }

    [Fact]
    public async Task Undo_WithTheDraftPublishedSince_CountsItBackAndLeavesItsRow()
    {
        var one = await PublishedAsync("Tor", "QX4R");
        var split = Bench.Done(await Splits.RunAsync("qx4r", new SplitForm { Into = "QX6", Texts = ["QX4R"] }, Bench.Reviewer));
        await Bench.BoardAsync((await Database.Get<TeardownRecordQuery>().PublishedAsync(one))!.Id, "second");
        await Bench.PublishAsync(one);
        Assert.Equal("qx4r superseded, qx6 published", await LinksAsync());

        Bench.Done(await Splits.UndoAsync(split, Bench.Reviewer));
        Assert.Equal("qx4r superseded, qx6 published", await LinksAsync());
        var part = Assert.Single(Assert.IsType<FamilyQuery.Answer.Found>(await Database.Get<FamilyQuery>().RunAsync("qx4r", false)).Family.Uses);
        Assert.Equal(one, part.Teardown);
    }

    [Fact]
    public async Task Undo_OfASplitThatMadeItsFamily_LeadsTheEmptyOneBack()
    {
        await PublishedAsync("Tor", "QX4R");
        var form = new SplitForm { Into = "QX6", Texts = ["QX4R"] };
        Bench.Done(await Splits.UndoAsync(Bench.Done(await Splits.RunAsync("qx4r", form, Bench.Reviewer)), Bench.Reviewer));
        Assert.Equal("qx4r", Assert.IsType<FamilyQuery.Answer.Moved>(await Database.Get<FamilyQuery>().RunAsync("qx6", false)).Slug);

        Assert.Contains("undo that merge first", Assert.IsType<ChangeOutcome<FamilySplitId>.Refused>(await Splits.RunAsync("qx4r", form, Bench.Reviewer)).Reason, StringComparison.Ordinal);
        var merge = Assert.Single((await Database.Get<FamilyRecordQuery>().RunAsync("qx4r"))!.Merges);
        Bench.Done(await Merges.UndoAsync(merge.Row.Id, Bench.Reviewer));
        Bench.Done(await Splits.RunAsync("qx4r", form, Bench.Reviewer));
    }

    [Fact]
    public async Task Undo_WhereTheFamilyIsUsedByOthers_LeavesIt()
    {
        await PublishedAsync("Tor", "QX4R");
        var split = Bench.Done(await Splits.RunAsync("qx4r", new SplitForm { Into = "QX6", Texts = ["QX4R"] }, Bench.Reviewer));
        var two = await PublishedAsync("Lath", "QX6");
        Bench.Done(await Splits.UndoAsync(split, Bench.Reviewer));
        Assert.Equal(two, Assert.Single(Assert.IsType<FamilyQuery.Answer.Found>(await Database.Get<FamilyQuery>().RunAsync("qx6", false)).Family.Uses).Teardown);
    }

    [Fact]
    public async Task Undo_WhileALaterSplitTookTheSame_IsRefusedNamingIt()
    {
        await PublishedAsync("Tor", "QX4R");
        await PublishedAsync("Lath", "QX5");
        var first = Bench.Done(await Splits.RunAsync("qx4r", new SplitForm { Into = "QX6", Texts = ["QX4R"] }, Bench.Reviewer));
        var merge = Bench.Done(await Merges.RunAsync("qx6", "qx5", null, Bench.Reviewer));
        var second = Bench.Done(await Splits.RunAsync("qx5", new SplitForm { Into = "QX7", Texts = ["QX4R"] }, Bench.Reviewer));

        Assert.Contains("qx7", Assert.IsType<ChangeOutcome<FamilySplitId>.Refused>(await Splits.UndoAsync(first, Bench.Reviewer)).Reason, StringComparison.Ordinal);
        Bench.Done(await Splits.UndoAsync(second, Bench.Reviewer));
        Bench.Done(await Merges.UndoAsync(merge, Bench.Reviewer));
        Bench.Done(await Splits.UndoAsync(first, Bench.Reviewer));
        Assert.Single(Assert.IsType<FamilyQuery.Answer.Found>(await Database.Get<FamilyQuery>().RunAsync("qx4r", false)).Family.Uses);
        Assert.IsType<ChangeOutcome<FamilySplitId>.Refused>(await Splits.UndoAsync(first, Bench.Reviewer));
    }

    [Fact]
    public async Task Split_WhileTheDraftIsPublished_CountsThePartElsewhereEitherWay()
    {
        for (var round = 0; round < 6; round++)
        {
            var teardown = await Bench.TeardownAsync(name: $"Race {round}");
            await Bench.ComponentAsync(await Bench.BoardAsync(teardown.Id), new ComponentForm { PartNumber = $"RC{round}" });
            var split = Splits.RunAsync($"rc{round}", new SplitForm { Into = $"RD{round}", Texts = [$"RC{round}"] }, Bench.Reviewer);
            await Task.WhenAll(split, Bench.PublishAsync(teardown.Slug));
            Bench.Done(await split);
            Assert.Equal(teardown.Slug, Assert.Single(Assert.IsType<FamilyQuery.Answer.Found>(await Database.Get<FamilyQuery>().RunAsync($"rd{round}", false)).Family.Uses).Teardown);
        }
    }

    [Fact]
    public async Task Split_WhileADraftOpens_TakesTheCopyAlongEitherWay()
    {
        for (var round = 0; round < 6; round++)
        {
            var slug = await PublishedAsync($"Race {round}", $"RC{round}");
            var teardown = (await Database.Get<TeardownRecordQuery>().PublishedAsync(slug))!.Id;
            var split = Splits.RunAsync($"rc{round}", new SplitForm { Into = $"RD{round}", Texts = [$"RC{round}"] }, Bench.Reviewer);
            await Task.WhenAll(split, Bench.BoardAsync(teardown, "second"));
            Bench.Done(await split);
            Assert.Equal(2, await Database.ScalarAsync<long>($"select count(*) from family_links l join families f on f.id = l.family_id where f.slug = 'rd{round}'"));
        }
    }

    [Fact]
    public async Task Merge_OfTwoFamiliesIntoEachOtherAtOnce_IsDoneOnce()
    {
        for (var round = 0; round < 4; round++)
        {
            var (one, two) = ($"ra{round}", $"rb{round}");
            await PublishedAsync($"One {round}", one);
            await PublishedAsync($"Two {round}", two);
            var outcomes = await Task.WhenAll(Merges.RunAsync(one, two, null, Bench.Reviewer), Merges.RunAsync(two, one, null, Bench.Reviewer));
            Assert.Single(outcomes.OfType<ChangeOutcome<FamilyMergeId>.Done>());
            Assert.Single(outcomes.OfType<ChangeOutcome<FamilyMergeId>.Refused>());
        }
    }

    [Fact]
    public async Task Remove_OfANameThatAMergedFamilyBrought_TakesItAway()
    {
        await PublishedAsync("Tor", "QX4R");
        await PublishedAsync("Lath", "QX5");
        var changes = Database.Get<FamilyChanges>();
        Bench.Done(await changes.AddAliasAsync("qx4r", "QX4R-B2", FamilyNameKind.OrderingVariant, Bench.Reviewer));
        Bench.Done(await changes.AddMakerAsync("qx4r", "Marnholt", Bench.Reviewer));
        Bench.Done(await Merges.RunAsync("qx4r", "qx5", null, Bench.Reviewer));
        Assert.Contains("joins this family already", Assert.IsType<ChangeOutcome<string>.Refused>(await changes.AddAliasAsync("qx5", "QX4R-TR", FamilyNameKind.OtherNumber, Bench.Reviewer)).Reason, StringComparison.Ordinal);

        Bench.Done(await changes.RemoveAliasAsync("qx5", "qx4r-b2", Bench.Reviewer));
        Bench.Done(await changes.RemoveMakerAsync("qx5", "marnholt", Bench.Reviewer));
        Assert.IsType<ChangeOutcome<string>.NotFound>(await changes.RemoveMakerAsync("qx5", "marnholt", Bench.Reviewer));
        var record = (await Database.Get<FamilyRecordQuery>().RunAsync("qx5"))!;
        Assert.Empty(record.Aliases);
        Assert.Empty(record.Makers);
    }

    [Fact]
    public async Task Contradictions_OfRatings_FollowMergesAndSplits()
    {
        var one = await PublishedAsync("Tor", "QX1", volts: 40);
        await PublishedAsync("Lath", "QX2", volts: 60);
        Assert.Empty(await ContradictionsAsync(one));
        var merge = Bench.Done(await Merges.RunAsync("qx1", "qx2", null, Bench.Reviewer));
        Assert.Equal(["rating_against_family"], await ContradictionsAsync(one));
        Bench.Done(await Splits.RunAsync("qx2", new SplitForm { Into = "QX3", Texts = ["QX1"] }, Bench.Reviewer));
        Assert.Empty(await ContradictionsAsync(one));
        Bench.Done(await Merges.UndoAsync(merge, Bench.Reviewer));
        Assert.Empty(await ContradictionsAsync(one));
    }

    private async Task<IEnumerable<string>> ContradictionsAsync(string slug) => (await Database.Get<TeardownRecordQuery>().PublishedAsync(slug))!.Contradictions.Select(found => found.Code);

    // Where every part, name and mark is, as stored and as counted; a family that leads on and holds nothing says nothing here.
    private Task<string> StateAsync() => Database.ScalarAsync<string>("""
        select concat_ws(E'\n',
            (select string_agg(concat_ws(' ', c.id, c.revision_id, f.slug), ';' order by c.id, c.revision_id) from components c join families f on f.id = c.family_id),
            (select string_agg(concat_ws(' ', l.component_id, l.revision_id, l.linked_family_id, f.slug), ';' order by l.component_id, l.revision_id) from family_links l join families f on f.id = l.family_id),
            (select string_agg(a.match_key || ' ' || f.slug, ';' order by a.match_key) from family_aliases a join families f on f.id = a.family_id),
            (select string_agg(m.code || ' ' || f.slug, ';' order by m.id) from family_top_marks m join families f on f.id = m.family_id),
            (select count(*) from family_moves))
        """);

    private Task<string> LinksAsync() => Database.ScalarAsync<string>(
        "select string_agg(f.slug || ' ' || r.state, ', ' order by r.number) from components c join families f on f.id = c.family_id join revisions r on r.id = c.revision_id");

    private async Task<string> PublishedAsync(string name, string number, double? volts = null)
    {
        var teardown = await Bench.TeardownAsync(name: name);
        var part = await Bench.ComponentAsync(await Bench.BoardAsync(teardown.Id), new ComponentForm { PartNumber = number });
        if (volts is { } value)
            await Bench.RatingAsync(part, RatingKind.RatedVoltage, value);
        await Bench.PublishAsync(teardown.Slug);
        return teardown.Slug;
    }
}
