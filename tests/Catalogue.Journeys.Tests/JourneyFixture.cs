using Microsoft.Playwright;

namespace Catalogue.Journeys.Tests;

/// <summary>One running site and one browser for all journeys.</summary>
public sealed class JourneyFixture : IAsyncLifetime
{
    private const string Password = "correct horse battery";

    private IPlaywright _playwright = null!;
    private IBrowser _browser = null!;
    private string _signedIn = "";

    /// <summary>The site.</summary>
    public RunningSite Site { get; private set; } = null!;

    /// <inheritdoc />
    public async ValueTask InitializeAsync()
    {
        Site = await RunningSite.StartAsync();
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Environment.GetEnvironmentVariable("CATALOGUE_CHROMIUM") ?? "/usr/bin/chromium",
            Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-first-run"],
        });
        _signedIn = await SignInAsync(Site.FirstSignIn);
    }

    /// <summary>A page of somebody who is not signed in.</summary>
    public async Task<IPage> VisitorAsync(BrowserNewContextOptions? options = null) => await (await _browser.NewContextAsync(At(options))).NewPageAsync();

    /// <summary>A page of the administrator.</summary>
    public async Task<IPage> AdministratorAsync(BrowserNewContextOptions? options = null)
    {
        var with = At(options);
        with.StorageState = _signedIn;
        return await (await _browser.NewContextAsync(with)).NewPageAsync();
    }

    /// <summary>A page of a new colleague who has just used a one-time link.</summary>
    public async Task<IPage> ColleagueAsync(string name, string role)
    {
        var link = (await Site.AdminAsync("user", name, "--role", role))[^1].Trim();
        var with = At(null);
        with.StorageState = await SignInAsync(Site.Address + link);
        return await (await _browser.NewContextAsync(with)).NewPageAsync();
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        await _browser.DisposeAsync();
        _playwright.Dispose();
        await Site.DisposeAsync();
    }

    private async Task<string> SignInAsync(string link)
    {
        var page = await VisitorAsync();
        await page.GotoAsync(link);
        await page.GetByLabel("Password").FillAsync(Password);
        await page.GetByLabel("The same again").FillAsync(Password);
        await page.GetByRole(AriaRole.Button).ClickAsync();
        await page.WaitForURLAsync("**/lab");
        var state = await page.Context.StorageStateAsync();
        await page.Context.CloseAsync();
        return state;
    }

    private BrowserNewContextOptions At(BrowserNewContextOptions? options)
    {
        options ??= new BrowserNewContextOptions();
        options.BaseURL = Site.Address;
        options.ViewportSize ??= new ViewportSize { Width = 1440, Height = 1000 };
        return options;
    }
}
