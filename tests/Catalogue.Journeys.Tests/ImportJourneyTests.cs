using System.Text;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Catalogue.Journeys.Tests;

/// <summary>A parts list comes in, comes again corrected, and its columns are set by hand, in a real browser.</summary>
/// <param name="journey">The site and the browser.</param>
[Collection(JourneyCollection.Name)]
public sealed class ImportJourneyTests(JourneyFixture journey)
{
    private const string First = "Ref;Qty;Value;Package;Code\nC401, C402;2;47uF/63V;radial;OND-LH-470\nR401;1;0R005 1%;2512;\nR402;1;1.000k;0603;\nU401;1;QV318;QFN-24;QV318-TR\n";

    [Fact]
    public async Task Journey_AList_IsPreviewedImportedAndUpdatedByTheCorrectedOne()
    {
        var lab = await journey.AdministratorAsync(new() { ViewportSize = new() { Width = 1440, Height = 900 } });
        await lab.OpenAsync("/lab/teardowns/sorvane-drover-1000");
        var dialog = await OpenDialogAsync(lab);
        await PickAsync(dialog, "board.csv", First);
        await Expect(dialog.GetByRole(AriaRole.Status)).ToContainTextAsync("4 components will be added");
        var plan = dialog.Locator(".plan tbody tr");
        await Expect(plan).ToHaveCountAsync(4);
        await Expect(plan.Nth(0)).ToContainTextAsync("rated voltage 63 V");

        // How the file is read can be set by hand, and back again.
        await dialog.GetByText("How the file is read").ClickAsync();
        await dialog.GetByLabel("Cells parted by").SelectOptionAsync("|");
        await Expect(dialog.GetByRole(AriaRole.Status)).ToContainTextAsync("Not read");
        await dialog.GetByLabel("Cells parted by").SelectOptionAsync("");
        await dialog.GetByLabel("Encoding").SelectOptionAsync("windows-1252");
        await Expect(dialog.GetByRole(AriaRole.Status)).ToContainTextAsync("windows-1252, cells parted by semicolons");

        // The part number stands in a column whose name says nothing.
        await dialog.GetByLabel("Code").SelectOptionAsync("part_number");
        await Expect(plan.Nth(3)).ToContainTextAsync("new family");
        await Expect(plan.Nth(3)).ToContainTextAsync("QV318");
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Import 4 components" }).ClickAsync();
        // A cell was not read, so the report stays.
        await Expect(dialog.GetByRole(AriaRole.Status)).ToContainTextAsync("4 components added, 1 cell not read");
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Close" }).ClickAsync();
        await Expect(dialog).ToBeHiddenAsync();
        await Expect(lab.Locator(".grid")).ToContainTextAsync("C401, C402");

        // The same list with one line corrected: the column is remembered, one row changes.
        dialog = await OpenDialogAsync(lab);
        await PickAsync(dialog, "board-2.csv", First.Replace("47uF/63V", "47uF/50V", StringComparison.Ordinal));
        await Expect(dialog.GetByRole(AriaRole.Status)).ToContainTextAsync("1 will be changed, 3 are there already");
        await Expect(dialog.GetByLabel("Code")).ToHaveValueAsync("part_number");
        await dialog.GetByLabel("only rows to look at").CheckAsync();
        await Expect(plan.Filter(new() { HasText = "value: 47uF/63V becomes 47uF/50V" })).ToHaveCountAsync(1);
        var report = await lab.RunAndWaitForDownloadAsync(() => dialog.GetByRole(AriaRole.Button, new() { Name = "Save this report" }).ClickAsync());
        using var reader = new StreamReader(await report.CreateReadStreamAsync());
        var saved = (await reader.ReadToEndAsync()).Replace('\u00A0', ' ');
        Assert.Contains(",2,update,Value,47uF/50V,\"47 µF, 50 V\",", saved, StringComparison.Ordinal);
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Change 1 component" }).ClickAsync();
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Close" }).ClickAsync();
        await Expect(dialog).ToBeHiddenAsync();
        await Expect(lab.Locator(".grid > tbody > tr").Filter(new() { HasText = "C401, C402" })).ToContainTextAsync("50 V");
    }

    [Fact]
    public async Task Journey_RowsPastedFromASpreadsheet_AreReadLikeAFile()
    {
        var lab = await journey.AdministratorAsync();
        await lab.OpenAsync("/lab/teardowns/sorvane-drover-1000");
        var dialog = await OpenDialogAsync(lab);
        await dialog.GetByText("Or paste rows").ClickAsync();
        await dialog.GetByLabel("Rows with their header").FillAsync("Ref\tQty\tValue\nC501\t1\t10uF/25V\nC502\tmany\t1uF\n");
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Read pasted rows" }).ClickAsync();
        await Expect(dialog.GetByRole(AriaRole.Status)).ToContainTextAsync("2 components will be added, 1 cell not read");
        await Expect(dialog.Locator(".plan tbody tr").Nth(1)).ToContainTextAsync("not a number of parts");
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Cancel" }).ClickAsync();
        await Expect(lab.Locator(".grid")).Not.ToContainTextAsync("C501");
    }

    private static async Task<ILocator> OpenDialogAsync(IPage lab)
    {
        await lab.GetByRole(AriaRole.Button, new() { Name = "Import a parts list" }).First.ClickAsync();
        var dialog = lab.GetByRole(AriaRole.Dialog);
        await Expect(dialog).ToBeVisibleAsync();
        return dialog;
    }

    private static Task PickAsync(ILocator dialog, string name, string content) =>
        dialog.Locator("#list-file").SetInputFilesAsync(new FilePayload { Name = name, MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(content) });
}
