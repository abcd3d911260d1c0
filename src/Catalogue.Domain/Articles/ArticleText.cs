using Catalogue.Domain.Components.Lists;

namespace Catalogue.Domain.Articles;

/// <summary>The bytes of an article as text: what came of reading them.</summary>
public abstract record ArticleText
{
    /// <summary>The longest article, in bytes.</summary>
    public const int MaxBytes = 1024 * 1024;

    private ArticleText()
    {
    }

    /// <summary>The text was read.</summary>
    /// <param name="Text">The text as written, line ends included; only control characters are taken out.</param>
    /// <param name="Encoding">IANA name of the encoding that was taken.</param>
    /// <param name="Warnings">What a person should know, such as that the encoding is a guess.</param>
    public sealed record Read(string Text, string Encoding, IReadOnlyList<string> Warnings) : ArticleText;

    /// <summary>It is no text.</summary>
    /// <param name="Reason">Why, and what would be right.</param>
    public sealed record Refused(string Reason) : ArticleText;

    /// <summary>Reads an article; its encoding is found as that of a component list is.</summary>
    /// <param name="content">The bytes.</param>
    /// <param name="encoding">IANA name of an encoding that a person chose, or null to find it out.</param>
    public static ArticleText Decode(ReadOnlySpan<byte> content, string? encoding = null)
    {
        if (content.IsEmpty)
            return new Refused("The article is empty.");
        if (content.Length > MaxBytes)
            return new Refused($"The article is longer than {MaxBytes / (1024 * 1024)} MiB; that is no text that somebody wrote.");
        if (ListText.Signature(content) is { } kind)
            return new Refused($"The content is {kind}, not a text. Save the article as Markdown (.md).");
        var (text, refusal) = ListText.Decode(content, encoding);
        if (text is null)
            return new Refused(encoding is null ? "The content is binary, not a text. Save the article as Markdown (.md)." : refusal!);
        return string.IsNullOrWhiteSpace(text.Text) ? new Refused("The article holds nothing but blanks.") : new Read(text.Text, text.Encoding, text.Warnings);
    }
}
