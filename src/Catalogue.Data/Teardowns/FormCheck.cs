using Catalogue.Domain.Text;

namespace Catalogue.Data.Teardowns;

/// <summary>Cleans the texts of a form one after the other and keeps the first thing that is wrong with them.</summary>
internal sealed class FormCheck
{
    /// <summary>The first thing that is wrong, or null.</summary>
    public Refusal? Refusal { get; private set; }

    /// <summary>A text that must be there; empty when it is refused.</summary>
    public string Need(string? text, string field, int maxLength)
    {
        var clean = PlainText.Clean(text) ?? "";
        if (clean.Length == 0)
            Refusal ??= new Refusal(field, $"{field} is empty; give it a text of 1 to {maxLength} characters.");
        return Fit(clean, field, maxLength);
    }

    /// <summary>A text that may be missing; blank is missing.</summary>
    public string? May(string? text, string field, int maxLength) => PlainText.Clean(text) is { } clean ? Fit(clean, field, maxLength) : null;

    /// <summary>A list of short texts; blank ones fall out.</summary>
    public string[] List(IReadOnlyList<string>? texts, string field, int maxCount, int maxLength)
    {
        string[] clean = [.. (texts ?? []).Select(PlainText.Clean).OfType<string>()];
        if (clean.Length > maxCount)
            Refusal ??= new Refusal(field, $"{field} takes at most {maxCount} entries; there were {clean.Length}.");
        return [.. clean.Select(text => Fit(text, field, maxLength))];
    }

    private string Fit(string text, string field, int maxLength)
    {
        if (text.Length > maxLength)
            Refusal ??= new Refusal(field, $"{field} has {text.Length} characters; at most {maxLength} are taken.");
        return text;
    }
}
