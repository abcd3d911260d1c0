using Catalogue.Data.Figures;
using Catalogue.Data.Publishing;
using Catalogue.Data.Queue;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Figures;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Figures;

/// <summary>A change of rules or lines reaches every current figure and every draft, and no published one.</summary>
public sealed class RecomputeEverythingTests : DatabaseTests
{
    [Fact]
    public async Task Lines_ChangedByTheLab_AreRecomputedInTheBackgroundAndPublishedFiguresStay()
    {
        var published = await FuseAsync();
        await Bench.PublishAsync(published);
        var draft = await FuseAsync();
        var before = await HeadroomAsync(published);

        Bench.Done(await Database.Get<ChangeSettings>().RunAsync(new() { LabName = "Tallow Lane Bench", ChangedLines = new Dictionary<string, double> { ["blade_fuse_current"] = 0.5 } }, null, Bench.Reviewer));
        var job = Assert.Single(await Database.Get<JobQueue>().OpenAsync(RecomputeEverything.JobKind));
        Assert.Equal(before.Printed, (await HeadroomAsync(published)).Current);
        var steps = new List<RecomputeEverything.Step>();
        var total = await Database.Get<RecomputeEverything>().RunAsync(
            async (step, cancel) =>
            {
                steps.Add(step);
                await Database.Get<JobQueue>().ReportAsync(job.Id, step.Done, step.Total, cancel);
            },
            TestContext.Current.CancellationToken);

        Assert.Equal([new(1, 2), new(2, 2)], steps);
        Assert.Equal((2, 1), (total.Teardowns, total.Changed));
        var after = await HeadroomAsync(published);
        Assert.Equal(before.Printed, after.Printed);
        Assert.Equal(before.Printed * 0.5 / 0.75, after.Current, 1e-9);
        Assert.Equal(after.Current, (await Database.Get<TeardownRecordQuery>().DraftAsync(draft))!.Figures.Single(figure => figure.Rule == FuseHeadroom.Rule).Nominal!.Value, 1e-9);
        Assert.Equal((2, 2), Assert.Single(await Database.Get<JobQueue>().OpenAsync(RecomputeEverything.JobKind)) is { } open ? (open.PartsDone, open.PartsTotal) : default);
    }

    [Fact]
    public async Task Stamp_OfTheRulesThatStand_IsKeptSoThatNothingIsDoneTwice()
    {
        var everything = Database.Get<RecomputeEverything>();
        Assert.True(await everything.EnqueueIfStaleAsync(TestContext.Current.CancellationToken));
        Assert.True(await everything.EnqueueIfStaleAsync(TestContext.Current.CancellationToken));
        Assert.Single(await Database.Get<JobQueue>().OpenAsync(RecomputeEverything.JobKind, TestContext.Current.CancellationToken));

        await everything.RunAsync(null, TestContext.Current.CancellationToken);

        Assert.False(await everything.EnqueueIfStaleAsync(TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("blade_fuse_current", 1.5)]
    [InlineData("no_such_line", 0.5)]
    public async Task Line_ThatCannotBe_IsRefusedAndNothingChanges(string code, double value)
    {
        var outcome = await Database.Get<ChangeSettings>().RunAsync(new() { LabName = "Other", ChangedLines = new Dictionary<string, double> { [code] = value } }, null, Bench.Reviewer);

        Assert.Equal(code, Assert.IsType<ChangeOutcome<uint>.Refused>(outcome).Field);
        Assert.Empty(await Database.Get<JobQueue>().OpenAsync(RecomputeEverything.JobKind));
    }

    private async Task<string> FuseAsync()
    {
        var teardown = await Bench.TeardownAsync();
        await Bench.FuseAsync(await Bench.BoardAsync(teardown.Id), await Bench.PackAsync(teardown.Id, 22, 600, 0.893), 35);
        return teardown.Slug;
    }

    private async Task<(double Printed, double Current)> HeadroomAsync(string slug)
    {
        var record = (await Database.Get<TeardownRecordQuery>().PublishedAsync(slug))!;
        return (record.Figures.Single(figure => figure.Rule == FuseHeadroom.Rule).Nominal!.Value, record.CurrentFigures.Single(figure => figure.Rule == FuseHeadroom.Rule).Nominal!.Value);
    }
}
