using Catalogue.Domain.Photos;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;

namespace Catalogue.Lab;

/// <summary>Addresses that only signed-in pages link to; the others are in <see cref="Addresses"/>.</summary>
public static class LabAddresses
{
    /// <summary>Settings of the lab.</summary>
    public const string Settings = "/lab/settings";

    /// <summary>All part families.</summary>
    public const string Families = "/lab/families";

    /// <summary>The parts that no family is known for.</summary>
    public const string Unidentified = "/lab/worklist/unidentified";

    /// <summary>What is known of one part family.</summary>
    public static string Family(string slug) => $"{Families}/{slug}";

    /// <summary>Part families, searched.</summary>
    public static string FamilySearch(string? words, bool isLacking = false) => (string.IsNullOrWhiteSpace(words), isLacking) switch
    {
        (true, false) => Families,
        (true, true) => $"{Families}?lacking=true",
        (false, false) => $"{Families}?q={Uri.EscapeDataString(words!.Trim())}",
        (false, true) => $"{Families}?q={Uri.EscapeDataString(words!.Trim())}&lacking=true",
    };

    /// <summary>The facts of a teardown beside its boards.</summary>
    public static string Facts(string slug) => $"{Addresses.Workbench(slug)}/facts";

    /// <summary>The list of teardowns, searched.</summary>
    public static string Search(string? words) => string.IsNullOrWhiteSpace(words) ? Addresses.Lab : $"{Addresses.Lab}?q={Uri.EscapeDataString(words.Trim())}";

    /// <summary>Takes one picture, for a board or for the product as a whole.</summary>
    public static string Upload(string slug, BoardId? board) => board is { } id ? $"/lab/upload/{slug}?board={id}" : $"/lab/upload/{slug}";

    /// <summary>Takes one picture of a batch to its place.</summary>
    public static string Upload(string slug, string path, PhotoPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return $"/lab/upload/{slug}?path={Uri.EscapeDataString(path)}&subject={SnakeCase.Code(place.Subject)}"
            + (place.BoardId is { } board ? $"&board={board}" : "")
            + (place.NewBoard is { } made ? $"&new_board={Uri.EscapeDataString(made)}" : "")
            + (place.Step is { } step ? FormattableString.Invariant($"&step={step}") : "")
            + (place.Caption is { } caption ? $"&caption={Uri.EscapeDataString(caption)}" : "");
    }

    /// <summary>Takes a zip file with pictures as an import run, or only says what would happen.</summary>
    public static string ImportPhotos(string slug, bool dryRun) => $"/lab/import/runs/photos?teardown={slug}&dry_run={(dryRun ? "true" : "false")}";

    /// <summary>Takes an article as an import run; the options tell what it does not say.</summary>
    public static string ImportArticle(IEnumerable<KeyValuePair<string, string>> options) =>
        $"/lab/import/runs/article?{string.Join('&', options.Select(option => $"{option.Key}={Uri.EscapeDataString(option.Value)}"))}";

    /// <summary>Reads a parts list into a board, or only says what would happen.</summary>
    /// <param name="board">The board.</param>
    /// <param name="dryRun">True to change nothing.</param>
    /// <param name="options">What was decided about the list, by the names of the API; null leaves it to be found out.</param>
    public static string Import(BoardId board, bool dryRun, IEnumerable<KeyValuePair<string, string?>> options) =>
        $"/lab/import/{board}?dry_run={(dryRun ? "true" : "false")}{string.Concat(options.Where(option => option.Value is not null).Select(option => $"&{option.Key}={Uri.EscapeDataString(option.Value!)}"))}";
}
