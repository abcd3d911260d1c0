namespace Catalogue.Domain.Packs;

/// <summary>Finds the chemistry that a reviewer's words name.</summary>
public static class ChemistryWords
{
    // The first that stands in the text counts: the particular before the general.
    private static readonly (string Word, string Code)[] Words =
    [
        ("titanate", "lto"), ("lto", "lto"), ("li4ti5", "lto"),
        ("iron phosphate", "lfp"), ("lifepo", "lfp"), ("lfp", "lfp"),
        ("sodium", "na_ion"), ("na-ion", "na_ion"),
        ("nickel manganese cobalt", "nmc"), ("nmc", "nmc"), ("ncm", "nmc"),
        ("nickel cobalt aluminium", "nca"), ("nickel cobalt aluminum", "nca"), ("nca", "nca"),
        ("cobalt", "lco"), ("lco", "lco"),
        ("manganese", "lmo"), ("lmo", "lmo"),
        ("nickel metal hydride", "nimh"), ("nimh", "nimh"), ("ni-mh", "nimh"),
        ("lead", "pb"), ("agm", "pb"),
    ];

    /// <summary>The row that a text names, by its code or in words, or null: “lithium ion” alone names none, for its kinds differ.</summary>
    public static CellChemistry? Find(string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
            return null;
        var lower = text.Trim().ToLowerInvariant();
        if (CellChemistry.Find(lower) is { } exact)
            return exact;
        foreach (var (word, code) in Words)
            if (Stands(lower, word))
                return CellChemistry.Find(code);
        return null;
    }

    /// <summary>True for a text that speaks of lithium cells, whatever their kind.</summary>
    public static bool IsLithium(string? text) =>
        Find(text)?.Code is "nmc" or "nmc37" or "nca" or "lco" or "lco435" or "lco440" or "lco445" or "lmo" or "lfp" or "lto"
        || (text is not null && (Stands(text.ToLowerInvariant(), "li") || Stands(text.ToLowerInvariant(), "lipo") || text.Contains("lithium", StringComparison.OrdinalIgnoreCase)));

    // As a word of its own, so that “lead” is not found in “leadless” nor “li” in “alkaline”.
    private static bool Stands(string text, string word)
    {
        for (var at = text.IndexOf(word, StringComparison.Ordinal); at >= 0; at = text.IndexOf(word, at + 1, StringComparison.Ordinal))
        {
            var ends = at + word.Length;
            if ((at == 0 || !char.IsLetterOrDigit(text[at - 1])) && (ends == text.Length || !char.IsLetter(text[ends])))
                return true;
        }

        return false;
    }
}
