using System.Text;

namespace Catalogue.Domain.Text;

/// <summary>Text as it is let in from outside.</summary>
public static class PlainText
{
    /// <summary>
    /// The text without what no field may hold: NUL, other control characters except tab and line breaks, and broken surrogates.
    /// Blanks at both ends go too; a text of which nothing is left is null.
    /// </summary>
    public static string? Clean(string? text)
    {
        if (text is null)
            return null;
        var clean = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                clean.Append(c).Append(text[++i]);
            else if (IsLetIn(c))
                clean.Append(c);
        }

        var trimmed = clean.ToString().Trim();
        return trimmed.Length > 0 ? trimmed : null;
    }

    /// <summary>True when the text holds something that no field may hold, so that cleaning would change what was meant.</summary>
    public static bool HoldsForbidden(string? text)
    {
        for (var i = 0; i < text?.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
                i++;
            else if (!IsLetIn(text[i]))
                return true;
        }

        return false;
    }

    private static bool IsLetIn(char c) => !char.IsSurrogate(c) && (!char.IsControl(c) || c is '\t' or '\n' or '\r');
}
