using Catalogue.Domain.Articles;
using CsCheck;

namespace Catalogue.Domain.Tests.Articles;

public sealed class FrontMatterTests
{
    [Fact]
    public void Of_KeysAsPeopleWriteThem_AreRead()
    {
        const string Text = """
            ---
            # a comment
            title: Sample, 65 W brick
            Brand: "Wexley: \"the\" one"   # with a comment
            model: 'WS''65'
            note: plain # comment
            tags: [gan, "2 ports, USB-C", 'x']
            ports:
              - USB-C
              - USB-A
            empty:
            nothing: ~
            ---
            The text.
            """;

        var matter = FrontMatter.Of(Text);

        Assert.Equal("Sample, 65 W brick", matter.Value("title"));
        Assert.Equal("Wexley: \"the\" one", matter.Value("brand"));
        Assert.Equal("WS'65", matter.Value("model"));
        Assert.Equal("plain", matter.Value("note"));
        Assert.Equal(["gan", "2 ports, USB-C", "x"], matter.Values("tags"));
        Assert.Equal(["USB-C", "USB-A"], matter.Values("ports"));
        Assert.Null(matter.Value("empty"));
        Assert.Null(matter.Value("nothing"));
        Assert.Equal("The text.", Text[matter.BodyStart..]);
        Assert.Empty(matter.Warnings);
    }

    [Theory]
    [InlineData("no block", 0)]
    [InlineData("", 0)]
    [InlineData("--- \n", 1)]
    [InlineData("---\ntitle: never closed\n\ntext", 1)]
    [InlineData("---\n  nested: x\na:b\n---\n", 2)]
    [InlineData("---\ntitle: a\ntitle: b\ntext: |\n---\n", 2)]
    public void Of_WhatIsNotRead_IsSaid(string text, int warnings) => Assert.Equal(warnings, FrontMatter.Of(text).Warnings.Count);

    [Fact]
    public void Of_AnyText_EndsWithinIt() => Gen.String[Gen.Char["-\n\r:#[]\"' ab,"], 0, 60].Sample(text =>
    {
        var matter = FrontMatter.Of("---\n" + text);

        Assert.InRange(matter.BodyStart, 0, text.Length + 4);
        Assert.All(matter.Keys, key => Assert.NotNull(matter.Values(key)));
    });
}
