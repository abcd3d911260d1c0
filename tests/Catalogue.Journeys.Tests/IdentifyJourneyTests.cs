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
        // Candidates come while the marking is typed; the grid shows it once it is saved.
        await lab.Keyboard.PressAsync("Escape");
        await Expect(lab.Locator(".grid > tbody > tr").Filter(new() { HasText = "second look" })).ToContainTextAsync("KPO-3I8");
        await lab.OpenAsync("/lab/worklist/unidentified");
        var row = lab.GetByRole(AriaRole.Row).Filter(new() { HasText = "KPO-3I8" });
        await row.GetByRole(AriaRole.Button, new() { Name = "KPD-318" }).ClickAsync();
        await Expect(lab.GetByText("sorvane-drover-1000: one component linked.")).ToBeVisibleAsync();
        await Expect(lab.GetByRole(AriaRole.Row).Filter(new() { HasText = "KPO-3I8" })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Journey_AMisreadMarking_IsTakenWhileItIsTypedAndShowsInTheGrid()
    {
        var lab = await journey.AdministratorAsync();
        await lab.OpenAsync("/lab/teardowns/sorvane-drover-1000");
        await lab.GetByRole(AriaRole.Button, new() { Name = "Add a component" }).First.ClickAsync();
        await lab.GetByLabel("Ref.").FillAsync("Q77");
        await lab.GetByLabel("Marking as read").ClickAsync();
        await lab.Keyboard.TypeAsync("KPO-3I8", new() { Delay = 20 });
        var list = lab.GetByRole(AriaRole.Group, new() { Name = "It may be" });
        await Expect(list.GetByRole(AriaRole.Button, new() { Name = "KPD-318" })).ToBeEnabledAsync();
        await Expect(list.GetByRole(AriaRole.Button, new() { Name = "open a family for KPO-3I8" })).ToBeVisibleAsync();
        await Expect(list).ToContainTextAsync("looks like");
        await lab.Keyboard.PressAsync("Alt+1");
        await Expect(lab.Locator("#row-form").GetByRole(AriaRole.Link, new() { Name = "KPD-318" })).ToBeVisibleAsync();
        await Expect(lab.GetByLabel("Marking as read")).ToBeFocusedAsync();
        await Expect(lab.GetByLabel("Marking as read")).ToHaveValueAsync("KPO-3I8");
        await lab.Keyboard.PressAsync("Escape");
        var row = lab.Locator(".grid > tbody > tr").Filter(new() { HasText = "Q77" });
        await Expect(row).ToContainTextAsync("KPO-3I8");
        await Expect(row).ToContainTextAsync("KPD-318");
    }

    [Fact]
    public async Task Journey_TheList_IsWalkedWithArrowsAndEndsWithANewFamily()
    {
        var lab = await journey.AdministratorAsync();
        await lab.OpenAsync("/lab/teardowns/sorvane-drover-1000");
        await lab.GetByRole(AriaRole.Button, new() { Name = "Add a component" }).First.ClickAsync();
        await lab.GetByLabel("Marking as read").FillAsync("KPO-3I8");
        var list = lab.GetByRole(AriaRole.Group, new() { Name = "It may be" });
        var first = list.GetByRole(AriaRole.Button, new() { Name = "KPD-318" });
        var last = list.GetByRole(AriaRole.Button, new() { Name = "None of these: open a family for KPO-3I8" });
        await Expect(last).ToBeEnabledAsync();
        await first.FocusAsync();
        await lab.Keyboard.PressAsync("End");
        await Expect(last).ToBeFocusedAsync();
        await lab.Keyboard.PressAsync("Home");
        await Expect(first).ToBeFocusedAsync();
        await lab.Keyboard.PressAsync("ArrowUp");
        await Expect(first).ToBeFocusedAsync();

        await lab.GetByLabel("Marking as read").FillAsync("WRX-7741");
        var open = list.GetByRole(AriaRole.Button, new() { Name = "Open a family for WRX-7741" });
        await Expect(open).ToBeEnabledAsync();
        await open.PressAsync("Enter");
        await Expect(lab.Locator("#row-form").GetByRole(AriaRole.Link, new() { Name = "WRX-7741" })).ToBeVisibleAsync();
        await Expect(lab.GetByLabel("Part number")).ToHaveValueAsync("WRX-7741");
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
