using Catalogue.Data;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components.Lists;
using Catalogue.Testing;
using Catalogue.Web.Verbs;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests.Verbs;

public sealed class ImportListVerbTests : IAsyncLifetime
{
    private readonly string _file = Path.Combine(Directory.CreateTempSubdirectory("catalogue-list-").FullName, "board.csv");
    private CatalogueDatabaseFixture _database = null!;
    private ServiceProvider _services = null!;

    public async ValueTask InitializeAsync()
    {
        _database = await CatalogueDatabaseFixture.CreateAsync();
        var services = new ServiceCollection();
        services.AddSingleton(CatalogueDatabase.OpenDataSource(_database.ConnectionString));
        services.AddCatalogueData();
        _services = services.BuildServiceProvider();
        await File.WriteAllTextAsync(_file, "Ref;Qty;Value\nC1;1;47uF/63V\nR1;1;10k\n");
    }

    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync();
        await _database.DisposeAsync();
        Directory.Delete(Path.GetDirectoryName(_file)!, recursive: true);
    }

    [Fact]
    public async Task Run_AList_ComesIntoTheOnlyBoardAndOnlyOnce()
    {
        var bench = new Bench(_database);
        var teardown = await bench.TeardownAsync();
        Assert.Equal(1, await RunAsync(teardown.Slug, null, dryRun: false));
        await bench.BoardAsync(teardown.Id);

        Assert.Equal(0, await RunAsync(teardown.Slug, null, dryRun: true));
        Assert.Equal(0, await CountAsync(teardown.Slug));
        Assert.Equal(0, await RunAsync(teardown.Slug, null, dryRun: false));
        Assert.Equal(0, await RunAsync(teardown.Slug, null, dryRun: false));
        Assert.Equal(2, await CountAsync(teardown.Slug));
    }

    [Fact]
    public async Task Run_OfSeveralBoards_WantsTheOneThatIsNamed()
    {
        var bench = new Bench(_database);
        var teardown = await bench.TeardownAsync();
        await bench.BoardAsync(teardown.Id, "Main board");
        await bench.BoardAsync(teardown.Id, "USB board");

        Assert.Equal(1, await RunAsync(teardown.Slug, null, dryRun: false));
        Assert.Equal(1, await RunAsync(teardown.Slug, "Fan board", dryRun: false));
        Assert.Equal(1, await RunAsync("no-such-teardown", "usb board", dryRun: false));
        Assert.Equal(0, await RunAsync(teardown.Slug, "usb board", dryRun: false));
        Assert.Equal(2, await CountAsync(teardown.Slug));
    }

    private Task<int> RunAsync(string slug, string? board, bool dryRun) => ImportListVerb.RunAsync(_services, slug, _file, board, dryRun, new ComponentListOptions(), default);

    private async Task<int> CountAsync(string slug) => (await _database.Get<TeardownRecordQuery>().DraftAsync(slug))!.Components.Count;
}
