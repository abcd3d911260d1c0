using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Catalogue.Data;

/// <summary>Lets the migration tool make a context without a server.</summary>
internal sealed class DesignTimeContext : IDesignTimeDbContextFactory<CatalogueContext>
{
    public CatalogueContext CreateDbContext(string[] args)
    {
        var options = new DbContextOptionsBuilder<CatalogueContext>();
        CatalogueDatabase.Configure(options, CatalogueDatabase.OpenDataSource("Host=localhost;Database=catalogue"));
        return new CatalogueContext(options.Options);
    }
}
