namespace Catalogue.Domain.Tests.UsbPd;

/// <summary>The tables of docs/figures/usb-pd.md.</summary>
internal static class UsbPdDocument
{
    /// <summary>The rows of the table below a heading, without its head.</summary>
    public static TheoryData<string[]> Rows(string heading) =>
    [
        .. File.ReadAllLines(FigurePages.Find("usb-pd.md"))
            .SkipWhile(line => line != heading)
            .Skip(1)
            .TakeWhile(line => !line.StartsWith('#'))
            .Where(line => line.StartsWith('|'))
            .Skip(2)
            .Select(line => line.Trim()[1..^1].Split('|', StringSplitOptions.TrimEntries)),
    ];
}
