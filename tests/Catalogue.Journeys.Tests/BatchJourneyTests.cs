using System.Text;
using Catalogue.Web.Tests;
using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Catalogue.Journeys.Tests;

/// <summary>An old article becomes a draft, and a heap of pictures finds its places: in a real browser and from the command line.</summary>
/// <param name="journey">The site and the browser.</param>
[Collection(JourneyCollection.Name)]
public sealed class BatchJourneyTests(JourneyFixture journey)
{
    private const string Article = "# Inside the Slate 45\n\nFour screws hold the lid.\n\n## Output board\n\n| Ref | Value |\n|---|---|\n| C1 | 10uF |\n\n## Conclusion\n\nSolid.\n";

    // Each picture is decoded in a process of its own, and a run waits its turn in the queue.
    private static readonly LocatorAssertionsToBeVisibleOptions Patient = new() { Timeout = 60_000 };

    [Fact]
    public async Task Journey_ArticleThenPictures_AreADraftWithPhotosInTheirPlaces()
    {
        var lab = await journey.AdministratorAsync();
        await lab.OpenAsync("/lab");
        await lab.GetByRole(AriaRole.Button, new() { Name = "From an article" }).ClickAsync();
        var dialog = lab.GetByRole(AriaRole.Dialog);
        await dialog.GetByLabel("A Markdown file").SetInputFilesAsync(new FilePayload { Name = "slate.md", MimeType = "text/markdown", Buffer = Encoding.UTF8.GetBytes(Article) });
        await Expect(dialog.GetByText("does not say everything")).ToBeVisibleAsync(Patient);
        await Expect(dialog.GetByLabel("What becomes of Conclusion")).ToHaveValueAsync("Finding");
        await dialog.GetByLabel("Brand").FillAsync("Wexley");
        await dialog.GetByLabel("Product name").FillAsync("Slate 45");
        await dialog.GetByLabel("Model designation").FillAsync("WS-45");
        await dialog.GetByLabel("Category").SelectOptionAsync(new SelectOptionValue { Label = "charger" });
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Open the draft" }).ClickAsync();
        await lab.WaitForURLAsync("**/lab/teardowns/wexley-slate-45");
        await Expect(lab.GetByText("Output board").First).ToBeVisibleAsync();

        // Single files: proposed by name, one corrected.
        await lab.GetByRole(AriaRole.Button, new() { Name = "Many or a zip" }).ClickAsync();
        await dialog.GetByLabel("Pictures, or one zip file").SetInputFilesAsync([Picture("output board top.png", 1), Picture("IMG_1.png", 2)]);
        await Expect(dialog.GetByLabel("Place of output board top.png").Locator("option:checked")).ToHaveTextAsync("A, Output board: top");
        await Expect(dialog.GetByText("Unsure: The name says nothing")).ToBeVisibleAsync();
        await dialog.GetByLabel("Place of IMG_1.png").SelectOptionAsync(new SelectOptionValue { Label = "A, Output board: bottom" });
        await dialog.GetByLabel("Caption of IMG_1.png").FillAsync("The solder side");
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Add 2 pictures" }).ClickAsync();
        await Expect(dialog.GetByText("2 pictures added")).ToBeVisibleAsync(Patient);
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Close" }).Last.ClickAsync();
        await Expect(lab.Locator("[data-photo]").First).ToBeVisibleAsync();

        // A zip file with one of them again.
        await lab.GetByRole(AriaRole.Button, new() { Name = "Many or a zip" }).ClickAsync();
        var zip = ZipFiles.Of(("shots/DC-DC/top.png", Pictures.Png(40, 30, 3)), ("shots/label.png", Pictures.Png(40, 30, 2)), ("shots/note.txt", [65]));
        await dialog.GetByLabel("Pictures, or one zip file").SetInputFilesAsync(new FilePayload { Name = "shots.zip", MimeType = "application/zip", Buffer = zip });
        await Expect(dialog.GetByLabel("Place of shots/DC-DC/top.png").Locator("option:checked")).ToHaveTextAsync("New board DC-DC: top", new() { Timeout = Patient.Timeout });
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Add 1 picture" }).ClickAsync();
        await Expect(dialog.GetByText("1 picture added")).ToBeVisibleAsync(Patient);
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Close" }).Last.ClickAsync();

        // The same from the command line, while the site runs.
        var folder = Directory.CreateTempSubdirectory("catalogue-pictures-");
        try
        {
            await File.WriteAllBytesAsync(Path.Combine(folder.FullName, "label.png"), Pictures.Png(40, 30, 4));
            await File.WriteAllBytesAsync(Path.Combine(folder.FullName, "output board.png"), Pictures.Png(40, 30, 1));
            Assert.StartsWith("1 would be added, 1 already there", (await journey.Site.AdminAsync("import-photos", "wexley-slate-45", folder.FullName, "--dry-run"))[^1], StringComparison.Ordinal);
            Assert.StartsWith("1 added, 1 already there", (await journey.Site.AdminAsync("import-photos", "wexley-slate-45", folder.FullName))[^1], StringComparison.Ordinal);
            await File.WriteAllTextAsync(Path.Combine(folder.FullName, "old.md"), "# Older\n\n![the label](label.png)\n");
            Assert.Contains("--brand", (await journey.Site.AdminAsync("import-article", folder.FullName, "--dry-run"))[^1], StringComparison.Ordinal);
            Assert.Equal("The draft is wexley-slate-40.", (await journey.Site.AdminAsync("import-article", folder.FullName, "--brand", "Wexley", "--name", "Slate 40", "--model", "WS-40", "--category", "charger"))[^1]);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static FilePayload Picture(string name, byte shade) => new() { Name = name, MimeType = "image/png", Buffer = Pictures.Png(40, 30, shade) };
}
