using System.Text;
using Catalogue.Data.Articles;
using Catalogue.Domain.Articles;
using Catalogue.Domain.Products;

namespace Catalogue.Data.Tests.Articles;

public sealed class ArticleReaderTests
{
    private const string Complete = """
        ---
        title: "Taken apart: the Slate 65"
        brand: Wexley
        product: Slate 65
        model: WS-65
        category: Ladegerät
        date: 2024-05-03
        tags: [gan, "two ports"]
        ---
        # First look

        Mass **118 g**[^1], see [the label][label].

        - [x] opened
        - [ ] photo of the back

        ![board, top](photos/top%20side.jpg "The top")

        ## Main board

        | Ref | Value | Part number |
        |-----|-------|-------------|
        | C1  | 68uF/63V \| 105 °C | |
        | Q2, Q3 | | NVX204 |

        After the list.

        ## What we measured

        | Load | Voltage |
        |-----:|--------:|
        | 1 A  | 20.1 V |

        ## Fazit

        Solid.

        ## Empty one

        [^1]: With its cable.

        [label]: https://lab.example/label "Label"
        """;

    [Fact]
    public void Read_WholeArticle_ComesApart()
    {
        var article = Read(Complete);

        Assert.Equal(new ArticleFacts("Taken apart: the Slate 65", "Wexley", "Slate 65", "WS-65", ProductCategory.Charger, new DateOnly(2024, 5, 3)), article.Facts);
        Assert.Empty(article.Facts.Missing);
        Assert.Equal(["First look", "Main board", "What we measured", "Fazit", "Empty one"], article.Sections.Select(section => section.Heading));
        Assert.Equal(
            [ArticleSectionKind.Step, ArticleSectionKind.Step, ArticleSectionKind.Step, ArticleSectionKind.Finding],
            article.Sections.Take(4).Select(section => section.Kind));
        Assert.Equal((1, 2, 1), (article.Sections[0].TasksDone, article.Sections[0].Tasks, article.Sections[0].Footnotes));
        var picture = Assert.Single(article.Pictures);
        Assert.Equal((0, "photos/top side.jpg", null, "board, top", "The top"), (picture.Index, picture.Path, picture.Refusal, picture.Words, picture.Title));
        var list = Assert.Single(article.Lists);
        Assert.Equal((2, "Main board"), (list.Rows, list.Board));
        Assert.Contains("68uF/63V | 105 °C", list.Text, StringComparison.Ordinal);
        Assert.Contains("| 1 A  | 20.1 V |", Markdown(article.Sections[2]), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_NotesAndAddressesFarAway_ComeAlongWithTheirSection()
    {
        var first = Markdown(Read(Complete).Sections[0]);

        Assert.Contains("[^1]: With its cable.", first, StringComparison.Ordinal);
        Assert.Contains("[label]: https://lab.example/label", first, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_Pieces_AreTheSourceAsWritten()
    {
        var article = Read(Complete);

        foreach (var section in article.Sections.Take(4))
            Assert.All(section.Pieces, piece => Assert.Contains(piece.Written.Trim(), Complete, StringComparison.Ordinal));
        Assert.Equal("After the list.", article.Sections[1].Markdown(_ => ""));
        Assert.StartsWith("Mass **118 g**[^1]", article.Sections[0].Markdown(_ => ""), StringComparison.Ordinal);
        Assert.DoesNotContain("photos/", article.Sections[0].Markdown(_ => ""), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_WindowsLineEnds_ChangeNothing()
    {
        var article = Read(Complete.ReplaceLineEndings("\r\n"));

        Assert.Equal("Taken apart: the Slate 65", article.Facts.Title);
        Assert.Equal(2, Assert.Single(article.Lists).Rows);
        Assert.Equal("After the list.", article.Sections[1].Markdown(_ => ""));
        Assert.Equal("photos/top side.jpg", Assert.Single(article.Pictures).Path);
    }

    [Fact]
    public void Read_UnderlinedHeadingAndNoFrontMatter_GivesATitleAndAsksForTheRest()
    {
        var article = Read("""
            Gerät geöffnet
            ==============

            1. Deckel lösen
            2. Kühlkörper abziehen

            	eine Zeile mit Tabulator

            Fußnote[^1]

            [^1]: Abstand 6,4 mm
            """);

        var section = Assert.Single(article.Sections);
        Assert.Equal(("Gerät geöffnet", "Gerät geöffnet", 1), (section.Heading, article.Facts.Title, section.Footnotes));
        Assert.Equal(["brand", "name", "model", "category"], article.Facts.Missing);
        var text = Markdown(section);
        Assert.StartsWith("1. Deckel lösen", text, StringComparison.Ordinal);
        Assert.EndsWith("[^1]: Abstand 6,4 mm", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_HostileArticle_KeepsItsTextAndLooksForNothingOutside()
    {
        var article = Read("""
            # Notes <img src=x onerror="alert(1)">

            <script>document.title='changed'</script>

            [click](javascript:alert(1)) and [data](data:text/html;base64,AAAA)

            ![up](../../../outside.png)
            ![up again](%2e%2e/outside.png)
            ![far](http://tracker.example/pixel.gif)
            ![root](/etc/passwd) ![drive](C:\a.png) ![inline](data:image/png;base64,AAAA) ![share](//host/a.png)

            ```
            a fence that is never closed
            | a | b |
            """);

        Assert.Equal("Notes", article.Facts.Title);
        Assert.All(article.Pictures, picture => Assert.Null(picture.Path));
        Assert.All(article.Pictures, picture => Assert.NotNull(picture.Refusal));
        Assert.Equal(7, article.Pictures.Count());
        Assert.Empty(article.Lists);
        Assert.Contains("<script>", Markdown(article.Sections[0]), StringComparison.Ordinal);
        Assert.Contains(article.Warnings, warning => warning.StartsWith("2 links", StringComparison.Ordinal));
        Assert.Contains(article.Warnings, warning => warning.Contains("never closed", StringComparison.Ordinal));
        Assert.Contains(article.Warnings, warning => warning.Contains("HTML", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_TextAboveTheFirstHeading_IsASectionOfItsOwn()
    {
        var article = Read("Bought in a shop.\n\n## Open\n\nFour screws.\n");

        Assert.Equal([null, "Open"], article.Sections.Select(section => section.Heading));
        Assert.Equal("Bought in a shop.", Markdown(article.Sections[0]));
        Assert.Null(article.Facts.Title);
    }

    [Fact]
    public void Read_TooDeepOrTooMany_IsRefused()
    {
        Assert.Null(ArticleReader.Read(new string('>', 20_000) + "a", out var deep));
        Assert.NotNull(deep);
        Assert.Null(ArticleReader.Read(string.Concat(Enumerable.Range(0, 600).Select(i => $"# {i}\n\n")), out var many));
        Assert.Contains("500", many, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[a](")]
    [InlineData("![a](")]
    [InlineData("**a ")]
    [InlineData("_*a")]
    [InlineData("[")]
    public void Read_MarksWithoutEnd_AreRefusedAtOnce(string mark)
    {
        Assert.Null(ArticleReader.Read(string.Concat(Enumerable.Repeat(mark, 100_000)), out var refusal));
        Assert.Contains("Cut it into several", refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_DamagedArticles_ComeApartOrAreRefused()
    {
        var random = new Random(20_260_317);
        string[] grafts = ["[", "](", "![", "|", "\n---\n", "```", "<", "\0", "\ud83d", "[^1]", "    ", "\t", ">", "# ", "- [x] ", "\r"];
        for (var i = 0; i < 2000; i++)
        {
            var text = new StringBuilder(Complete);
            for (var cuts = random.Next(1, 8); cuts > 0; cuts--)
            {
                var at = random.Next(text.Length);
                if (random.Next(2) == 0)
                    text.Remove(at, Math.Min(random.Next(60), text.Length - at));
                else
                    text.Insert(at, grafts[random.Next(grafts.Length)]);
            }

            if (ArticleReader.Read(text.ToString(), out var refusal) is { } article)
                Assert.All(article.Sections, section => Assert.NotNull(Markdown(section)));
            else
                Assert.NotNull(refusal);
        }
    }

    private static Article Read(string text)
    {
        var article = ArticleReader.Read(text, out var refusal);
        Assert.Null(refusal);
        return article!;
    }

    private static string Markdown(ArticleSection section) => section.Markdown(_ => null);
}
