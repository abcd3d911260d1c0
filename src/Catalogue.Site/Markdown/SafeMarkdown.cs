using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using AngleSharp.Dom;
using Ganss.Xss;
using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.Caching.Memory;

namespace Catalogue.Site.Markdown;

/// <summary>
/// Turns the prose of findings, steps and methods into HTML that can do nothing but be read. Two independent fences: the syntax tree loses links
/// and pictures that lead where they should not, and the HTML made of it passes a sanitiser with a short list of what it may hold.
/// </summary>
public sealed class SafeMarkdown : IDisposable
{
    /// <summary>Longer texts are cut there; no field holds as much.</summary>
    public const int MaxLength = 200_000;

    // Prose stands under a page's own h1 and a section's h2.
    private const int HeadingShift = 2;
    private const string OwnPictures = "/media/";

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables()
        .UseTaskLists()
        .UseAutoLinks()
        .UseFootnotes()
        .UseDefinitionLists()
        .DisableHtml()
        .Build();

    private readonly MemoryCache _made = new(new MemoryCacheOptions { SizeLimit = 16 * 1024 * 1024 });
    private readonly HtmlSanitizer _sanitiser = Sanitiser();

    /// <summary>The HTML of a text; empty for null or blank text. The same text gives the same HTML, whoever asks.</summary>
    public MarkupString Render(string? markdown)
    {
        if (string.IsNullOrWhiteSpace(markdown))
            return default;
        var text = markdown.Length > MaxLength ? markdown[..MaxLength] : markdown;
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
        if (_made.Get<string>(hash) is { } made)
            return new MarkupString(made);
        var html = Make(text, hash[..8]);
        _made.Set(hash, html, new MemoryCacheEntryOptions { Size = (2 * html.Length) + 256 });
        return new MarkupString(html);
    }

    /// <inheritdoc />
    public void Dispose() => _made.Dispose();

    private string Make(string text, string mark)
    {
        if (Parse(text) is not { } document)
            return $"<p>{HtmlEncoder.Default.Encode(text)}</p>";
        foreach (var heading in document.Descendants<HeadingBlock>())
            heading.Level = Math.Min(6, heading.Level + HeadingShift);
        foreach (var link in document.Descendants<LinkInline>().ToList())
        {
            if (!(link.IsImage ? IsOwnPicture(link.Url) : IsAllowedLink(link.Url)))
                Unwrap(link);
        }

        foreach (var link in document.Descendants<AutolinkInline>().ToList())
        {
            if (!link.IsEmail && !IsAllowedLink(link.Url))
                link.ReplaceBy(new LiteralInline(link.Url));
        }

        var fragment = _sanitiser.SanitizeDom(document.ToHtml(Pipeline));
        var body = fragment.Body!;
        foreach (var link in body.QuerySelectorAll("a[href]"))
        {
            if (IsAbroad(link.GetAttribute("href")))
                link.SetAttribute("rel", "nofollow noopener ugc");
        }

        // Footnotes number themselves from 1 in every text, and several texts stand on one page.
        foreach (var named in body.QuerySelectorAll("[id]"))
            named.Id = $"{named.Id?.Replace(':', '-')}-{mark}";
        foreach (var link in body.QuerySelectorAll("a[href^='#fn']"))
            link.SetAttribute("href", $"{link.GetAttribute("href")!.Replace(':', '-')}-{mark}");
        return body.InnerHtml;
    }

    // Null for a text nested deeper than anybody writes; it is shown as it was typed.
    private static MarkdownDocument? Parse(string text)
    {
        try
        {
            return Markdig.Markdown.Parse(text, Pipeline);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    // The words of a link or a picture stay, the way there goes.
    private static void Unwrap(LinkInline link)
    {
        if (link.FirstChild is null)
            link.Remove();
        else
            link.ReplaceBy(new ContainerInline(), copyChildren: true);
    }

    private static bool IsOwnPicture(string? url) => url is not null && url.StartsWith(OwnPictures, StringComparison.Ordinal) && !url.Contains("..", StringComparison.Ordinal);

    // A path from this site's root, a place on the page, or an address that says its scheme. Not //host, and no path that hangs on the page's own.
    private static bool IsAllowedLink(string? url) => url is not null && (IsAbroad(url) || url.StartsWith('#') || (url.StartsWith('/') && !url.StartsWith("//", StringComparison.Ordinal) && !url.StartsWith("/\\", StringComparison.Ordinal)));

    private static bool IsAbroad(string? url) =>
        Uri.TryCreate(url, UriKind.Absolute, out var uri) && (uri.Scheme == Uri.UriSchemeHttp || uri.Scheme == Uri.UriSchemeHttps || uri.Scheme == Uri.UriSchemeMailto) && !url.StartsWith('/');

    private static HtmlSanitizer Sanitiser()
    {
        var options = new HtmlSanitizerOptions
        {
            AllowedTags = new HashSet<string>(StringComparer.OrdinalIgnoreCase)
            {
                "h3", "h4", "h5", "h6", "p", "br", "hr", "em", "strong", "del", "sub", "sup", "code", "pre", "blockquote", "ul", "ol", "li", "dl", "dt", "dd",
                "table", "thead", "tbody", "tr", "th", "td", "a", "img", "input", "div",
            },
            AllowedAttributes = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { "href", "src", "alt", "title", "start", "type", "checked", "disabled", "id", "class" },
            AllowedSchemes = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { "http", "https", "mailto" },
            UriAttributes = new HashSet<string>(StringComparer.OrdinalIgnoreCase) { "href", "src" },
        };
        var sanitiser = new HtmlSanitizer(options) { KeepChildNodes = false };
        sanitiser.AllowedClasses.Add("footnotes");
        sanitiser.AllowedClasses.Add("right");
        // The policy of the pages forbids style attributes, and numbers in tables stand right all the same.
        sanitiser.RemovingAttribute += (_, attribute) =>
        {
            if (attribute.Attribute.Name == "style" && attribute.Attribute.Value.Contains("text-align: right", StringComparison.Ordinal))
                attribute.Tag.ClassList.Add("right");
        };
        return sanitiser;
    }
}
