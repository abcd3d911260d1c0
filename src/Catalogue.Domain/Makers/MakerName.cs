using System.Text;

namespace Catalogue.Domain.Makers;

/// <summary>Names of makers, compared.</summary>
public static class MakerName
{
    /// <summary>
    /// The key two spellings of one name share: compatibility forms folded, lower case, only letters and digits.
    /// Empty when the text holds none, and then it is no name.
    /// </summary>
    public static string Key(string? name)
    {
        if (string.IsNullOrWhiteSpace(name))
            return "";
        var runes = new StringBuilder(name.Length);
        foreach (var rune in name.EnumerateRunes())
            runes.Append(rune.ToString());
        var key = new StringBuilder(name.Length);
        foreach (var rune in runes.ToString().Normalize(NormalizationForm.FormKC).EnumerateRunes())
            if (Rune.IsLetterOrDigit(rune))
                key.Append(Rune.ToLowerInvariant(rune).ToString());
        return key.ToString();
    }
}
