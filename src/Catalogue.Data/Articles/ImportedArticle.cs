using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Articles;

/// <summary>The article that a teardown was opened from, as it was read. Kept for ever beside what was made of it; never public.</summary>
public sealed class ImportedArticle
{
    /// <summary>Longest name of its file.</summary>
    public const int MaxFileNameLength = 255;

    /// <summary>The teardown.</summary>
    public required TeardownId TeardownId { get; init; }

    /// <summary>The run that opened it; a run opens one.</summary>
    public required Guid RunId { get; init; }

    /// <summary>The name of its file as it came, or null.</summary>
    public string? FileName { get; init; }

    /// <summary>IANA name of the encoding in which it was read.</summary>
    public required string Encoding { get; init; }

    /// <summary>The text, whole.</summary>
    public required string Text { get; init; }

    /// <summary>SHA-256 of the text in UTF-8, lower-case hex: the same article is known again.</summary>
    public required string Sha256 { get; init; }

    /// <summary>When it was brought in.</summary>
    public required DateTimeOffset ImportedAt { get; init; }
}
