using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Catalogue.Journeys.Tests;

/// <summary>Two part families become one and two again, in a real browser.</summary>
/// <param name="journey">The site and the browser.</param>
[Collection(JourneyCollection.Name)]
public sealed class FamilyJourneyTests(JourneyFixture journey)
{
    [Fact]
    public async Task Journey_MergeOfTwoFamilies_LeadsReadersOnAndIsUndone()
    {
        var lab = await journey.AdministratorAsync();
        await lab.OpenAsync("/lab/families?q=ytq");
        await lab.GetByRole(AriaRole.Link, new() { Name = "YTQ65-080" }).ClickAsync();
        await Expect(lab.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("YTQ65-080");
        await lab.GetByRole(AriaRole.Button, new() { Name = "Merge into another" }).ClickAsync();
        var dialog = lab.GetByRole(AriaRole.Dialog);
        await dialog.GetByLabel("Into which family", new() { Exact = true }).PressSequentiallyAsync("yn40");
        await dialog.GetByRole(AriaRole.Radio).First.CheckAsync();
        await Expect(dialog.GetByText("the merge can be undone at any time")).ToBeVisibleAsync();
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Merge", Exact = true }).ClickAsync();
        await Expect(lab.GetByText("This family was merged into")).ToBeVisibleAsync();

        var visitor = await journey.VisitorAsync(new() { JavaScriptEnabled = false });
        await visitor.GotoAsync("/families/ytq65-080");
        await Expect(visitor.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("YN40");
        await visitor.GotoAsync("/teardowns/ferrowick-tor-600");
        await Expect(visitor.GetByText("now counted to").First).ToBeVisibleAsync();

        await lab.GetByRole(AriaRole.Button, new() { Name = "Undo the merge of YTQ65-080" }).ClickAsync();
        await Expect(lab.GetByRole(AriaRole.Button, new() { Name = "Merge into another" })).ToBeVisibleAsync();
        await visitor.GotoAsync("/families/ytq65-080");
        await Expect(visitor.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("YTQ65-080");
    }

    [Fact]
    public async Task Journey_AMakerOfAFamily_IsRenamedAndTakesOtherNames()
    {
        var lab = await journey.AdministratorAsync();
        await lab.OpenAsync("/lab/families/mwk-721");
        var dialog = lab.GetByRole(AriaRole.Dialog);
        await lab.GetByRole(AriaRole.Button, new() { Name = "Add a maker" }).ClickAsync();
        await dialog.GetByLabel("Name").FillAsync("Tessaly Semi");
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Add", Exact = true }).ClickAsync();
        await lab.GetByRole(AriaRole.Button, new() { Name = "Tessaly Semi", Exact = true }).ClickAsync();
        await dialog.GetByLabel("Shown as").FillAsync("Tessaly Semiconductor");
        await dialog.GetByLabel("Add a name").FillAsync("Тессали");
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();

        await lab.GetByRole(AriaRole.Button, new() { Name = "Tessaly Semiconductor", Exact = true }).ClickAsync();
        await Expect(dialog.GetByText("Tessaly Semi", new() { Exact = true })).ToBeVisibleAsync();
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Remove the name Тессали" }).ClickAsync();
        await Expect(dialog.GetByText("Тессали")).ToHaveCountAsync(0);
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Remove", Exact = true }).ClickAsync();
        await Expect(lab.GetByRole(AriaRole.Button, new() { Name = "Tessaly Semiconductor", Exact = true })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Journey_SplitOfTheComponentsOfAFamily_MovesThemAndIsUndone()
    {
        var lab = await journey.AdministratorAsync();
        await lab.OpenAsync("/lab/families/kpd-318");
        var used = lab.GetByRole(AriaRole.Region, new() { Name = "Where it is used" }).GetByRole(AriaRole.Row);
        await Expect(used.First).ToBeVisibleAsync();
        var rows = await used.CountAsync();
        await lab.GetByRole(AriaRole.Button, new() { Name = "Split parts off" }).ClickAsync();
        var dialog = lab.GetByRole(AriaRole.Dialog);
        await dialog.GetByLabel("Number of the family they belong to").FillAsync("KPD-318B");
        await dialog.GetByRole(AriaRole.Group, new() { Name = "Which components go" }).GetByRole(AriaRole.Checkbox).First.CheckAsync();
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Split", Exact = true }).ClickAsync();
        await Expect(lab.GetByRole(AriaRole.Button, new() { Name = "Undo the split to KPD-318B" })).ToBeVisibleAsync();
        await Expect(used).Not.ToHaveCountAsync(rows);

        var visitor = await journey.VisitorAsync(new() { JavaScriptEnabled = false });
        await visitor.GotoAsync("/families/kpd-318b");
        await Expect(visitor.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("KPD-318B");

        await lab.GetByRole(AriaRole.Button, new() { Name = "Undo the split to KPD-318B" }).ClickAsync();
        await Expect(used).ToHaveCountAsync(rows);
        // Whoever kept the address of the family that was made finds the one it came from.
        await visitor.GotoAsync("/families/kpd-318b");
        await Expect(visitor.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("KPD-318(?!B)"));
    }
}
