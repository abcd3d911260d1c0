using Catalogue.Domain.Components;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Quantities;

namespace Catalogue.Data.Families;

/// <summary>The text of a component that may lead to its family.</summary>
internal static class PartText
{
    private const int ShortestNumber = 5;

    /// <summary>The marking as read, else the part number, else a value that looks like one; the first of them with a letter or a digit. Null where there is none at all.</summary>
    public static string? Of(BoardComponent component)
    {
        string?[] texts = [component.MarkingAsRead, component.PartNumber, LooksLikeNumber(component.Value) ? component.Value : null];
        return texts.FirstOrDefault(text => text is not null && MarkingFold.Line(text).Any(char.IsAsciiLetterOrDigit)) ?? texts.FirstOrDefault(text => text is not null);
    }

    // One word of letters and digits, two of each at least, that is no quantity: lists often have the number of a chip where the value of a resistor stands.
    private static bool LooksLikeNumber(string? value) =>
        value is not null && value.Trim() is { Length: >= ShortestNumber } word
        && !word.Any(char.IsWhiteSpace) && word.Count(char.IsAsciiLetter) >= 2 && word.Count(char.IsAsciiDigit) >= 2
        && IdentifyComponent.Read(word) is not null
        && QuantityParser.Read(word, PartKind.NotSaid) is QuantityReading.Refused;
}
