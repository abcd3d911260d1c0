using System.Globalization;
using System.Text;
using Catalogue.Domain.Articles;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Markdig;
using Markdig.Extensions.Footnotes;
using Markdig.Extensions.Tables;
using Markdig.Extensions.TaskLists;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Catalogue.Data.Articles;

/// <summary>
/// Takes a Markdown article (CommonMark with pipe tables, task lists and footnotes) apart along its syntax tree: front matter, sections, pictures,
/// component lists. All text is kept as written; raw HTML stays text, and nothing is fetched or run.
/// </summary>
public sealed class ArticleReader
{
    // The parser's time grows with the square of marks that are opened and never closed; nobody writes so many.
    private const int MaxLinks = 5000;
    private const int MaxMarks = 20_000;

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().UsePreciseSourceLocation().UsePipeTables().UseTaskLists().UseFootnotes().Build();

    private static readonly string[] FindingWords =
    [
        "finding", "findings", "conclusion", "conclusions", "verdict", "summary", "result", "results", "assessment", "weaknesses", "strengths", "criticism",
        "fazit", "ergebnis", "ergebnisse", "befund", "befunde", "bewertung", "zusammenfassung", "resultat", "kritik", "mangel", "schwachen",
        "bilan", "resultats", "constat", "constats", "avis", "synthese", "conclusiones", "resultado", "resultados", "hallazgos", "resumen", "veredicto",
        "结论", "總結", "总结", "结果", "評価", "まとめ", "結論", "所見", "考察",
    ];

    private static readonly string[] MethodWords =
    [
        "method", "methods", "methodology", "test setup", "setup", "how we test", "instruments", "methode", "messaufbau", "aufbau", "vorgehen", "messgerate",
        "methode de mesure", "instruments de mesure", "metodo", "instrumentos", "测试方法", "测试设备", "方法", "測定方法", "使用機器",
    ];

    private readonly string _body;
    private readonly MarkdownDocument _document;
    private readonly List<string> _warnings;
    private int _pictures;
    private int _lists;

    private ArticleReader(string body, MarkdownDocument document, List<string> warnings) => (_body, _document, _warnings) = (body, document, warnings);

    /// <summary>Takes an article apart; null with the reason where it cannot be.</summary>
    /// <param name="text">The text.</param>
    /// <param name="refusal">Why not, or null.</param>
    public static Article? Read(string text, out string? refusal)
    {
        ArgumentNullException.ThrowIfNull(text);
        refusal = null;
        var matter = FrontMatter.Of(text);
        var warnings = matter.Warnings.ToList();
        var facts = ArticleFacts.Of(matter, warnings);
        var body = text[matter.BodyStart..];
        if (body.AsSpan().Count("](") > MaxLinks || body.AsSpan().CountAny('[', '*', '_') > MaxMarks)
        {
            refusal = $"The article has more links or marks than a text that somebody wrote: more than {MaxLinks} links, or more than {MaxMarks} brackets, asterisks and underscores. Cut it into several.";
            return null;
        }

        try
        {
            var reader = new ArticleReader(body, Markdown.Parse(body, Pipeline), warnings);
            if (reader.Headings().Count() >= Article.MaxSections)
            {
                refusal = $"The article has more than {Article.MaxSections} headings; cut it into several.";
                return null;
            }

            var sections = reader.Sections();
            reader.WarnOfHtmlAndLinks();
            var title = reader.Headings().FirstOrDefault() is { Level: 1 } first ? reader.PlainText(first.Inline) : null;
            return new Article(facts.Or(new ArticleFacts(Cut(title, Revision.MaxTitleLength), null, null, null, null, null)), sections, warnings);
        }
        catch (ArgumentException)
        {
            // The parser's word for blocks nested deeper than anybody writes.
            refusal = "The article is nested deeper than it can be read. Lists in lists and quotes in quotes go some dozens deep.";
            return null;
        }
    }

    private static string? Cut(string? text, int longest) => Domain.Text.PlainText.Clean(text is null || text.Length <= longest ? text : text[..longest]);

    private IEnumerable<HeadingBlock> Headings() => _document.OfType<HeadingBlock>();

    private List<ArticleSection> Sections()
    {
        var starts = Headings().Select(heading => (Heading: (HeadingBlock?)heading, Start: heading.Span.Start, Text: Math.Min(_body.Length, heading.Span.End + 1))).ToList();
        if (starts.Count == 0 || !string.IsNullOrWhiteSpace(_body[..starts[0].Start]))
            starts.Insert(0, (null, 0, 0));
        var sections = new List<ArticleSection>();
        for (var i = 0; i < starts.Count; i++)
            sections.Add(Section(starts[i].Heading, starts[i].Text, i + 1 < starts.Count ? starts[i + 1].Start : _body.Length));
        return sections;
    }

    private ArticleSection Section(HeadingBlock? heading, int from, int to)
    {
        var blocks = _document.Where(block => block.Span.Start >= from && block.Span.Start < to && block is not (HeadingBlock or FootnoteGroup or LinkReferenceDefinitionGroup)).ToList();
        var inlines = blocks.SelectMany(Below).ToList();
        var words = heading is null ? null : Cut(PlainText(heading.Inline), 200);
        var pieces = new List<ArticlePiece>();
        var at = from;
        foreach (var (span, picture, list) in Marked(blocks, inlines, words).OrderBy(mark => mark.Span.Start))
        {
            // Pictures within a list went with it.
            if (span.Start < at)
                continue;
            pieces.Add(new ArticlePiece(_body[at..span.Start]));
            pieces.Add(new ArticlePiece(_body[span.Start..(span.End + 1)], picture, list));
            at = span.End + 1;
        }

        pieces.Add(new ArticlePiece(_body[at..to]));
        var notes = inlines.OfType<FootnoteLink>().Where(link => !link.IsBackLink).Select(link => link.Footnote).Distinct().ToList();
        // What a section refers to comes along, wherever in the article it stands.
        var far = notes.Select(SpanOf).Concat(inlines.OfType<LinkInline>().Select(link => link.Reference).OfType<LinkReferenceDefinition>().Distinct().Select(definition => definition.Span))
            .Where(span => !span.IsEmpty && (span.Start < from || span.Start >= to) && span.End < _body.Length);
        pieces.AddRange(far.Select(span => new ArticlePiece($"\n\n{_body[span.Start..(span.End + 1)]}")));
        var tasks = inlines.OfType<TaskList>().ToList();
        return new ArticleSection(
            words, heading?.Level ?? 0, Kind(words, pieces), [.. pieces.Where(piece => piece.Written.Length > 0)], tasks.Count(task => task.Checked), tasks.Count, notes.Count);
    }

    private IEnumerable<(SourceSpan Span, ArticlePicture? Picture, ArticleTable? List)> Marked(List<Block> blocks, List<MarkdownObject> inlines, string? heading)
    {
        foreach (var link in inlines.OfType<LinkInline>().Where(link => link.IsImage && !link.Span.IsEmpty))
        {
            var (path, refusal) = ArticlePicture.Locate(link.Url);
            yield return (link.Span, new ArticlePicture(_pictures++, link.Url ?? "", path, refusal, Cut(PlainText(link), 1000), Cut(link.Title, Photo.MaxCaptionLength)), null);
        }

        foreach (var table in blocks.OfType<Table>())
        {
            var text = ArticleTable.TextOf(table.OfType<TableRow>().Select(row => (IReadOnlyList<string>)[.. row.OfType<TableCell>().Select(CellText)]));
            if (ArticleTable.Read(text) is { } list)
                yield return (table.Span, null, new ArticleTable(_lists++, list.Rows.Count + list.Rejected.Count, Cut(PhotoNames.BoardIn(heading), Board.MaxNameLength), text));
        }
    }

    // The library knows where a note's label and its words stand, not the note as a whole.
    private SourceSpan SpanOf(Footnote note) =>
        note.LabelSpan.IsEmpty || note.LabelSpan.End >= _body.Length || _body.LastIndexOf('[', note.LabelSpan.Start) is not (>= 0 and var start)
            ? SourceSpan.Empty
            : new SourceSpan(start, Math.Max(note.LabelSpan.End, note.LastChild?.Span.End ?? 0));

    // The library starts below a block of blocks, and passes over the words of a block that holds words itself.
    private static IEnumerable<MarkdownObject> Below(Block block) => block is LeafBlock leaf ? leaf.Inline?.Descendants<Inline>() ?? [] : block.Descendants();

    private static ArticleSectionKind Kind(string? heading, List<ArticlePiece> pieces)
    {
        if (pieces.TrueForAll(piece => string.IsNullOrWhiteSpace(piece.Written)))
            return ArticleSectionKind.LeaveOut;
        var folded = PhotoWordsOf(heading);
        return FindingWords.Any(word => Says(folded, word)) ? ArticleSectionKind.Finding
            : MethodWords.Any(word => Says(folded, word)) ? ArticleSectionKind.Method
            : ArticleSectionKind.Step;

        static bool Says(string heading, string word) =>
            char.IsAscii(word[0]) ? $" {heading} ".Contains($" {word} ", StringComparison.Ordinal) : heading.Contains(word, StringComparison.Ordinal);
    }

    // Lower case, without marks, single blanks between words.
    private static string PhotoWordsOf(string? heading)
    {
        var folded = new StringBuilder();
        foreach (var character in (heading ?? "").Normalize(NormalizationForm.FormD))
        {
            if (char.GetUnicodeCategory(character) is not UnicodeCategory.NonSpacingMark)
                folded.Append(char.IsLetterOrDigit(character) ? char.ToLowerInvariant(character) : ' ');
        }

        return string.Join(' ', folded.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    private void WarnOfHtmlAndLinks()
    {
        var html = _document.Descendants<HtmlBlock>().Count() + _document.Descendants<HtmlInline>().Count();
        if (html > 0)
            _warnings.Add(string.Create(CultureInfo.InvariantCulture, $"{html} pieces of HTML stay in the text as they are written; pages show them as text and run nothing."));
        var inert = _document.Descendants<LinkInline>().Count(link => !link.IsImage && IsInert(link.Url));
        if (inert > 0)
            _warnings.Add(string.Create(CultureInfo.InvariantCulture, $"{inert} links lead to no page (javascript:, data: and the like); pages show their words without the link."));
        if (_document.Descendants<FencedCodeBlock>().Any(block => block.ClosingFencedCharCount == 0))
            _warnings.Add("A block of code is opened and never closed; it goes to the end of the article.");
    }

    private static bool IsInert(string? url) =>
        url is not null && url.IndexOf(':', StringComparison.Ordinal) is var colon and > 0 && url.AsSpan(0, colon).IndexOfAny('/', '?', '#') < 0
        && url[..colon].Trim().ToLowerInvariant() is not ("http" or "https" or "mailto");

    private static string CellText(TableCell cell)
    {
        var text = new StringBuilder();
        foreach (var paragraph in cell.OfType<LeafBlock>())
            Append(paragraph.Inline, text);
        return text.ToString();
    }

    private string PlainText(ContainerInline? inline)
    {
        var text = new StringBuilder();
        Append(inline, text);
        return text.ToString().Trim();
    }

    // The words without their marks; tags of raw HTML are no words.
    private static void Append(ContainerInline? container, StringBuilder text)
    {
        foreach (var inline in container ?? Enumerable.Empty<Inline>())
        {
            switch (inline)
            {
                case LiteralInline literal:
                    text.Append(literal.Content.AsSpan());
                    break;
                case CodeInline code:
                    text.Append(code.Content);
                    break;
                case HtmlEntityInline entity:
                    text.Append(entity.Transcoded.AsSpan());
                    break;
                case AutolinkInline link:
                    text.Append(link.Url);
                    break;
                case LineBreakInline:
                    text.Append(' ');
                    break;
                case ContainerInline inner:
                    Append(inner, text);
                    break;
            }
        }
    }
}
