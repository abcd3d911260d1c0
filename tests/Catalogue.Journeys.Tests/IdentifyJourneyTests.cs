using System.Text.RegularExpressions;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Catalogue.Journeys.Tests;

/// <summary>A misread marking leads to its family, in the row and on the worklist, in a real browser.</summary>
/// <param name="journey">The site and the browser.</param>
[Collection(JourneyCollection.Name)]
public sealed class IdentifyJourneyTests(JourneyFixture journey)
{
    [Fact]
    public async Task Journey_AMisreadMarking_IsTakenWithTheKeyboardInTheRowAndOnTheWorklist()
    {
        var lab = await journey.AdministratorAsync();
        await lab.OpenAsync("/lab/teardowns/sorvane-drover-1000");
        await AddAsync(lab, "first look");
        var taken = lab.GetByRole(AriaRole.Group, new() { Name = "It may be" }).GetByRole(AriaRole.Button, new() { Name = "KPD-318" });
        await taken.FocusAsync();
        await lab.Keyboard.PressAsync("Enter");
        await Expect(lab.Locator("#row-form").GetByRole(AriaRole.Link, new() { Name = "KPD-318" })).ToBeVisibleAsync();
        await Expect(lab.GetByLabel("Marking as read")).ToHaveValueAsync("KPO-3I8");

        await AddAsync(lab, "second look");
        await Expect(lab.GetByRole(AriaRole.Group, new() { Name = "It may be" })).ToBeVisibleAsync();
        await lab.OpenAsync("/lab/worklist/unidentified");
        var row = lab.GetByRole(AriaRole.Row).Filter(new() { HasText = "KPO-3I8" });
        await row.GetByRole(AriaRole.Button, new() { Name = "KPD-318" }).ClickAsync();
        await Expect(lab.GetByText("sorvane-drover-1000: one component linked.")).ToBeVisibleAsync();
        await Expect(lab.GetByRole(AriaRole.Row).Filter(new() { HasText = "KPO-3I8" })).ToHaveCountAsync(0);
    }

    private static async Task AddAsync(IPage lab, string role)
    {
        await lab.GetByRole(AriaRole.Button, new() { Name = "Add a component" }).First.ClickAsync();
        await Expect(lab.GetByLabel("Role")).ToHaveValueAsync("");
        await lab.GetByLabel("Role").FillAsync(role);
        await lab.GetByLabel("Marking as read").FillAsync("KPO-3I8");
        await lab.Keyboard.PressAsync("Tab");
        await Expect(lab.GetByText(new Regex("^Saved ")).First).ToBeVisibleAsync();
    }
}
