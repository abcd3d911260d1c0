using System.Net.Http.Headers;
using Catalogue.Data;
using Catalogue.Data.Accounts;
using Catalogue.Testing;
using Catalogue.Web.Accounts;
using Catalogue.Web.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Catalogue.Web.Tests;

/// <summary>The whole site on a free port, over a database of its own, with tokens for both scopes. Image work runs in its real process.</summary>
public sealed class SiteFixture : IAsyncLifetime
{
    private CatalogueDatabaseFixture _database = null!;
    private WebApplication _site = null!;
    private string _folder = null!;

    /// <summary>Nobody.</summary>
    public HttpClient Anonymous { get; private set; } = null!;

    /// <summary>A script that may write.</summary>
    public HttpClient Writer { get; private set; } = null!;

    /// <summary>A script that may read.</summary>
    public HttpClient Reader { get; private set; } = null!;

    /// <summary>The database.</summary>
    public CatalogueDatabaseFixture Database => _database;

    /// <summary>Where the site keeps its files.</summary>
    public string Folder => _folder;

    /// <summary>The site's own services.</summary>
    public IServiceProvider Services => _site.Services;

    /// <inheritdoc />
    public async ValueTask InitializeAsync()
    {
        _database = await CatalogueDatabaseFixture.CreateAsync();
        _folder = Directory.CreateTempSubdirectory("catalogue-site-").FullName;
        _site = CatalogueHost.Build(new ServeOptions { DataFolder = _folder, Port = 0, Demo = DemoChoice.Never }, CatalogueDatabase.OpenDataSource(_database.ConnectionString));
        await _site.Services.GetRequiredService<OpenAccount>().PrepareRolesAsync();
        await _site.StartAsync();
        Anonymous = Client(null);
        Writer = Client(await _site.Services.GetRequiredService<Tokens>().CreateAsync("writer", TokenScope.Write));
        Reader = Client(await _site.Services.GetRequiredService<Tokens>().CreateAsync("reader", TokenScope.Read));
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        Anonymous.Dispose();
        Writer.Dispose();
        Reader.Dispose();
        await _site.StopAsync();
        await _site.DisposeAsync();
        await _database.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>A client that follows no redirects and keeps its own cookies.</summary>
    public HttpClient Client(string? token)
    {
        var client = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = new Uri(_site.Urls.First()) };
        if (token is not null)
            client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        return client;
    }
}
