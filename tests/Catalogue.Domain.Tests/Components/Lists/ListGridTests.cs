using System.Text;
using Catalogue.Domain.Components.Lists;

namespace Catalogue.Domain.Tests.Components.Lists;

public sealed class ListGridTests
{
    [Theory]
    [InlineData("LEN(A2)-LEN(SUBSTITUTE(A2,\",\",\"\"))+1", 2)]
    [InlineData("LEN($A$2)-LEN(SUBSTITUTE($A2;\",\";\"\"))+1", 2)]
    [InlineData("IF(A2=\"\",0,LOG10(100)+TRUE)", 2)]
    [InlineData("LEN(A3)", null)]
    [InlineData("LEN(C2)", null)]
    [InlineData("A2+Spares", null)]
    [InlineData("Parts!A2", null)]
    [InlineData("[1]Parts!A2", null)]
    [InlineData("Table1[@Ref]", null)]
    [InlineData("2*3", null)]
    [InlineData("", null)]
    public void Read_FormulaWithoutAResult_CountsOnlyWhereItReadsTheDesignatorsAlone(string formula, int? quantity)
    {
        var rows = new[] { new GridRow(1, ["Ref", "Qty", "Value"]), new GridRow(2, ["R1, R2", "", "10k"]) { Doubts = [new CellDoubt.NoStoredResult(1, formula)] } };
        Assert.Equal(quantity, Assert.Single(Read(new ListGrid("a", rows)).Rows).Quantity);
    }

    [Theory]
    [InlineData("d-mmm", "2023-03-01", "MAR1")]
    [InlineData("mmm-yy", "2019-11-01", "NOV19")]
    [InlineData("mm-dd-yy", "2003-02-01", "1-2-03")]
    [InlineData("yyyy-mm-dd", "2012-12-10", "10-12-12")]
    public void Read_Date_OffersWhatItsFormatShows(string format, string date, string first)
    {
        var when = DateTime.ParseExact(date, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        var rows = new[] { new GridRow(1, ["Ref", "Qty", "MPN"]), new GridRow(2, ["U1", "1", date]) { Doubts = [new CellDoubt.IsDate(2, when, format)] } };
        var list = Read(new ListGrid("a", rows));
        Assert.Equal((first, date), (Assert.Single(list.Readings).Readings[0], list.Readings[0].Readings[^1]));
        Assert.Null(list.Rows[0].PartNumber);
    }

    [Fact]
    public void Read_ControlsAndHalfCharacters_AreTakenOut()
    {
        var list = Read(new ListGrid("a", [new GridRow(1, ["Ref", "Qty", "Value"]), new GridRow(2, ["R1", "1", "10\0k"])]));
        Assert.Equal("10k", list.Rows[0].Value);
        Assert.Contains("Sheet “a”: 1 control characters were taken out of the text; they stand for nothing.", list.Warnings);
    }

    [Fact]
    public void Read_MoreCellsThanTheHeader_AreKept()
    {
        var list = Read(new ListGrid("a", [new GridRow(1, ["Ref", "Qty", "Value"]), new GridRow(2, ["R1", "1", "10k", "", "see photo"])]));
        Assert.Equal(("column 5", "see photo"), (list.Rows[0].AsRead[4].Header, list.Rows[0].AsRead[4].Text));
        Assert.Contains("Sheet “a”: Columns without a name, kept as read: 5.", list.Warnings);
    }

    [Fact]
    public void Read_TableWithOtherColumnsBelow_IsReadByItsOwnHeader()
    {
        var list = Assert.IsType<ComponentListReading.Read>(ComponentList.Read(
            Encoding.UTF8.GetBytes("Ref,Qty,Value\nR1,2,10k\n\nConnectors\nQuantity,Designator,Manufacturer,Part Number,Package\n1,J1,Ondrel,OR-J4,THT\n4,J2,Ondrel,OR-J5,THT\n"), null));
        Assert.Equal([2, 1, 4], list.Rows.Select(row => row.Quantity));
        Assert.Equal([null, "OR-J4", "OR-J5"], list.Rows.Select(row => row.PartNumber));
        Assert.Equal(["Ref", "Qty", "Value", "Quantity", "Designator", "Manufacturer", "Part Number", "Package"], list.Columns.Select(column => column.Key));
        Assert.Contains("Row 4: a note, no part (“Connectors”).", list.Warnings);
    }

    [Fact]
    public void Read_TablesWithoutEnd_TakeLinearTime()
    {
        var text = new StringBuilder();
        for (var i = 0; i < 20_000; i++)
        {
            text.Append("Ref,Qty,Value\nR1,1,10k\nReference,Quantity,Value\nR2,1,22k\n");
        }
        var clock = System.Diagnostics.Stopwatch.StartNew();
        Assert.Equal(40_000, Assert.IsType<ComponentListReading.Read>(ComponentList.Read(Encoding.UTF8.GetBytes(text.ToString()), null)).Rows.Count);
        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(20), $"took {clock.Elapsed}");
    }

    [Fact]
    public void Read_MoreCellsThanAreKept_IsRefused()
    {
        var text = new StringBuilder("Ref,Qty,Value").Append(',', 400).Append('\n').Insert(414, "R1,1,10k\n", 5_001);
        Assert.Contains("more than 2000000 cells", Assert.IsType<ComponentListReading.Refused>(ComponentList.Read(Encoding.UTF8.GetBytes(text.ToString()), null)).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_NoSheetWithAHeader_IsRefusedWithEachReason()
    {
        var refused = Assert.IsType<ComponentListReading.Refused>(ComponentList.Read([new ListGrid("a", []), new ListGrid("b", [new GridRow(1, ["hello"])])]));
        Assert.Contains("“a”: The sheet is empty. “b”: No header was recognised", refused.Reason, StringComparison.Ordinal);
        Assert.IsType<ComponentListReading.Refused>(ComponentList.Read([]));
    }

    private static ComponentListReading.Read Read(ListGrid sheet) => Assert.IsType<ComponentListReading.Read>(ComponentList.Read([sheet]));
}
