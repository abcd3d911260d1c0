using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Catalogue.Journeys.Tests;

/// <summary>Photo, callout, component, published page: the way a fact goes, in a real browser.</summary>
/// <param name="journey">The site and the browser.</param>
[Collection(JourneyCollection.Name)]
public sealed class PublishingJourneyTests(JourneyFixture journey)
{
    private const string Slug = "quelvane-lath-65";

    [Fact]
    public async Task Journey_FromSignInToAPublishedCallout_AndNoDraftIsSeenOutside()
    {
        var lab = await journey.AdministratorAsync();
        await lab.OpenAsync("/lab");
        await lab.GetByRole(AriaRole.Link, new() { Name = "Quelvane Lath 65" }).First.ClickAsync();
        await Expect(lab.Locator("[data-photo]").First).ToBeVisibleAsync();

        // A new component, and a callout pinned to it.
        await lab.GetByRole(AriaRole.Button, new() { Name = "Add a component" }).First.ClickAsync();
        var role = lab.GetByLabel("Role");
        await role.FillAsync("inrush limiter");
        await lab.GetByLabel("Marking as read").FillAsync("NTQ 5D-9");
        await lab.Keyboard.PressAsync("Tab");
        await Expect(lab.GetByText(new Regex("^Saved ")).First).ToBeVisibleAsync();
        var before = await lab.Locator("button[data-callout]").CountAsync();
        await lab.GetByRole(AriaRole.Button, new() { Name = "Place" }).First.ClickAsync();
        await lab.ClickPhotoAsync(0.62, 0.71);
        await Expect(lab.Locator("button[data-callout]")).ToHaveCountAsync(before + 1);
        await lab.PublishAsync("The inrush limiter was missed.");

        var visitor = await journey.VisitorAsync(new() { JavaScriptEnabled = false });
        await visitor.GotoAsync($"/teardowns/{Slug}");
        await Expect(visitor.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Lath 65");
        await Expect(visitor.GetByText("inrush limiter").First).ToBeVisibleAsync();
        await Expect(visitor.GetByText("NTQ 5D-9").First).ToBeVisibleAsync();
        await Expect(visitor.GetByText("The inrush limiter was missed.").First).ToBeVisibleAsync();

        // What is written from now on is a draft: the lab sees it, the visitor does not.
        await lab.OpenAsync($"/lab/teardowns/{Slug}");
        await lab.GetByRole(AriaRole.Button, new() { Name = "Add a component" }).First.ClickAsync();
        await lab.GetByLabel("Role").FillAsync("undisclosed part");
        await lab.Keyboard.PressAsync("Tab");
        await Expect(lab.GetByText(new Regex("^Saved ")).First).ToBeVisibleAsync();
        await lab.OpenAsync($"/lab/teardowns/{Slug}");
        await Expect(lab.GetByText("undisclosed part").First).ToBeVisibleAsync();

        foreach (var address in new[] { "/", $"/teardowns/{Slug}", "/teardowns", "/families", "/search?q=undisclosed", $"/api/v1/teardowns/{Slug}", $"/api/v1/teardowns/{Slug}/components.csv" })
        {
            await visitor.GotoAsync("about:blank");
            var answer = await visitor.APIRequest.GetAsync(journey.Site.Address + address);
            Assert.True(answer.Ok, $"{address}: {answer.Status}");
            Assert.DoesNotContain("undisclosed part", await answer.TextAsync(), StringComparison.Ordinal);
            Assert.DoesNotContain(answer.HeadersArray, header => header.Name.Equals("set-cookie", StringComparison.OrdinalIgnoreCase));
        }
    }

    [Fact]
    public async Task Journey_TwoPeopleOneComponent_NothingIsOverwrittenInSilence()
    {
        var first = await journey.AdministratorAsync();
        var second = await journey.ColleagueAsync("sorrel", "reviewer");
        foreach (var page in new[] { first, second })
        {
            await page.OpenAsync("/lab/teardowns/sorvane-drover-1000");
            await page.GetByRole(AriaRole.Button, new() { Name = "Open" }).First.ClickAsync();
            await Expect(page.GetByLabel("Note")).ToBeVisibleAsync();
        }

        await first.GetByLabel("Note").FillAsync("checked by the first");
        await first.Keyboard.PressAsync("Tab");
        await Expect(first.GetByText(new Regex("^Saved ")).First).ToBeVisibleAsync();
        await second.GetByLabel("Note").FillAsync("checked by the second");
        await second.Keyboard.PressAsync("Tab");

        await Expect(second.GetByText("Somebody else saved").First).ToBeVisibleAsync();
        await first.OpenAsync("/lab/teardowns/sorvane-drover-1000");
        await first.GetByRole(AriaRole.Button, new() { Name = "Open" }).First.ClickAsync();
        await Expect(first.GetByLabel("Note")).ToHaveValueAsync("checked by the first");
    }

    [Fact]
    public async Task Journey_AReviewer_MayNotPublishNorChangeSettings()
    {
        var reviewer = await journey.ColleagueAsync("pell", "reviewer");

        await reviewer.OpenAsync("/lab/teardowns/ferrowick-tor-600");
        await reviewer.GetByRole(AriaRole.Button, new() { Name = "Add a component" }).First.ClickAsync();
        await reviewer.GetByLabel("Role").FillAsync("spacer");
        await reviewer.Keyboard.PressAsync("Tab");
        await Expect(reviewer.GetByText(new Regex("^Saved ")).First).ToBeVisibleAsync();
        await Expect(reviewer.GetByRole(AriaRole.Button, new() { Name = "Publish", Exact = true })).ToHaveCountAsync(0);
        var settings = await reviewer.GotoAsync("/lab/settings");
        Assert.NotEqual("/lab/settings", new Uri(reviewer.Url).AbsolutePath);
        Assert.Equal(403, settings!.Status);
    }

    [Fact]
    public async Task Journey_APowerCut_LosesNothingThatWasAcknowledged()
    {
        var token = (await journey.Site.AdminAsync("token", "power cut", "--scope", "write"))[^1].Trim();
        using var script = new HttpClient { BaseAddress = new Uri(journey.Site.Address), DefaultRequestHeaders = { { "Authorization", "Bearer " + token } } };
        using var made = await script.PostAsync("/api/v1/teardowns", new StringContent(
            """{"product":{"brand":"Ostrel","name":"Pebble 20","model":"P20","category":"power_bank"},"title":"Pebble"}""", System.Text.Encoding.UTF8, "application/json"));
        Assert.True(made.IsSuccessStatusCode, await made.Content.ReadAsStringAsync());

        await journey.Site.KillAndRestartAsync();

        var draft = await script.GetStringAsync("/api/v1/teardowns/ostrel-pebble-20?draft=true");
        Assert.Contains("Pebble 20", draft, StringComparison.Ordinal);
    }
}
