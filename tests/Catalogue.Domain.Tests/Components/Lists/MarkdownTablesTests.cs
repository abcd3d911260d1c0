using System.Diagnostics;
using System.Text;
using Catalogue.Domain.Components.Lists;
using CsCheck;

namespace Catalogue.Domain.Tests.Components.Lists;

public sealed class MarkdownTablesTests
{
    private const string Note = """
        # Second look

        The list that the lab took down:

        | Ref    | Qty | Value           | MPN                                        | Remarks          |
        |:-------|----:|-----------------|--------------------------------------------|------------------|
        | C1, C2 |   2 | 68uF/63V \| low | `OND-LH-680`                               | next to **L1**   |
        | R1_a   |   1 | 10k             | [OR06\_1002](https://parts.example/or(06)) | line<br>break &amp; more |
        | U1     |   1 |                 | **MWK-721-TR**                             |                  |
        Total: 4

        | Port  | Voltage |
        |-------|---------|
        | USB-C | 20 V    |

        and below:

        Part | Anzahl | Wert
        ---- | ------ | ----
        R7 | 3 | 22k
        """;

    [Fact]
    public void Read_TablesInsideANote_AreTheList()
    {
        var list = Read(Note);
        Assert.Equal(('|', "UTF-8"), (list.Delimiter, list.Encoding));
        Assert.Equal([7, 8, 9, 20], list.Rows.Select(row => row.LineNumber));
        Assert.Equal([2, 1, 1, 3], list.Rows.Select(row => row.Quantity));
        Assert.Equal(["68uF/63V | low", "10k", null, "22k"], list.Rows.Select(row => row.Value));
        Assert.Equal(["OND-LH-680", "OR06_1002", "MWK-721-TR", null], list.Rows.Select(row => row.PartNumber));
        Assert.Equal(["next to **L1**", "line\nbreak & more", ""], list.Rows.Take(3).Select(row => row.AsRead[4].Text));
        Assert.Equal("[OR06_1002](https://parts.example/or(06))", list.Rows[1].AsRead[3].Text);
        Assert.Contains("Rows 1, 3, 16: text outside of the tables, no part.", list.Warnings);
        Assert.Contains(list.Warnings, warning => warning.StartsWith("Row 10: a total, no part", StringComparison.Ordinal));
        Assert.Contains(list.Warnings, warning => warning.StartsWith("The table in line 12 was not imported: No header", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Ref|Qty|Value\n--|--|--\nR1|1|10k\n")]
    [InlineData("| Ref | Qty | Value |\r\n| :-: | --: | :-- |\r\n| R1 | 1 | 10k |\r\n")]
    [InlineData("|Ref|Qty|Value|\n|---|---|\n|R1|1|10k|\n")]
    [InlineData("Ref\tQty\tValue\nR1\t1\t10k\n")]
    [InlineData(" Ref | Qty | Value \n-----+-----+-------\n R1  |   1 | 10k\n")]
    public void Read_PastedBlock_IsRead(string text)
    {
        var row = Assert.Single(Read(text).Rows);
        Assert.Equal(("R1", 1, "10k"), (row.Designators[0], row.Quantity, row.Value));
    }

    [Fact]
    public void Read_HeaderLineAndColumnsGiven_HoldForTheTablesToo()
    {
        var text = Encoding.UTF8.GetBytes("| a | b |\n|---|---|\n| what | how many |\n| 10k | 3 |\n\n| Ref | Qty | Odd |\n|---|---|---|\n| R9 | 1 | 22k |\n");
        var columns = new Dictionary<string, ColumnMeaning?> { ["what"] = ColumnMeaning.Value, ["how many"] = ColumnMeaning.Quantity, ["Odd"] = ColumnMeaning.Value };
        var list = Assert.IsType<ComponentListReading.Read>(ComponentList.Read(text, null, new ComponentListOptions(HeaderLine: 3, Columns: columns)));
        Assert.Equal([("10k", 3), ("22k", 1)], list.Rows.Select(row => (row.Value, row.Quantity)));
        Assert.IsType<ComponentListReading.Refused>(ComponentList.Read(text, null, new ComponentListOptions(HeaderLine: 5)));
    }

    [Fact]
    public void Read_PastedCellsWithLineBreaks_StayWhole()
    {
        var row = Assert.Single(Read("Ref\tQty\tValue\tNotes\nR1\t1\t10k\t\"two\nlines, \"\"quoted\"\"\"\n").Rows);
        Assert.Equal("two\nlines, \"quoted\"", row.AsRead[3].Text);
    }

    [Fact]
    public void Read_AnyCellsEscapedByRule_ComeBackExactly() =>
        Gen.Char["ab1 |.-'µ\\*_`<&[]()#>"].Array[1, 12].Select(characters => new string(characters).Trim()).Where(cell => cell.Length > 0).Array[1, 20].Sample(cells =>
        {
            var text = new StringBuilder("| Ref | Qty | Value | Remarks |\n| --- | --- | --- | --- |\n");
            for (var i = 0; i < cells.Length; i++)
            {
                var escaped = string.Concat(cells[i].Select(character => char.IsAsciiLetterOrDigit(character) || character is ' ' or 'µ' ? $"{character}" : character == '&' ? "&amp;" : $"\\{character}"));
                text.Append(System.Globalization.CultureInfo.InvariantCulture, $"| R{i + 1} | 1 | 10k | {escaped} |\n");
            }
            return Read(text.ToString()).Rows.Select(row => row.AsRead[3].Text).SequenceEqual(cells);
        }, iter: 300);

    [Theory]
    [InlineData("|")]
    [InlineData("\\|")]
    [InlineData("|-")]
    [InlineData("| a |\n|-|\n")]
    [InlineData("[a](")]
    [InlineData("***")]
    [InlineData("<br>")]
    public void Read_HostileMarkdown_TakesLinearTime(string unit)
    {
        const string Head = "| Ref | Qty | Value |\n|---|---|---|\n| R1 | 1 | 10k |\n";
        var text = new StringBuilder(Head).Insert(Head.Length, unit, (2 << 20) / unit.Length).ToString();
        var clock = Stopwatch.StartNew();
        Assert.NotNull(ComponentList.Read(Encoding.UTF8.GetBytes(text), null));
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(20), $"took {clock.Elapsed}");
    }

    private static ComponentListReading.Read Read(string text) => Assert.IsType<ComponentListReading.Read>(ComponentList.Read(Encoding.UTF8.GetBytes(text), null));
}
