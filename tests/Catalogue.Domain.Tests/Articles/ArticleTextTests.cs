using System.Text;
using Catalogue.Domain.Articles;

namespace Catalogue.Domain.Tests.Articles;

public sealed class ArticleTextTests
{
    [Theory]
    [InlineData("UTF-8")]
    [InlineData("UTF-16LE")]
    [InlineData("windows-1252")]
    public void Decode_UsualEncodings_AreFound(string name)
    {
        const string Text = "# Gerät\r\n\r\n20,1 V – gemessen\r\n";
        Encoding encoding = name switch
        {
            "UTF-8" => new UTF8Encoding(true),
            "UTF-16LE" => new UnicodeEncoding(false, true),
            _ => CodePagesEncodingProvider.Instance.GetEncoding(1252)!,
        };

        var read = Assert.IsType<ArticleText.Read>(ArticleText.Decode([.. encoding.GetPreamble(), .. encoding.GetBytes(Text)]));

        Assert.Equal((Text, name), (read.Text, read.Encoding));
        Assert.Equal(name == "windows-1252", read.Warnings.Count > 0);
    }

    [Fact]
    public void Decode_WhatIsNoText_IsRefused()
    {
        byte[][] contents = [[], "   \n\t"u8.ToArray(), [0x89, (byte)'P', (byte)'N', (byte)'G', 0, 1, 2], [.. "%PDF-1.7"u8], [.. Enumerable.Range(0, 400).Select(i => (byte)(i % 7))], new byte[ArticleText.MaxBytes + 1]];

        Assert.All(contents, content => Assert.IsType<ArticleText.Refused>(ArticleText.Decode(content)));
        Assert.Contains("klingon", Assert.IsType<ArticleText.Refused>(ArticleText.Decode("text"u8, "klingon")).Reason, StringComparison.Ordinal);
    }
}
