namespace Catalogue.Testing.Components.Lists;

/// <summary>A cell that is more than a text or a number.</summary>
/// <param name="Value">What the file stores, or null.</param>
/// <param name="Type">The cell's type as the standard names it; null for a number.</param>
/// <param name="Formula">The formula without its equals sign, or null.</param>
/// <param name="Format">The number format, or null for the general one.</param>
public sealed record WorkbookCell(string? Value, string? Type = null, string? Formula = null, string? Format = null)
{
    /// <summary>A formula with the number that came out of it, or without any.</summary>
    public static WorkbookCell OfFormula(string formula, string? stored = null) => new(stored, Formula: formula);

    /// <summary>A number that is shown by a format.</summary>
    public static WorkbookCell Shown(string number, string format) => new(number, Format: format);

    /// <summary>A text that stands in the sheet itself.</summary>
    public static WorkbookCell Inline(string text) => new(text, "inlineStr");

    /// <summary>An error such as <c>#REF!</c>.</summary>
    public static WorkbookCell Error(string error, string? formula = null) => new(error, "e", formula);
}
