using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Catalogue.Domain.Families;

namespace Catalogue.Domain.Components.Lists;

/// <summary>A quantity cell as a number.</summary>
internal static partial class WrittenQuantity
{
    private const int Most = 1_000_000;

    /// <summary>The whole number a cell gives, or null with the remark why not; a remark may also come with a number.</summary>
    public static (int? Number, string? Remark) Read(string cell)
    {
        var text = WellFormedText.Of(cell).Normalize(NormalizationForm.FormKC).Trim();
        var match = Whole().Match(text);
        var digits = match.Success ? match.Groups["number"].Value : "";
        string? remark = null;
        if (!match.Success && Thousands().Match(text) is { Success: true } thousands)
        {
            digits = string.Concat(thousands.Value.Where(char.IsAsciiDigit));
            remark = $"quantity “{WellFormedText.Shorten(text, 40)}” read with a thousands mark";
        }
        if (digits.Length == 0)
        {
            return (null, $"quantity “{WellFormedText.Shorten(text, 40)}” is no whole number: left open");
        }
        if (!int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var number) || number > Most)
        {
            return (null, $"quantity “{WellFormedText.Shorten(text, 40)}” is too large to be meant: left open");
        }
        return (number, remark ?? (number == 0 ? "quantity 0" : null));
    }

    [GeneratedRegex(@"^[x×]?\s*(?<number>[0-9]+)([.,]0{1,2})?\s*([x×]|\p{L}{1,7}\.?)?$", RegexOptions.IgnoreCase)]
    private static partial Regex Whole();

    [GeneratedRegex(@"^[0-9]{1,3}([., '’][0-9]{3})+$")]
    private static partial Regex Thousands();
}
