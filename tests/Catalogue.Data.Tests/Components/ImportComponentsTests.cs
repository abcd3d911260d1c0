using System.Text;
using Catalogue.Data.Components;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Quantities;
using Catalogue.Testing;

namespace Catalogue.Data.Tests.Components;

public sealed class ImportComponentsTests : DatabaseTests
{
    private const string List = """
        Reference,Value,Package,Qty,Manufacturer,MPN
        "C1, C2",220u,radial,2,Ondrel,OND-LH-450-221
        F1,,blade,1,,
        U1,MWK-721,SOIC-16,1,Mawick,MWK-721-TR
        U2,MWK-721,SOIC-16,1,Mawick,mwk‑721
        J1,,,1,any,"Pin header 1x5, 2.54 mm pitch"
        """;

    [Fact]
    public async Task Run_EachRow_BecomesAComponentThatKeepsItsCells()
    {
        var (teardown, board) = await OpenAsync();

        var report = await ImportAsync(board, List);

        Assert.Equal((5, 5), (report.Rows, report.Imported));
        var components = (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Components;
        Assert.Equal(["C1, C2", "F1", "U1", "U2", "J1"], components.Select(row => row.Designators));
        Assert.Equal(["C1", "C2"], components[0].DesignatorList);
        Assert.Equal([("Reference", "C1, C2"), ("Value", "220u"), ("Package", "radial"), ("Qty", "2"), ("Manufacturer", "Ondrel"), ("MPN", "OND-LH-450-221")], components[0].ImportedRow.Select(cell => (cell.Header, cell.Text)));
        Assert.Equal(FunctionClass.Fuse, components[1].FunctionClass);
    }

    [Fact]
    public async Task Run_TheSameNumberInTwoSpellings_IsOneFamilyAndADescriptionIsNone()
    {
        var (teardown, board) = await OpenAsync();

        var report = await ImportAsync(board, List);

        var record = (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!;
        Assert.Equal(record.Components[2].FamilyId, record.Components[3].FamilyId);
        Assert.Equal("MWK-721", record.Families[record.Components[2].FamilyId!.Value].Name);
        Assert.Null(record.Components[4].FamilyId);
        Assert.Equal(3, report.Resolved);
        Assert.Contains(report.Warnings, warning => warning.Contains("Pin header", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Run_ADryRun_SaysTheSameAndChangesNothing()
    {
        var (teardown, board) = await OpenAsync();

        var dry = Bench.Done(await Database.Get<ImportComponents>().RunAsync(board, Encoding.UTF8.GetBytes(List), "list.csv", dryRun: true, Bench.Reviewer));

        Assert.Equal((5, 5, 3), (dry.Rows, dry.Imported, dry.Resolved));
        Assert.Empty((await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Components);
        Assert.Equal(0, await Database.ScalarAsync<long>("select count(*) from families"));
    }

    [Fact]
    public async Task Run_OnABoardThatLeftTheDraft_IsNotFound_InTheDryRunToo()
    {
        var (teardown, board) = await OpenAsync();
        await Bench.PublishAsync(teardown.Slug);
        Bench.Done(await Database.Get<BoardChanges>().RemoveAsync(board, null, Bench.Reviewer));

        foreach (var dryRun in new[] { true, false })
        {
            var outcome = await Database.Get<ImportComponents>().RunAsync(board, Encoding.UTF8.GetBytes(List), "list.csv", dryRun, Bench.Reviewer);
            Assert.IsType<ChangeOutcome<ImportComponents.Report>.NotFound>(outcome);
        }
    }

    [Fact]
    public async Task Run_TheSameListAgain_ChangesNothingAndACorrectedOneUpdates()
    {
        var (teardown, board) = await OpenAsync();
        await ImportAsync(board, List);
        var first = (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!;

        var again = await ImportAsync(board, List);
        Assert.Equal((5, 5, 0, 0, 5), (again.Rows, again.Imported, again.Count(PlannedRowAction.Add), again.Count(PlannedRowAction.Update), again.Count(PlannedRowAction.Same)));
        var second = (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!;
        Assert.Equal(first.Components.Select(row => (row.Id, row.Version)), second.Components.Select(row => (row.Id, row.Version)));

        var corrected = await ImportAsync(board, List.Replace("SOIC-16,1,Mawick,MWK-721-TR", "SOIC-16,1,Mawick,MWK-722-TR", StringComparison.Ordinal));
        Assert.Equal((0, 1, 4), (corrected.Count(PlannedRowAction.Add), corrected.Count(PlannedRowAction.Update), corrected.Count(PlannedRowAction.Same)));
        var third = (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!;
        Assert.Equal(["MWK-722", "MWK-721"], third.Components.Where(row => row.Designators is "U1" or "U2").Select(row => third.Families[row.FamilyId!.Value].Name));
        Assert.Equal(first.Components.Select(row => row.Id), third.Components.Select(row => row.Id));
    }

    [Fact]
    public async Task Run_WhatIsWrittenInBulk_IsWhatTheMapperReads()
    {
        var (teardown, board) = await OpenAsync();

        await ImportAsync(board, "Ref;Qty;Value;Package;Maker;MPN;Assembly\n\"C1, C2\";2;47uF/63V 20%;radial;Ondrel;OND-LH-450;\nR9;;0R005 1% 2W;2512;;;DNP\n");

        var record = (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!;
        var (capacitor, shunt) = (record.Components[0], record.Components[1]);
        Assert.Equal(("C1, C2", 2, "47uF/63V 20%", "Ondrel", FunctionClass.Capacitor, true, Evidence.Inferred), (capacitor.Designators, capacitor.Quantity, capacitor.Value, capacitor.MakerAsRead, capacitor.FunctionClass, capacitor.IsFitted, capacitor.FamilyEvidence));
        Assert.Equal((false, 1, 1, 1), (shunt.IsFitted, shunt.Position, shunt.ParallelCount, shunt.SeriesCount));
        Assert.Contains(capacitor.ImportedRow, cell => cell is { Header: "Value", Text: "47uF/63V 20%", Meaning: ColumnMeaning.Value });
        Assert.Equal(
            [(RatingKind.Capacitance, 47e-6), (RatingKind.RatedVoltage, 63), (RatingKind.Resistance, 0.005), (RatingKind.RatedPower, 2)],
            record.Ratings.OrderBy(rating => rating.ComponentId == shunt.Id).ThenBy(rating => rating.Nominal).Select(rating => (rating.Kind, rating.Nominal)));
        var voltage = record.Ratings.Single(rating => rating.Kind is RatingKind.RatedVoltage);
        Assert.Equal((Evidence.Inferred, "component list list.csv"), (voltage.Evidence, voltage.Source));
        // A figure rests on what was imported, in the same transaction.
        Assert.Contains(record.Figures, figure => figure.ComponentId == capacitor.Id);
    }

    [Fact]
    public async Task Run_OnAPublishedTeardown_OpensADraftOnlyWhereSomethingChanges()
    {
        var (teardown, board) = await OpenAsync();
        await ImportAsync(board, List);
        await Bench.PublishAsync(teardown.Slug);

        await ImportAsync(board, List);
        Assert.Equal(0, await Database.ScalarAsync<long>("select count(*) from revisions where state = 'draft'"));

        // What is said of the columns is kept all the same, without a draft.
        await ImportAsync(board, List, new() { ["Qty"] = ColumnMeaning.Quantity });
        Assert.Equal((0, 1), (await Database.ScalarAsync<long>("select count(*) from revisions where state = 'draft'"), await Database.ScalarAsync<long>("select count(*) from list_layouts")));

        await ImportAsync(board, List + "\nU9,MWK-900,SOIC-8,1,Mawick,MWK-900-TR\n");
        Assert.Equal(1, await Database.ScalarAsync<long>("select count(*) from revisions where state = 'draft'"));
        Assert.Equal((5, 6), ((await Database.Get<TeardownRecordQuery>().PublishedAsync(teardown.Slug))!.Components.Count, (await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Components.Count));
    }

    [Fact]
    public async Task Run_ColumnsSetByHand_AreRememberedForTheLayoutAndForgottenOnDemand()
    {
        const string First = "Ref;Code;Note\nU1;QV318-TR;controller\n";
        const string Next = "Ref;Code;Note\nU1;QV900;driver\n";
        var columns = new Dictionary<string, ColumnMeaning?> { ["Code"] = ColumnMeaning.PartNumber, ["Note"] = ColumnMeaning.Role };
        var (one, board) = await OpenAsync();
        Assert.Null(Assert.Single((await ImportAsync(board, First)).Plan.Rows).Component.PartNumber);

        // A dry run remembers nothing.
        await ImportAsync(board, First, columns, dryRun: true);
        Assert.Equal(0, await Database.ScalarAsync<long>("select count(*) from list_layouts"));

        await ImportAsync(board, First, columns);
        var part = Assert.Single((await Database.Get<TeardownRecordQuery>().DraftAsync(one.Slug))!.Components);
        Assert.Equal(("QV318-TR", "controller"), (part.PartNumber, part.Role));

        var (two, other) = await OpenAsync();
        var report = await ImportAsync(other, Next);
        Assert.Contains(report.Warnings, warning => warning.Contains("set them for lists with these headers", StringComparison.Ordinal));
        Assert.Equal(("QV900", "driver"), (Assert.Single(report.Plan.Rows).Component.PartNumber, report.Plan.Rows[0].Component.Role));

        await ImportAsync(other, Next, []);
        Assert.Equal(0, await Database.ScalarAsync<long>("select count(*) from list_layouts"));
        Assert.NotNull(two);
    }

    [Fact]
    public async Task Run_OfTwoRowsThatNeedTheSameAddress_GivesEachFamilyItsOwn()
    {
        var (_, board) = await OpenAsync();

        await ImportAsync(board, "Ref,MPN\nU1,QV 318+2\nU2,QV-318-2\nU3,QV/318/2\nU4,QV-318\n");

        Assert.Equal(0, await Database.ScalarAsync<long>("select count(*) - count(distinct slug) from families"));
        Assert.Equal(await Database.ScalarAsync<long>("select count(distinct match_key) from families"), await Database.ScalarAsync<long>("select count(*) from families where marking_keys <> '{}'"));
    }

    [Fact]
    public async Task Run_ALongerListThanATeardownHolds_IsRefusedInTheDryRunToo()
    {
        var (_, board) = await OpenAsync();
        var list = "Reference,Value,Qty\n" + string.Concat(Enumerable.Range(1, BoardComponent.MaxInTeardown + 1).Select(n => FormattableString.Invariant($"R{n},1k,1\n")));

        foreach (var dryRun in new[] { true, false })
        {
            var outcome = await Database.Get<ImportComponents>().RunAsync(board, Encoding.UTF8.GetBytes(list), "list.csv", dryRun, Bench.Reviewer);
            Assert.IsType<ChangeOutcome<ImportComponents.Report>.Refused>(outcome);
        }
    }

    [Fact]
    public async Task Run_TenBoardsAtOnceWithTheSameNewFamilies_OpensEachFamilyOnce()
    {
        var boards = new List<Domain.Teardowns.BoardId>();
        for (var i = 0; i < 10; i++)
            boards.Add((await OpenAsync()).Board);

        await Task.WhenAll(boards.Select(board => ImportAsync(board, List)));

        Assert.Equal(2, await Database.ScalarAsync<long>("select count(*) from families"));
        Assert.Equal(20, await Database.ScalarAsync<long>("select count(*) from components c join families f on f.id = c.family_id where f.match_key = 'MWK-721'"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("just a sentence without any table\nand another one")]
    [InlineData("Reference,Value,Qty")]
    public async Task Run_WithoutHeaderOrRows_IsRefusedAndLeavesNothing(string list)
    {
        var (teardown, board) = await OpenAsync();

        var outcome = await Database.Get<ImportComponents>().RunAsync(board, Encoding.UTF8.GetBytes(list), "list.csv", dryRun: false, Bench.Reviewer);

        Assert.IsType<ChangeOutcome<ImportComponents.Report>.Refused>(outcome);
        Assert.Empty((await Database.Get<TeardownRecordQuery>().DraftAsync(teardown.Slug))!.Components);
    }

    private async Task<(CreateTeardown.Created Teardown, Domain.Teardowns.BoardId Board)> OpenAsync()
    {
        var teardown = await Bench.TeardownAsync();
        return (teardown, await Bench.BoardAsync(teardown.Id));
    }

    private async Task<ImportComponents.Report> ImportAsync(Domain.Teardowns.BoardId board, string list, Dictionary<string, ColumnMeaning?>? columns = null, bool dryRun = false) =>
        Bench.Done(await Database.Get<ImportComponents>().RunAsync(board, Encoding.UTF8.GetBytes(list), "list.csv", dryRun, Bench.Reviewer, new ComponentListOptions(Columns: columns)));
}
