using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Tests;

public sealed class MigrationTests : DatabaseTests
{
    [Fact]
    public async Task Migrations_TheModel_IsWhatTheyMake()
    {
        await using var context = await Database.ContextAsync();

        Assert.False(context.Database.HasPendingModelChanges());
    }

    [Fact]
    public async Task Migrate_FourNodesAtOnce_EachSucceeds()
    {
        var nodes = Enumerable.Range(0, 4).Select(_ => CatalogueDatabase.MigrateAsync(Database.Get<IDbContextFactory<CatalogueContext>>()));

        await Task.WhenAll(nodes);

        Assert.Equal(0, await Database.ScalarAsync<long>("select count(*) from teardowns"));
    }

    [Fact]
    public async Task Guards_EveryTableOfContent_HasOne()
    {
        await using var context = await Database.ContextAsync();
        var tables = context.Model.GetEntityTypes().Where(type => typeof(IRevisionContent).IsAssignableFrom(type.ClrType)).Select(type => type.GetTableName()!).ToList();

        Assert.True(tables.Count >= 13, $"Only {tables.Count} tables of content were found.");
        foreach (var table in tables)
        {
            // 'A' is: fires always, also for a session that calls itself a replica.
            var state = await Database.ScalarAsync<char>($"select tgenabled from pg_trigger where tgrelid = '{table}'::regclass and tgname = 'published_content_never_changes'");
            Assert.Equal('A', state);
        }
    }
}
