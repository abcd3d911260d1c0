using System.Text;
using Catalogue.Data.Components;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
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

    private async Task<ImportComponents.Report> ImportAsync(Domain.Teardowns.BoardId board, string list) =>
        Bench.Done(await Database.Get<ImportComponents>().RunAsync(board, Encoding.UTF8.GetBytes(list), "list.csv", dryRun: false, Bench.Reviewer));
}
