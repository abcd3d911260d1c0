using System.Text;
using Catalogue.Data.Components.Lists;
using Catalogue.Domain.Components.Lists;
using Catalogue.Testing.Components.Lists;
using static Catalogue.Testing.Components.Lists.WorkbookCell;

namespace Catalogue.Data.Tests.Components.Lists;

public sealed class ComponentListFileTests
{
    [Fact]
    public void Read_SheetsOfAWorkbook_TakesTheVisibleOnesAndNamesTheHiddenOne()
    {
        var list = Read(SampleWorkbooks.TwoBoards());
        Assert.Equal((null, null), (list.Encoding, list.Delimiter));
        Assert.Equal([new("main", 6, false, null), new("display", 3, false, null), new("prices", 0, true, "The sheet is hidden; it is imported when it is asked for by name.")], list.Sheets);
        Assert.Equal(["Row 2 of “main”", "Row 3 of “main”", "Row 4 of “main”", "Row 6 of “main”", "Row 7 of “main”", "Row 8 of “main”"], list.Rows.Take(6).Select(row => row.Place));
        Warns(list, "Sheet “prices” was not imported: the sheet is hidden");
        Warns(list, "Row 5 of “main”: empty, skipped");
    }

    [Fact]
    public void Read_QuantityFormulas_TakesStoredResultsAndCountsOnlyWhatTheFormulaCounts()
    {
        var list = Read(SampleWorkbooks.TwoBoards());
        Assert.Equal([1, 3, 1, 2, 1, 1, 2, 1, null], list.Rows.Select(row => row.Quantity));
        Warns(list, "Row 6 of “main”: the quantity is a formula whose result is not stored: counted from the designators");
        Warns(list, "Row 4 of “display”: the quantity is a formula whose result is not stored (=prices!B1): not known");
    }

    [Fact]
    public void Read_HiddenRowsAndColumns_AreReadAndSaid()
    {
        var list = Read(SampleWorkbooks.TwoBoards());
        Assert.Equal("IC1", list.Rows[7].Designators[0]);
        Assert.Equal("https://parts.example/2", list.Rows[1].AsRead.Single(cell => cell.Header == "Link").Text);
        Warns(list, "Row 3 of “display”: hidden in the workbook, imported all the same");
        Warns(list, "Sheet “main”: Column Link is hidden in the workbook; it was read all the same");
    }

    [Fact]
    public void Read_NumbersAsShown_KeepLeadingZerosAndInlineTexts()
    {
        var list = Read(SampleWorkbooks.TwoBoards());
        Assert.Equal(("000518", "22 kΩ x 4"), (list.Rows[3].PartNumber, list.Rows[3].Value));
        Assert.Equal(("MWK720,TR(XC", "0.33 uF"), (list.Rows[4].PartNumber, list.Rows[6].Value));
    }

    [Fact]
    public void Read_PartNumberTurnedIntoADate_IsLeftOpenAndAsked()
    {
        var list = Read(SampleWorkbooks.TwoBoards());
        Assert.Null(list.Rows[5].PartNumber);
        var reading = Assert.Single(list.Readings);
        Assert.Equal(("main", 8, "Manufacturer Part Number", "2024-09-02"), (reading.Sheet, reading.Row, reading.Column, reading.Text));
        Assert.Equal(["SEP2", "2-9", "9-2", "2024-09-02"], reading.Readings);
        Warns(list, "Row 8 of “main”: the part number is the date 2 September 2024, perhaps SEP2 before a spreadsheet made a date of it: ask");
    }

    [Fact]
    public void Read_OneSheetAskedFor_TakesItEvenWhereItIsHidden()
    {
        var book = new WorkbookBuilder();
        book.Sheet("main").Row("Ref", "Qty", "Value").Row("R1", 1, "10k");
        book.Sheet("old", hidden: true).Row("Ref", "Qty", "Value").Row("R2", 1, "22k").Row("R3", 1, "22k");

        var list = Assert.IsType<ComponentListReading.Read>(ComponentListFile.Read(book.Bytes(), null, new ComponentListOptions(Sheet: "OLD")));

        Assert.Equal(["R2", "R3"], list.Rows.Select(row => row.Designators[0]));
        Assert.Equal([(1, "Another sheet was asked for."), (2, null)], list.Sheets.Select(sheet => (sheet.Rows, sheet.NotImported)));
        Assert.Contains("“main”, “old”", Refusal(book.Bytes(), new ComponentListOptions(Sheet: "spare")), StringComparison.Ordinal);
        Assert.Contains("has none", Refusal(Encoding.UTF8.GetBytes("Ref,Qty\nR1,1\n"), new ComponentListOptions(Sheet: "main")), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_TablesUnderEachOther_AreOneListWithoutTitlesHeadersAndTotals()
    {
        var list = Read(SampleWorkbooks.PanelAndCase());
        Assert.Equal(["Netztrafo", "Stelltrafo", "Zeigerinstrument", "Glimmlampe", "Glimmlampe grün", "Gummifuß", "Deckel"], list.Rows.Select(row => row.Description));
        Assert.Equal([1, 1, 2, null, null, 4, 1], list.Rows.Select(row => row.Quantity));
        Assert.Equal(["5512", "8-310-02-004", "0740", "", "662 013"], list.Rows.Take(5).Select(row => row.AsRead.Single(cell => cell.Header == "Bestellnummer").Text));
        Assert.Empty(list.Rejected);
        Warns(list, "Sheet “Blatt 1”: Line 1 above the header is a title, no part: “Frontplatte”");
        Warns(list, "Row 8 of “Blatt 1”: a note, no part (“Gehäuse”)");
        Warns(list, "Row 9 of “Blatt 1”: the header again, no part");
        Warns(list, "Row 12 of “Blatt 1”: a total, no part (“Summe 131.75”)");
        Warns(list, "Sheet “Blatt 2” was not imported: the sheet is empty");
    }

    [Fact]
    public void Read_QuantityMergedOverTwoRows_IsLeftOpenAndAsked()
    {
        var list = Read(SampleWorkbooks.PanelAndCase());
        Assert.Equal([("Blatt 1", 6), ("Blatt 1", 7)], list.Readings.Select(reading => (reading.Sheet, reading.Row)));
        Assert.All(list.Readings, reading => Assert.Equal(["3 for each", "3 for all together"], reading.Readings));
        Warns(list, "Rows 6, 7 of “Blatt 1”: the quantity 3 is merged over rows 6 to 7: for each of them or for all together? ask");
    }

    [Fact]
    public void Read_MergedMaker_GoesForEachRow()
    {
        var book = new WorkbookBuilder();
        book.Sheet("a").Row("Ref", "Qty", "Value", "Manufacturer", "MPN").Row("R1", 1, "10k", "Ondrel", "OR-1").Row("R2", 1, "22k", null, "OR-2").Merge("D2:D3");

        var list = Read(book);

        Assert.Equal(["Ondrel", "Ondrel"], list.Rows.Select(row => row.Maker));
        Assert.Equal("", list.Rows[1].AsRead[3].Text);
        Warns(list, "Row 3 of “a”: “Ondrel” under Manufacturer is merged with the row above: taken for this one too");
    }

    [Fact]
    public void Read_GroupMergedOverColumns_IsJoinedToTheNamesBelow()
    {
        var book = new WorkbookBuilder();
        book.Sheet("a").Row("Ref", "Qty", "Value", "Shop A", null, "Shop B", null).Row(null, null, null, "SKU", "Price", "SKU", "Price").Row("R1", 1, "10k", "7", 0.1, "8", 0.2)
            .Merge("D1:E1").Merge("F1:G1").Merge("A1:A2");

        Assert.Equal(["Ref", "Qty", "Value", "Shop A / SKU", "Shop A / Price", "Shop B / SKU", "Shop B / Price"], Read(book).Columns.Select(column => column.Key));
    }

    [Theory]
    [InlineData("1000000", "0.00E+00", null, "1.00E+06", "the part number is the number 1.00E+06, perhaps 1E6 before a spreadsheet made a number of it: ask")]
    [InlineData("1250000", "0.0E+00", null, "1250000", "the part number is the number 1250000, perhaps 125E4 before a spreadsheet made a number of it: ask")]
    [InlineData("45345", "mmm-yy", null, "2024-02-23", "the part number is the date 23 February 2024, perhaps FEB24 before")]
    [InlineData("1.23456789012346E+17", "", "123456789012346000", "123456789012346000", "keeps 15 digits")]
    [InlineData("123456789012", "", "123456789012", "123456789012", null)]
    [InlineData("12345", "00-000", "12-345", "12-345", null)]
    [InlineData("4.7123", "0.0", "4.7123", "4.7123", "the part number is 4.7123, of which the sheet shows “4.7”")]
    [InlineData("4.70000000000001", "0.0\" uF\"", "4.70000000000001", "4.70000000000001", "of which the sheet shows “4.7 uF”")]
    [InlineData("4.7000000000000002", "0.0\" uF\"", "4.7 uF", "4.7 uF", null)]
    [InlineData("0.00000047", "", "0.00000047", "0.00000047", null)]
    public void Read_NumberAsPartNumber_IsWhatTheSheetShowsOrAsked(string stored, string format, string? number, string asRead, string? warning)
    {
        var book = new WorkbookBuilder();
        book.Sheet("a").Row("Ref", "Qty", "MPN").Row("U1", 1, Shown(stored, format));

        var list = Read(book);

        Assert.Equal((number, asRead), (list.Rows[0].PartNumber, list.Rows[0].AsRead[2].Text));
        if (warning is null)
            Assert.DoesNotContain(list.Warnings, said => said.Contains("part number", StringComparison.Ordinal));
        else
            Warns(list, warning);
    }

    [Fact]
    public void Read_DaysFrom1904_AreTheSameDates()
    {
        var book = new WorkbookBuilder { Counts1904 = true };
        book.Sheet("a").Row("Ref", "Qty", "MPN").Row("U1", 1, Shown("0", "d-mmm")).Row("U2", 1, Shown("43524", "d-mmm"));
        Assert.Equal(["1904-01-01", "2023-03-01"], Read(book).Rows.Select(row => row.AsRead[2].Text));
    }

    [Fact]
    public void Read_ErrorCells_StayAsReadAndGiveNothing()
    {
        var book = new WorkbookBuilder();
        book.Sheet("a").Row("Ref", "Qty", "MPN").Row("U1", Error("#REF!", "x!A1"), Error("#N/A"));

        var row = Assert.Single(Read(book).Rows);

        Assert.Equal((null, null, "#REF!", "#N/A"), (row.Quantity, row.PartNumber, row.AsRead[1].Text, row.AsRead[2].Text));
        Assert.Contains("the part number is the spreadsheet error #N/A", row.Warnings);
    }

    [Fact]
    public void Read_RunsAndReadingsOfCharacters_GiveThePlainText()
    {
        var book = new WorkbookBuilder();
        book.Sheet("a").Row("部品記号", "個数", "型番", "備考").Row("R1", 1, "X", new WorkbookCell("1_x000D_\n2", "str", "A1"));
        var texts = book.Parts()["xl/sharedStrings.xml"].Replace("<si><t xml:space=\"preserve\">X</t></si>", "<si><r><t>OR</t></r><r><rPr/><t>-104</t></r><rPh sb=\"0\" eb=\"1\"><t>おる</t></rPh></si>", StringComparison.Ordinal);

        var row = Assert.Single(Read(book.Part("xl/sharedStrings.xml", texts)).Rows);

        Assert.Equal(("OR-104", "1\n2"), (row.PartNumber, row.AsRead[3].Text));
    }

    [Fact]
    public void Read_Text_IsReadAsBefore() => Assert.Equal("UTF-8", Assert.IsType<ComponentListReading.Read>(ComponentListFile.Read(Encoding.UTF8.GetBytes("Ref,Qty\nR1,1\n"), null)).Encoding);

    private static ComponentListReading.Read Read(WorkbookBuilder book) => Assert.IsType<ComponentListReading.Read>(ComponentListFile.Read(book.Bytes(), "list.xlsx"));

    private static string Refusal(byte[] content, ComponentListOptions options) => Assert.IsType<ComponentListReading.Refused>(ComponentListFile.Read(content, null, options)).Reason;

    private static void Warns(ComponentListReading.Read list, string part) =>
        Assert.Contains(list.Warnings, warning => warning.Contains(part, StringComparison.Ordinal));
}
