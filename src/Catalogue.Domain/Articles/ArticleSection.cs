namespace Catalogue.Domain.Articles;

/// <summary>A heading of an article with the text up to the next one.</summary>
/// <param name="Heading">The heading as plain text; null for the text above the first heading.</param>
/// <param name="Level">1 to 6, or 0 without a heading.</param>
/// <param name="Kind">What it becomes unless a person says otherwise.</param>
/// <param name="Pieces">Its text in order. Joined as written they are the section's source, with the notes and addresses that it refers to.</param>
/// <param name="TasksDone">How many items of task lists are ticked.</param>
/// <param name="Tasks">How many items of task lists there are.</param>
/// <param name="Footnotes">How many footnotes it refers to.</param>
public sealed record ArticleSection(string? Heading, int Level, ArticleSectionKind Kind, IReadOnlyList<ArticlePiece> Pieces, int TasksDone, int Tasks, int Footnotes)
{
    /// <summary>The pictures in it.</summary>
    public IEnumerable<ArticlePicture> Pictures => Pieces.Select(piece => piece.Picture).OfType<ArticlePicture>();

    /// <summary>The tables in it that read as component lists.</summary>
    public IEnumerable<ArticleTable> Lists => Pieces.Select(piece => piece.List).OfType<ArticleTable>();

    /// <summary>The section's Markdown, each picture and list as the caller writes it.</summary>
    /// <param name="write">Gives the text for a piece that is a picture or a list; null leaves it as it was written.</param>
    public string Markdown(Func<ArticlePiece, string?> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        return string.Concat(Pieces.Select(piece => piece is { Picture: null, List: null } ? piece.Written : write(piece) ?? piece.Written)).Trim();
    }
}
