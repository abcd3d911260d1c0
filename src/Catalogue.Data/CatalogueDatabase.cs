using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;

namespace Catalogue.Data;

/// <summary>How this program talks to PostgreSQL: one data source, one set of context options.</summary>
public static class CatalogueDatabase
{
    /// <summary>The oldest PostgreSQL that is supported.</summary>
    public static readonly Version MinServerVersion = new(15, 0);

    /// <summary>The one data source of a process. GSS is off: nothing here uses it, and looking for its library costs a warning.</summary>
    public static NpgsqlDataSource OpenDataSource(string connectionString)
    {
        var settings = new NpgsqlConnectionStringBuilder(connectionString)
        {
            GssEncryptionMode = GssEncryptionMode.Disable,
            ApplicationName = "catalogue",
        };
        return new NpgsqlDataSourceBuilder(settings.ConnectionString).Build();
    }

    /// <summary>Sets the options of a context over a data source.</summary>
    public static void Configure(DbContextOptionsBuilder options, NpgsqlDataSource source)
    {
        ArgumentNullException.ThrowIfNull(options);
        options.UseNpgsql(source, postgres => postgres.SetPostgresVersion(MinServerVersion).UseQuerySplittingBehavior(QuerySplittingBehavior.SplitQuery))
            .UseSnakeCaseNamingConvention()
            .ConfigureWarnings(warnings => warnings.Throw(RelationalEventId.MultipleCollectionIncludeWarning));
    }

    /// <summary>Brings the schema up to this version; several nodes may do it at once.</summary>
    public static async Task MigrateAsync(IDbContextFactory<CatalogueContext> contexts, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(contexts);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.Database.MigrateAsync(cancellationToken);
    }
}
