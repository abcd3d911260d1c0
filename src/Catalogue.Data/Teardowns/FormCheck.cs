using Catalogue.Domain.Quantities;
using Catalogue.Domain.Text;

namespace Catalogue.Data.Teardowns;

/// <summary>Cleans the texts of a form and checks its numbers one after the other, and keeps the first thing that is wrong with them.</summary>
/// <param name="refusesControls">True to refuse a text with characters that no field may hold; else they fall out.</param>
internal sealed class FormCheck(bool refusesControls = false)
{
    /// <summary>The first thing that is wrong, or null.</summary>
    public Refusal? Refusal { get; private set; }

    /// <summary>A text that must be there; empty when it is refused.</summary>
    public string Need(string? text, string field, int maxLength)
    {
        var clean = Clean(text, field) ?? "";
        if (clean.Length == 0)
            Refusal ??= new Refusal(field, $"{field} is empty; give it a text of 1 to {maxLength} characters.");
        return Fit(clean, field, maxLength);
    }

    /// <summary>A text that may be missing; blank is missing.</summary>
    public string? May(string? text, string field, int maxLength) => Clean(text, field) is { } clean ? Fit(clean, field, maxLength) : null;

    /// <summary>A list of short texts; blank ones fall out.</summary>
    public string[] List(IReadOnlyList<string>? texts, string field, int maxCount, int maxLength)
    {
        string[] clean = [.. (texts ?? []).Select(PlainText.Clean).OfType<string>()];
        if (clean.Length > maxCount)
            Refusal ??= new Refusal(field, $"{field} takes at most {maxCount} entries; there were {clean.Length}.");
        return [.. clean.Select(text => Fit(text, field, maxLength))];
    }

    /// <summary>A number that may be missing, from <paramref name="least"/> to <paramref name="most"/>.</summary>
    public void Between(double? value, string field, double least, double most)
    {
        if (value is { } number && !(number >= least && number <= most))
            Refusal ??= new Refusal(field, $"{field} is a number from {QuantityText.Number(least)} to {QuantityText.Number(most)}.");
    }

    /// <summary>A number that may be missing, above zero and at most <paramref name="most"/>.</summary>
    public void AboveZero(double? value, string field, double most)
    {
        if (value is { } number && !(number > 0 && number <= most))
            Refusal ??= new Refusal(field, $"{field} is a number above 0 and at most {QuantityText.Number(most)}.");
    }

    /// <summary>The three cases of a quantity, where the ends are the value itself when not given; null when no value is.</summary>
    /// <param name="low">The lowest case.</param>
    /// <param name="nominal">The value.</param>
    /// <param name="high">The highest case.</param>
    /// <param name="unit">The unit at the end of the three fields' names.</param>
    public Interval? Cases(double? low, double? nominal, double? high, string unit)
    {
        if (nominal is not { } value)
        {
            if (low is not null || high is not null)
                Refusal ??= new Refusal($"nominal_{unit}", $"low_{unit} and high_{unit} need nominal_{unit} between them.");
            return null;
        }

        var made = Interval.TryCreate(low ?? value, value, high ?? value);
        if (made is null)
            Refusal ??= new Refusal($"nominal_{unit}", $"low_{unit}, nominal_{unit} and high_{unit} are finite numbers in that order.");
        return made;
    }

    private string? Clean(string? text, string field)
    {
        if (refusesControls && PlainText.HoldsForbidden(text))
            Refusal ??= new Refusal(field, $"{field} holds a control character or half of a character; take it out.");
        return PlainText.Clean(text);
    }

    private string Fit(string text, string field, int maxLength)
    {
        if (text.Length > maxLength)
            Refusal ??= new Refusal(field, $"{field} has {text.Length} characters; at most {maxLength} are taken.");
        return text;
    }
}
