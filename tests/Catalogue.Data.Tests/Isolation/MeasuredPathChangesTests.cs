using Catalogue.Data.Isolation;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Teardowns;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Isolation;

public sealed class MeasuredPathChangesTests : DatabaseTests
{
    private MeasuredPathChanges Changes => Database.Get<MeasuredPathChanges>();

    [Fact]
    public async Task Add_Everything_IsReadBackAsItWasGiven()
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        await AddAsync(teardown.Id, Form(form => form.BoardId = board.Value));
        await AddAsync(teardown.Id, new MeasuredPathForm { From = "earth", To = "output" });

        var paths = (await RecordAsync(teardown.Slug)).IsolationPaths;

        Assert.Equal([0, 1], paths.Select(row => row.Position));
        Assert.Equal((board, "primary pads of U2", "secondary pads of U2", PathKind.Creepage), (paths[0].BoardId!.Value, paths[0].From, paths[0].To, paths[0].PathKind));
        Assert.Equal((7.0, 7.2, 7.4, 1.5), (paths[0].LowMm, paths[0].NominalMm, paths[0].HighMm, paths[0].NarrowestGrooveMm));
        Assert.Equal((240.0, InsulationKind.Reinforced, 2, 2), (paths[0].WorkingVoltageV, paths[0].Insulation, paths[0].OvervoltageCategory, paths[0].PollutionDegree));
        Assert.Equal((MaterialGroup.ThreeA, 2000.0, 0.0, false), (paths[0].MaterialGroup, paths[0].AltitudeM, paths[0].FrequencyHz, paths[0].IsCoated));
        Assert.Equal(IsolationOutcome.ClearlyAbove, paths[0].ToNote().Outcome);
        Assert.Equal(IsolationOutcome.NotAssessable, paths[1].ToNote().Outcome);
        Assert.Null(paths[1].NominalMm);
    }

    public static TheoryData<string, Action<MeasuredPathForm>> OutOfSense => new()
    {
        { "from", form => form.From = " " },
        { "to", form => form.To = null },
        { "from", form => form.From = "a\0b" },
        { "method", form => form.Method = "cali\ud83d" },
        { "remark", form => form.Remark = "\u0007" },
        { "from", form => form.From = new string('a', 201) },
        { "nominal_mm", form => (form.LowMm, form.NominalMm, form.HighMm) = (null, 0, null) },
        { "nominal_mm", form => (form.LowMm, form.NominalMm, form.HighMm) = (null, -7, null) },
        { "nominal_mm", form => form.NominalMm = double.NaN },
        { "nominal_mm", form => form.NominalMm = double.PositiveInfinity },
        { "nominal_mm", form => form.NominalMm = 8 },
        { "nominal_mm", form => form.NominalMm = null },
        { "nominal_mm", form => (form.LowMm, form.NominalMm, form.HighMm) = (null, 1e300, null) },
        { "low_mm", form => form.LowMm = 0 },
        { "high_mm", form => form.HighMm = 1000.5 },
        { "narrowest_groove_mm", form => form.NarrowestGrooveMm = 0 },
        { "narrowest_groove_mm", form => form.NarrowestGrooveMm = double.NaN },
        { "working_voltage_v", form => form.WorkingVoltageV = -1 },
        { "working_voltage_v", form => form.WorkingVoltageV = 1e300 },
        { "overvoltage_category", form => form.OvervoltageCategory = 0 },
        { "overvoltage_category", form => form.OvervoltageCategory = 5 },
        { "pollution_degree", form => form.PollutionDegree = 4 },
        { "altitude_m", form => form.AltitudeM = -501 },
        { "altitude_m", form => form.AltitudeM = double.NaN },
        { "frequency_hz", form => form.FrequencyHz = -50 },
        { "frequency_hz", form => form.FrequencyHz = double.PositiveInfinity },
    };

    [Theory]
    [MemberData(nameof(OutOfSense), DisableDiscoveryEnumeration = true)]
    public async Task Add_OutOfSense_IsRefusedByFieldAndLeavesNothing(string field, Action<MeasuredPathForm> change)
    {
        var teardown = await Bench.TeardownAsync();

        var outcome = await Changes.AddAsync(teardown.Id, Form(change), Bench.Reviewer);

        Assert.Equal(field, Assert.IsType<ChangeOutcome<MeasuredPathId>.Refused>(outcome).Field);
        Assert.Empty((await RecordAsync(teardown.Slug)).IsolationPaths);
    }

    [Fact]
    public async Task Add_OnABoardOfAnotherTeardown_IsRefused()
    {
        var teardown = await Bench.TeardownAsync();
        var other = await Bench.BoardAsync((await Bench.TeardownAsync("Sorvane", "Drover 1000")).Id);

        Assert.IsType<ChangeOutcome<MeasuredPathId>.Refused>(await Changes.AddAsync(teardown.Id, Form(form => form.BoardId = other.Value), Bench.Reviewer));
    }

    [Fact]
    public async Task Amend_ByTwoWhoSawTheSame_KeepsTheFirstAndTellsTheSecond()
    {
        var teardown = await Bench.TeardownAsync();
        var path = await AddAsync(teardown.Id, Form());
        var seen = (await RecordAsync(teardown.Slug)).IsolationPaths[0].Version;

        Bench.Done(await AmendAsync(path, seen, form => form.Method = "section"));
        Assert.IsType<ChangeOutcome<MeasuredPathId>.Stale>(await AmendAsync(path, seen, form => form.Method = "photo"));
        Assert.IsType<ChangeOutcome<MeasuredPathId>.Stale>(await Changes.RemoveAsync(path, seen, Bench.Reviewer));

        Assert.Equal("section", (await RecordAsync(teardown.Slug)).IsolationPaths[0].Method);
    }

    [Fact]
    public async Task Amend_OfTheDistanceAlone_CarriesEndsThatWereNotGiven()
    {
        var teardown = await Bench.TeardownAsync();
        var path = await AddAsync(teardown.Id, Form(form => (form.LowMm, form.HighMm) = (null, null)));

        Bench.Done(await AmendAsync(path, null, form => form.NominalMm = 4));

        var row = (await RecordAsync(teardown.Slug)).IsolationPaths[0];
        Assert.Equal((4.0, 4.0, 4.0), (row.LowMm, row.NominalMm, row.HighMm));
    }

    [Fact]
    public async Task Amend_AfterPublication_OpensADraftAndLeavesThePublishedAsItWas()
    {
        var teardown = await Bench.TeardownAsync();
        var path = await AddAsync(teardown.Id, Form());
        await Bench.PublishAsync(teardown.Slug);
        var published = (await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.IsolationPaths[0];

        Bench.Done(await AmendAsync(path, published.Version, form => form.Remark = "measured again"));

        Assert.Equal("measured again", (await RecordAsync(teardown.Slug)).IsolationPaths[0].Remark);
        Assert.Null((await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.IsolationPaths[0].Remark);
    }

    [Fact]
    public async Task Remove_TheBoard_KeepsThePathWithoutIt()
    {
        var teardown = await Bench.TeardownAsync();
        var board = await Bench.BoardAsync(teardown.Id);
        await AddAsync(teardown.Id, Form(form => form.BoardId = board.Value));

        Bench.Done(await Database.Get<BoardChanges>().RemoveAsync(board, null, Bench.Reviewer));

        Assert.Null(Assert.Single((await RecordAsync(teardown.Slug)).IsolationPaths).BoardId);
    }

    private async Task<MeasuredPathId> AddAsync(TeardownId teardown, MeasuredPathForm form) => Bench.Done(await Changes.AddAsync(teardown, form, Bench.Reviewer));

    private Task<ChangeOutcome<MeasuredPathId>> AmendAsync(MeasuredPathId path, uint? version, Action<MeasuredPathForm> change) => Changes.AmendAsync(
        path,
        version,
        form =>
        {
            change(form);
            return new ChangeOutcome<MeasuredPathForm>.Done(form);
        },
        Bench.Reviewer);

    private async Task<TeardownRecord> RecordAsync(string slug) => (await Database.Get<TeardownRecordQuery>().LatestAsync(slug))!;

    private static MeasuredPathForm Form(Action<MeasuredPathForm>? change = null)
    {
        var form = new MeasuredPathForm
        {
            From = "primary pads of U2",
            To = "secondary pads of U2",
            PathKind = PathKind.Creepage,
            LowMm = 7.0,
            NominalMm = 7.2,
            HighMm = 7.4,
            Method = "caliper",
            NarrowestGrooveMm = 1.5,
            WorkingVoltageV = 240,
            Insulation = InsulationKind.Reinforced,
            OvervoltageCategory = 2,
            PollutionDegree = 2,
            MaterialGroup = MaterialGroup.ThreeA,
            AltitudeM = 2000,
            FrequencyHz = 0,
            IsCoated = false,
        };
        change?.Invoke(form);
        return form;
    }
}
