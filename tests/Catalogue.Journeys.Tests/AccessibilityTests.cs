using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Catalogue.Journeys.Tests;

/// <summary>Every kind of page, on paper and in the dark, wide and as narrow as a phone, without a violation of WCAG 2.2 A and AA.</summary>
/// <param name="journey">The site and the browser.</param>
[Collection(JourneyCollection.Name)]
public sealed class AccessibilityTests(JourneyFixture journey)
{
    private static readonly string[] Public =
    [
        "/", "/teardowns", "/teardowns/ferrowick-tor-600", "/families", "/families/kpd-318", "/families/yn40-3r2", "/makers", "/makers/ferrowick", "/ask", "/ask/thinnest-fuse-headroom", "/ask/designs-using-family?family=kpd-318",
        "/search?q=kpd", "/about", "/no-such-page", "/sign-in",
    ];

    private static readonly string[] Signed = ["/lab", "/lab/teardowns/ferrowick-tor-600", "/lab/families", "/lab/families?lacking=true", "/lab/families/kpd-318", "/lab/worklist/unidentified", "/lab/settings"];

    [Theory]
    [InlineData(1440, ColorScheme.Light)]
    [InlineData(1440, ColorScheme.Dark)]
    [InlineData(360, ColorScheme.Light)]
    [InlineData(360, ColorScheme.Dark)]
    public async Task PublicPages_HaveNoViolation_AndDoNotScrollSideways(int width, ColorScheme scheme)
    {
        var page = await journey.VisitorAsync(new() { ViewportSize = new() { Width = width, Height = 900 }, ColorScheme = scheme });
        foreach (var address in Public)
        {
            await page.GotoAsync(address);
            await CheckAsync(page, address);
            Assert.True(await page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"), $"{address} scrolls sideways at {width} px.");
            Assert.Equal(1, await page.Locator("main h1").CountAsync());
        }
    }

    [Theory]
    [InlineData(1440, ColorScheme.Light)]
    [InlineData(1440, ColorScheme.Dark)]
    [InlineData(820, ColorScheme.Light)]
    public async Task LabPages_HaveNoViolation(int width, ColorScheme scheme)
    {
        var page = await journey.AdministratorAsync(new() { ViewportSize = new() { Width = width, Height = 900 }, ColorScheme = scheme });
        foreach (var address in Signed)
        {
            await page.OpenAsync(address);
            await CheckAsync(page, address);
        }
    }

    [Theory]
    [InlineData("Merge into another")]
    [InlineData("Split parts off")]
    [InlineData("Add a number")]
    [InlineData("Add a top mark")]
    [InlineData("Add a rating")]
    [InlineData("Say how one stands to it")]
    public async Task LabDialogs_OfAFamily_HaveNoViolation(string button)
    {
        var page = await journey.AdministratorAsync(new() { ViewportSize = new() { Width = 820, Height = 900 } });
        await page.OpenAsync("/lab/families/kpd-318");
        await page.GetByRole(AriaRole.Button, new() { Name = button }).ClickAsync();
        await page.GetByRole(AriaRole.Dialog).WaitForAsync();
        await StillAsync(page);
        await CheckAsync(page, button);
    }

    [Theory]
    [InlineData("/lab", "From an article", ColorScheme.Light)]
    [InlineData("/lab", "From an article", ColorScheme.Dark)]
    [InlineData("/lab/teardowns/sorvane-drover-1000", "Many or a zip", ColorScheme.Light)]
    [InlineData("/lab/teardowns/sorvane-drover-1000", "Many or a zip", ColorScheme.Dark)]
    [InlineData("/lab/teardowns/sorvane-drover-1000", "Import a parts list", ColorScheme.Light)]
    [InlineData("/lab/teardowns/sorvane-drover-1000", "Import a parts list", ColorScheme.Dark)]
    public async Task DialogsThatBringThingsIn_HaveNoViolation(string address, string button, ColorScheme scheme)
    {
        var page = await journey.AdministratorAsync(new() { ViewportSize = new() { Width = 820, Height = 900 }, ColorScheme = scheme });
        await page.OpenAsync(address);
        await page.GetByRole(AriaRole.Button, new() { Name = button }).First.ClickAsync();
        await page.GetByRole(AriaRole.Dialog).WaitForAsync();
        if (button == "Import a parts list")
        {
            await page.Locator("#list-file").SetInputFilesAsync(new FilePayload { Name = "list.csv", MimeType = "text/csv", Buffer = "Ref;Qty;Value;Code\nC71;many;47uF/63V;OND-1\n"u8.ToArray() });
            await Assertions.Expect(page.Locator(".plan tbody tr")).ToHaveCountAsync(1);
        }

        await StillAsync(page);
        await CheckAsync(page, button);
    }

    [Theory]
    [InlineData(1440, ColorScheme.Light)]
    [InlineData(1440, ColorScheme.Dark)]
    [InlineData(820, ColorScheme.Light)]
    [InlineData(820, ColorScheme.Dark)]
    public async Task RowWithCandidates_HasNoViolation(int width, ColorScheme scheme)
    {
        var page = await journey.AdministratorAsync(new() { ViewportSize = new() { Width = width, Height = 900 }, ColorScheme = scheme });
        await page.OpenAsync("/lab/teardowns/sorvane-drover-1000");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a component" }).First.ClickAsync();
        await page.GetByLabel("Marking as read").FillAsync("KP\u041E-3I8 2317");
        await Assertions.Expect(page.Locator(".pick button[data-take='1']")).ToBeEnabledAsync();
        // At its end the page stands clear of the bar that covers what scrolls below it.
        await page.EvaluateAsync("window.scrollTo(0, document.body.scrollHeight)");
        await CheckAsync(page, "the row in hand");
    }

    // Opening fades in; what is half seen has no contrast yet.
    private static Task StillAsync(IPage page) =>
        page.EvaluateAsync("Promise.all(document.getAnimations().filter(one => Number.isFinite(one.effect.getComputedTiming().endTime)).map(one => one.finished.catch(() => null))).then(() => true)");

    private static async Task CheckAsync(IPage page, string address)
    {
        var result = await page.RunAxe(new() { RunOnly = new() { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] } });
        Assert.True(result.Passes.Length > 5, $"{address}: axe looked at next to nothing.");
        Assert.True(
            result.Violations.Length == 0,
            address + "\n" + string.Join('\n', result.Violations.Select(violation => $"{violation.Id}: {violation.Help}\n  " + string.Join("\n  ", violation.Nodes.Take(4).Select(node => node.Html)))));
    }
}
