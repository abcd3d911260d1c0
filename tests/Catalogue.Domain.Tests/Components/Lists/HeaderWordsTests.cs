using System.Text;
using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Tests.Samples;
using Catalogue.Domain.Text;

namespace Catalogue.Domain.Tests.Components.Lists;

public sealed class HeaderWordsTests
{
    [Theory]
    [InlineData("en")]
    [InlineData("de")]
    [InlineData("fr")]
    [InlineData("es")]
    [InlineData("zh")]
    [InlineData("ja")]
    public void Find_UsualHeaders_AreUnderstood(string language)
    {
        var lines = SampleFile.TabLines("Text", "headers.tsv").Where(line => line[0] == language).ToList();
        Assert.True(lines.Count > 80);
        Assert.Equal(lines.Select(line => (line[2], line[1])), lines.Select(line => (line[2], SnakeCase.Code(Meaning(line[2], line[1] == "designators") ?? default))));
    }

    [Theory]
    [InlineData("Stock Qty")]
    [InlineData("Min. Qty")]
    [InlineData("Quantity available")]
    [InlineData("Unit price")]
    [InlineData("Preis / Menge")]
    [InlineData("Lagermenge")]
    [InlineData("Mindestbestellmenge")]
    [InlineData("库存数量")]
    [InlineData("最小起订数量")]
    [InlineData("在庫数量")]
    [InlineData("单价")]
    [InlineData("Approved by")]
    [InlineData("of")]
    public void Find_WhatIsNoneOfTheMeanings_IsLeftAsRead(string header) => Assert.Null(Meaning(header, designators: false));

    [Fact]
    public void Find_ExactWords_WinOverCompounds()
    {
        var list = Read("位号\t数量\t单板用量\t型号\t制造商型号\t品牌\nR1\t1\t9\tA\tOR-1\tOndrel\n");
        Assert.Equal((1, "OR-1"), (list.Rows[0].Quantity, list.Rows[0].PartNumber));
    }

    private static ColumnMeaning? Meaning(string header, bool designators) =>
        Read(designators ? $"{header}\tQty\tValue\nR1\t1\t10k\n" : $"Designator\tVariant\tDatasheet\t{header}\nR1\t\t\t4 x\n").Columns[designators ? 0 : 3].Meaning;

    private static ComponentListReading.Read Read(string text) => Assert.IsType<ComponentListReading.Read>(ComponentList.Read(Encoding.UTF8.GetBytes(text), null));
}
