using Catalogue.Domain.Articles;

namespace Catalogue.Domain.Tests.Articles;

public sealed class ArticleTableTests
{
    [Fact]
    public void Read_TableOfParts_IsAComponentList()
    {
        var text = ArticleTable.TextOf([["Ref", "Value", "Note"], ["C1", "68uF/63V | 105 °C", "main \"bulk\""], ["R1,R2", "10k", "a\tb"]]);

        var read = ArticleTable.Read(text);

        Assert.Equal([["C1"], ["R1", "R2"]], read!.Rows.Select(row => row.Designators.ToArray()));
        Assert.Equal("main \"bulk\"", read.Rows[0].AsRead[2].Text);
    }

    [Theory]
    [InlineData("Load", "Voltage")]
    [InlineData("Item", "Value")]
    [InlineData("Port", "Current")]
    public void Read_OtherTable_IsNone(string first, string second) => Assert.Null(ArticleTable.Read(ArticleTable.TextOf([[first, second], ["USB-C output", "3 A"], ["mass", "118 g"]])));
}
