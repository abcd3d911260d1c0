using Catalogue.Data.BenchLogs;
using Catalogue.Data.Callouts;
using Catalogue.Data.Findings;
using Catalogue.Data.Isolation;
using Catalogue.Data.Photos;
using Catalogue.Data.Products;
using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using Catalogue.Testing;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Catalogue.Data.Tests.Publishing;

/// <summary>What was published never changes, whoever tries, and however.</summary>
public sealed class PublishedRevisionTests : DatabaseTests
{
    private const string Restrict = "23001";

    [Fact]
    public async Task PublishedContent_PlainSqlOnEachTable_IsRefused()
    {
        await PublishOneOfEverythingAsync();
        var revision = await Database.ScalarAsync<Guid>("select id from revisions where state = 'published'");

        foreach (var table in await ContentTablesAsync())
        {
            Assert.True(await Database.ScalarAsync<long>($"select count(*) from {table} where revision_id = '{revision}'") > 0, $"Nothing was published in {table}, so nothing is proven of it.");
            await RefusedAsync($"update {table} set id = id where revision_id = '{revision}'");
            await RefusedAsync($"delete from {table} where revision_id = '{revision}'");
            await RefusedAsync($"insert into {table} select * from {table} where revision_id = '{revision}' limit 1");
            await RefusedAsync($"truncate {table} cascade");
        }
    }

    [Fact]
    public async Task PublishedRevision_ItsOwnRow_ChangesOnlyItsStateAndOnlyForward()
    {
        await PublishOneOfEverythingAsync();

        await RefusedAsync("update revisions set title = 'Another' where state = 'published'");
        await RefusedAsync("update revisions set state = 'draft' where state = 'published'");
        await RefusedAsync("delete from revisions where state = 'published'");
        await RefusedAsync("delete from teardowns");
        await RefusedAsync("update publications set note = 'nothing happened'");
        await RefusedAsync("delete from publications");
        await RefusedAsync("update audit_entries set who = 'somebody else'");
        Assert.Equal(1, await Database.SqlAsync("update revisions set state = 'withdrawn' where state = 'published'"));
        await RefusedAsync("update revisions set state = 'published' where state = 'withdrawn'");
    }

    [Fact]
    public async Task DraftContent_MovedIntoAPublishedRevision_IsRefused()
    {
        var first = await PublishOneOfEverythingAsync();
        await Bench.BoardAsync(first.Id, "Another board");

        await RefusedAsync(
            "update boards set revision_id = (select id from revisions where state = 'published'), id = gen_random_uuid() where revision_id = (select id from revisions where state = 'draft') and name = 'Another board'");
    }

    [Fact]
    public async Task Draft_OpenedByTheFirstWrite_KeepsEveryIdAndEveryValue()
    {
        var teardown = await PublishOneOfEverythingAsync();
        var query = Database.Get<TeardownRecordQuery>();
        var published = (await query.PublishedAsync(teardown.Slug))!;

        await Bench.BoardAsync(teardown.Id, "Display board");

        var draft = (await query.DraftAsync(teardown.Slug))!;
        Assert.Equal(2, draft.Revision.Number);
        Assert.Equal([.. published.Boards.Select(row => row.Id), draft.Boards[^1].Id], draft.Boards.Select(row => row.Id));
        Assert.Equal(published.Components.Select(row => (row.Id, row.Role, row.MarkingAsRead)), draft.Components.Select(row => (row.Id, row.Role, row.MarkingAsRead)));
        Assert.Equal(published.Callouts.Select(row => (row.Id, row.Number, row.X)), draft.Callouts.Select(row => (row.Id, row.Number, row.X)));
        Assert.Equal(published.Ratings.Select(row => (row.Id, row.Nominal)), draft.Ratings.Select(row => (row.Id, row.Nominal)));
        Assert.Equal(published.RailQuantities.Select(row => (row.Id, row.Nominal)), draft.RailQuantities.Select(row => (row.Id, row.Nominal)));
        Assert.Equal(published.IsolationPaths.Select(row => (row.Id, row.From, row.BoardId)), draft.IsolationPaths.Select(row => (row.Id, row.From, row.BoardId)));
        Assert.Equal(published.DischargeReadings.Select(row => (row.Id, row.NominalV, row.TakenAt, row.RailId)), draft.DischargeReadings.Select(row => (row.Id, row.NominalV, row.TakenAt, row.RailId)));
        Assert.Equal(published.Photos.Select(row => row.Id), draft.Photos.Select(row => row.Id));
        Assert.Equal(published.Figures.Select(row => (row.Rule, row.Nominal)), draft.Figures.Select(row => (row.Rule, row.Nominal)));
        var still = (await query.PublishedAsync(teardown.Slug))!;
        Assert.Equal(1, still.Revision.Number);
        Assert.DoesNotContain(still.Boards, row => row.Name == "Display board");
    }

    [Fact]
    public async Task Publish_ASecondRevision_SupersedesTheFirstAndNeedsANote()
    {
        var teardown = await PublishOneOfEverythingAsync();
        await Bench.BoardAsync(teardown.Id, "Display board");

        var silent = await Database.Get<Catalogue.Data.Publishing.PublishTeardown>().RunAsync(teardown.Slug, "  ", Bench.Reviewer);
        var second = await Bench.PublishAsync(teardown.Slug, "The display board was missed.");

        Assert.IsType<ChangeOutcome<Catalogue.Data.Publishing.PublishTeardown.Published>.Refused>(silent);
        Assert.Equal(2, second.Revision);
        var record = (await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!;
        Assert.Equal([(2, RevisionState.Published), (1, RevisionState.Superseded)], record.Publications.Select(row => (row.RevisionNumber, row.State)));
        Assert.Equal(1, (await Database.Get<TeardownRecordQuery>().RevisionAsync(teardown.Slug, 1))!.Revision.Number);
        Assert.Equal(record.Revision.Id.Value, await Database.ScalarAsync<Guid>("select distinct revision_id from current_figures"));
    }

    [Fact]
    public async Task Publish_WithoutADraft_IsRefusedAndChangesNothing()
    {
        var teardown = await PublishOneOfEverythingAsync();

        var again = await Database.Get<Catalogue.Data.Publishing.PublishTeardown>().RunAsync(teardown.Slug, "Again.", Bench.Reviewer);

        Assert.IsType<ChangeOutcome<Catalogue.Data.Publishing.PublishTeardown.Published>.Refused>(again);
        Assert.Equal(1, await Database.ScalarAsync<long>("select count(*) from publications"));
    }

    [Fact]
    public async Task Publish_WithApprovalRequired_TakesASecondPerson()
    {
        var teardown = await Bench.TeardownAsync();
        var publish = Database.Get<Catalogue.Data.Publishing.PublishTeardown>();
        Bench.Done(await Database.Get<Catalogue.Data.Publishing.ChangeSettings>().RunAsync(new() { LabName = "Tallow Lane Bench", RequiresApproval = true }, null, Bench.Reviewer));

        var notSubmitted = await publish.RunAsync(teardown.Slug, null, new Editor("M. Adair"));
        Bench.Done(await Database.Get<TeardownChanges>().SubmitAsync(teardown.Id, Bench.Reviewer));
        var byItsSender = await publish.RunAsync(teardown.Slug, null, Bench.Reviewer);
        var byScript = await publish.RunAsync(teardown.Slug, null, new Editor("nightly script", IsPerson: false));
        var bySecond = await publish.RunAsync(teardown.Slug, null, new Editor("M. Adair"));

        Assert.IsType<ChangeOutcome<Catalogue.Data.Publishing.PublishTeardown.Published>.Refused>(notSubmitted);
        Assert.IsType<ChangeOutcome<Catalogue.Data.Publishing.PublishTeardown.Published>.Refused>(byItsSender);
        Assert.IsType<ChangeOutcome<Catalogue.Data.Publishing.PublishTeardown.Published>.Refused>(byScript);
        Assert.IsType<ChangeOutcome<Catalogue.Data.Publishing.PublishTeardown.Published>.Done>(bySecond);
    }

    [Fact]
    public async Task SiteVersion_GrowsWithPublicationsAndSettings_NotWithDrafts()
    {
        var settings = Database.Get<Catalogue.Data.Publishing.SettingsQuery>();
        var before = await settings.SiteVersionAsync();

        var teardown = await Bench.TeardownAsync();
        await Bench.BoardAsync(teardown.Id);
        Assert.Equal(before, await settings.SiteVersionAsync());

        await Bench.PublishAsync(teardown.Slug);
        var published = await settings.SiteVersionAsync();
        Assert.True(published > before);

        Bench.Done(await Database.Get<Catalogue.Data.Publishing.ChangeSettings>().RunAsync(new() { LabName = "Another name" }, null, Bench.Reviewer));
        Assert.True(await settings.SiteVersionAsync() > published);
    }

    private async Task<CreateTeardown.Created> PublishOneOfEverythingAsync()
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        var rail = await Bench.PackAsync(teardown.Id, 22, 600, 0.893);
        var fuse = await Bench.FuseAsync(board, rail, 35);
        Bench.Done(await Database.Get<ClaimChanges>().AddAsync(teardown.Id, new() { Subject = "energy", AsPrinted = "512 Wh", Value = 512, Unit = Unit.WattHour }, Bench.Reviewer));
        Bench.Done(await Database.Get<PortChanges>().AddAsync(teardown.Id, new() { Name = "AC outlet", Kind = "AC outlet" }, Bench.Reviewer));
        Bench.Done(await Database.Get<BenchTestChanges>().AddAsync(teardown.Id, new() { Subject = "energy", Value = 396, Unit = Unit.WattHour }, Bench.Reviewer));
        Bench.Done(await Database.Get<StepChanges>().AddAsync(teardown.Id, new() { Heading = "Lid off" }, Bench.Reviewer));
        Bench.Done(await Database.Get<FindingChanges>().AddAsync(teardown.Id, new() { Heading = "Loaded past the guideline", Markdown = "As marked.", ComponentIds = [fuse.Value] }, Bench.Reviewer));
        Bench.Done(await Database.Get<MeasuredPathChanges>().AddAsync(teardown.Id, new() { From = "primary pads of U2", To = "secondary pads of U2", BoardId = board.Value }, Bench.Reviewer));
        Bench.Done(await Database.Get<DischargeReadingChanges>().AddAsync(teardown.Id, new() { Place = "C2", RailId = rail.Value, NominalV = 0.4, TakenAt = new DateTimeOffset(2031, 5, 6, 7, 0, 0, TimeSpan.Zero) }, Bench.Reviewer));
        var picture = new PhotoChanges.TakenIn(new string('a', 64), "jpeg", 1000, 2000, 1500, "board a.jpg");
        var photo = Bench.Done(await Database.Get<PhotoChanges>().AddAsync(teardown.Id, picture, new() { BoardId = board.Value }, Bench.Reviewer));
        Bench.Done(await Database.Get<CalloutChanges>().AddAsync(photo, new() { X = 0.2, Y = 0.3, ComponentId = fuse.Value }, Bench.Reviewer));
        await Bench.PublishAsync(teardown.Slug, null);
        return teardown;
    }

    private async Task<List<string>> ContentTablesAsync()
    {
        await using var context = await Database.ContextAsync();
        return [.. context.Model.GetEntityTypes().Where(type => typeof(IRevisionContent).IsAssignableFrom(type.ClrType)).Select(type => type.GetTableName()!).Order(StringComparer.Ordinal)];
    }

    private async Task RefusedAsync(string sql)
    {
        var refusal = await Assert.ThrowsAsync<PostgresException>(() => Database.SqlAsync(sql));
        Assert.True(refusal.SqlState == Restrict, $"{sql}: {refusal.SqlState} {refusal.MessageText}");
    }
}
