using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using Catalogue.Site.Markdown;

namespace Catalogue.Site.Tests.Markdown;

public sealed class SafeMarkdownTests : IDisposable
{
    private readonly SafeMarkdown _markdown = new();

    public void Dispose() => _markdown.Dispose();

    [Fact]
    public void Render_HostileNote_LeavesOnlyItsWords()
    {
        var body = Render(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Samples", "Text", "note-02-hostile.md")));
        AssertHarmless(body);
        Assert.Empty(body.QuerySelectorAll("img"));
        Assert.Empty(body.QuerySelectorAll("a"));
        Assert.Contains("click me", body.TextContent, StringComparison.Ordinal);
        Assert.Contains("fence that is never closed", body.QuerySelector("pre")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[a](javascript:alert(1))")]
    [InlineData("[a](JaVaScRiPt:alert(1))")]
    [InlineData("[a](java&#10;script:alert(1))")]
    [InlineData("[a](&#106;avascript:alert(1))")]
    [InlineData("<javascript:alert(1)>")]
    [InlineData("[a](vbscript:x)")]
    [InlineData("![a](data:image/svg+xml;base64,PHN2Zz4=)")]
    [InlineData("[a](data:text/html,x)")]
    [InlineData("# h {onclick=\"alert(1)\"}")]
    [InlineData("text {onmouseover=alert(1) .big #main}")]
    [InlineData("<div onclick=\"x\">a</div>")]
    [InlineData("<svg/onload=alert(1)>")]
    [InlineData("<a href='https://a.example' style='position:fixed'>a</a>")]
    [InlineData("[a][r]\n\n[r]: javascript:alert(1)")]
    [InlineData("![a][r]\n\n[r]: https://far.example/p.gif")]
    [InlineData("<style>body{display:none}</style>")]
    [InlineData("| a |\n|---|\n| <script>x</script> |")]
    [InlineData("[^1]\n\n[^1]: <iframe src=x></iframe> [a](javascript:x)")]
    public void Render_Attack_IsHarmless(string attack) => AssertHarmless(Render(attack));

    [Theory]
    [InlineData("[a](//far.example/x)")]
    [InlineData("[a](/\\far.example/x)")]
    [InlineData("[a](relative/path)")]
    [InlineData("[a](ftp://far.example/x)")]
    [InlineData("[a](file:///etc/passwd)")]
    public void Render_LinkThatLeadsNowhereGood_KeepsTheWordsAlone(string text)
    {
        var body = Render(text);
        Assert.Empty(body.QuerySelectorAll("a"));
        Assert.Equal("a", body.TextContent.Trim());
    }

    [Theory]
    [InlineData("[a](https://bench.example/x)", "https://bench.example/x")]
    [InlineData("<https://bench.example/x>", "https://bench.example/x")]
    [InlineData("see https://bench.example/x", "https://bench.example/x")]
    [InlineData("[a](mailto:desk@bench.example)", "mailto:desk@bench.example")]
    public void Render_LinkAbroad_SaysThatWeDoNotVouchForIt(string text, string address)
    {
        var link = Assert.Single(Render(text).QuerySelectorAll("a"));
        Assert.Equal(address, link.GetAttribute("href"));
        Assert.Equal("nofollow noopener ugc", link.GetAttribute("rel"));
        Assert.Null(link.GetAttribute("target"));
    }

    [Theory]
    [InlineData("[a](/families/ytq65)", "/families/ytq65")]
    [InlineData("[a](#margins)", "#margins")]
    public void Render_LinkWithinTheSite_StaysAsItIs(string text, string address)
    {
        var link = Assert.Single(Render(text).QuerySelectorAll("a"));
        Assert.Equal(address, link.GetAttribute("href"));
        Assert.Null(link.GetAttribute("rel"));
    }

    [Theory]
    [InlineData("![the fuse](https://far.example/p.gif)")]
    [InlineData("![the fuse](../../../outside.png)")]
    [InlineData("![the fuse](/media/../api/v1/x)")]
    [InlineData("![the fuse](//far.example/p.gif)")]
    public void Render_PictureFromElsewhere_KeepsItsWords(string text)
    {
        var body = Render(text);
        Assert.Empty(body.QuerySelectorAll("img"));
        Assert.Equal("the fuse", body.TextContent.Trim());
    }

    [Fact]
    public void Render_OwnPicture_IsShown()
    {
        var picture = Assert.Single(Render("![the fuse](/media/ab/480.jpg)").QuerySelectorAll("img"));
        Assert.Equal("/media/ab/480.jpg", picture.GetAttribute("src"));
        Assert.Equal("the fuse", picture.GetAttribute("alt"));
    }

    [Fact]
    public void Render_Headings_StandBelowThoseOfThePage()
    {
        var body = Render("# one\n\n## two\n\nthree\n=====\n\n##### five\n\n###### six");
        Assert.Equal(["H3", "H4", "H3", "H6", "H6"], body.QuerySelectorAll("h1,h2,h3,h4,h5,h6").Select(heading => heading.TagName));
    }

    [Fact]
    public void Render_Extensions_AreThere()
    {
        var body = Render("| part | V |\n|---|--:|\n| C1 | 25 |\n\n- [x] done\n- [ ] open\n\nTerm\n:   its meaning\n\nNote[^1]\n\n[^1]: below");
        Assert.Equal("25", body.QuerySelector("td.right")!.TextContent);
        Assert.Equal(2, body.QuerySelectorAll("li input[type=checkbox][disabled]").Length);
        Assert.Equal("Term", body.QuerySelector("dl > dt")!.TextContent);
        Assert.NotNull(body.QuerySelector("div.footnotes"));
        Assert.Empty(body.QuerySelectorAll("[style]"));
    }

    [Fact]
    public void Render_FootnotesOfTwoTexts_DoNotShareIds()
    {
        var ids = new[] { "one[^1]\n\n[^1]: a", "two[^1]\n\n[^1]: b" }
            .Select(Render)
            .Select(body =>
            {
                var own = body.QuerySelectorAll("[id]").Select(element => element.Id!).ToList();
                Assert.NotEmpty(own);
                Assert.All(body.QuerySelectorAll("a[href^='#']"), link => Assert.Contains(link.GetAttribute("href")![1..], own));
                return own;
            })
            .ToList();
        Assert.Empty(ids[0].Intersect(ids[1]));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(" \n ")]
    public void Render_Nothing_IsEmpty(string? text) => Assert.True(string.IsNullOrEmpty(_markdown.Render(text).Value));

    [Fact]
    public void Render_SameTextTwice_IsMadeOnce() => Assert.Same(_markdown.Render("*one*").Value, _markdown.Render("*one*").Value);

    [Fact]
    public void Render_NestedBeyondReason_IsShownAsTyped()
    {
        var body = Render(new string('>', 20_000) + " deep <b>");
        AssertHarmless(body);
        Assert.EndsWith("> deep <b>", body.TextContent, StringComparison.Ordinal);
    }

    private IElement Render(string text) => new HtmlParser().ParseDocument($"<body>{_markdown.Render(text).Value}</body>").Body!;

    private static void AssertHarmless(IElement body)
    {
        Assert.Empty(body.QuerySelectorAll("script,style,iframe,object,embed,form,svg,link,meta,base,h1,h2"));
        foreach (var attribute in body.QuerySelectorAll("*").SelectMany(element => element.Attributes))
        {
            Assert.False(attribute.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase), attribute.Name);
            Assert.NotEqual("style", attribute.Name);
            if (attribute.Name is "href" or "src")
                Assert.Matches("^(https?:|mailto:|/(?![/\\\\])|#)", attribute.Value);
        }

        Assert.All(body.QuerySelectorAll("img"), picture => Assert.StartsWith("/media/", picture.GetAttribute("src"), StringComparison.Ordinal));
    }
}
