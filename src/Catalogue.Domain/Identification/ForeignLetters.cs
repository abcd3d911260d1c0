using System.Collections.Frozen;
using System.Text;

namespace Catalogue.Domain.Identification;

/// <summary>Letters of other alphabets that look like Latin ones. They make candidates; they never make two numbers one.</summary>
/// <remarks>House rule: capitals of Greek and Cyrillic whose printed shape is that of a Latin capital, after Unicode Technical Standard 39.</remarks>
public static class ForeignLetters
{
    /// <summary>The foreign capitals, in the order of <see cref="LatinShapes"/>.</summary>
    public const string Letters = "ΑΒΕΖΗΙΚΜΝΟΡΤΥΧАВЕЅІЈКМНОРСТУХҮԌԚԜՏՕ";

    /// <summary>The Latin capital each looks like.</summary>
    public const string LatinShapes = "ABEZHIKMNOPTYXABESIJKMHOPCTYXYGQWSO";

    private static readonly FrozenDictionary<char, char> Shapes =
        Letters.Select((letter, i) => KeyValuePair.Create(letter, LatinShapes[i])).ToFrozenDictionary();

    /// <summary>The Latin capital that a foreign capital looks like, or null.</summary>
    public static char? Shape(char letter) => Shapes.TryGetValue(letter, out var shape) ? shape : null;

    /// <summary>The text with each foreign capital put as the Latin one it looks like; the text itself where there is none.</summary>
    public static string ToLatinShapes(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        StringBuilder? folded = null;
        for (var i = 0; i < text.Length; i++)
        {
            if (Shape(text[i]) is not { } shape)
                continue;
            folded ??= new StringBuilder(text);
            folded[i] = shape;
        }

        return folded?.ToString() ?? text;
    }
}
