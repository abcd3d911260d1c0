using Catalogue.Testing;

namespace Catalogue.Data.Tests;

/// <summary>Each test class gets a database of its own.</summary>
public abstract class DatabaseTests : IAsyncLifetime
{
    /// <summary>The database.</summary>
    protected CatalogueDatabaseFixture Database { get; private set; } = null!;

    /// <summary>A reviewer who records.</summary>
    protected Bench Bench { get; private set; } = null!;

    /// <inheritdoc />
    public async ValueTask InitializeAsync()
    {
        Database = await CatalogueDatabaseFixture.CreateAsync();
        Bench = new Bench(Database);
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        await Database.DisposeAsync();
    }
}
