using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Data;

/// <summary>Lets the migration tool make a context without a server, from the same registration as the program's.</summary>
internal sealed class DesignTimeContext : IDesignTimeDbContextFactory<CatalogueContext>
{
    public CatalogueContext CreateDbContext(string[] args) =>
        new ServiceCollection()
            .AddSingleton(CatalogueDatabase.OpenDataSource("Host=localhost;Database=catalogue"))
            .AddCatalogueData()
            .BuildServiceProvider()
            .GetRequiredService<IDbContextFactory<CatalogueContext>>()
            .CreateDbContext();
}
