using Microsoft.Playwright;

namespace Catalogue.Journeys.Tests;

/// <summary>What a person at the workbench does.</summary>
internal static class Lab
{
    /// <summary>Opens a page of the lab and waits until its circuit answers.</summary>
    public static async Task OpenAsync(this IPage page, string address)
    {
        await page.GotoAsync(address);
        await page.Locator("[data-ready]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
    }

    /// <summary>Clicks a point of the photo on the workbench, in fractions of it.</summary>
    public static async Task ClickPhotoAsync(this IPage page, double x, double y)
    {
        var photo = page.Locator("[data-photo]").First;
        await photo.ScrollIntoViewIfNeededAsync();
        var box = (await photo.BoundingBoxAsync())!;
        await page.Mouse.ClickAsync((float)(box.X + (box.Width * x)), (float)(box.Y + (box.Height * y)));
    }

    /// <summary>Publishes the draft with a note.</summary>
    public static async Task PublishAsync(this IPage page, string note)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish", Exact = true }).First.ClickAsync();
        var dialog = page.GetByRole(AriaRole.Dialog);
        await dialog.GetByRole(AriaRole.Textbox).First.FillAsync(note);
        await dialog.GetByRole(AriaRole.Button, new() { Name = "Publish", Exact = true }).ClickAsync();
        await dialog.GetByText("Back to the workbench").ClickAsync();
    }
}
