using System.Text;
using Catalogue.Data.Components.Lists;
using Catalogue.Domain.Components.Lists;
using Catalogue.Testing.Components.Lists;

namespace Catalogue.Data.Tests.Components.Lists;

public sealed class WorkbookTests
{
    private const string Sheet1 = "xl/worksheets/sheet1.xml";

    [Fact]
    public void Read_WorkbookThatUnpacksToMoreThanTheLimit_IsRefusedBeforeItIsUnpacked()
    {
        var bomb = WorkbookBuilder.Archive([("[Content_Types].xml", []), (Sheet1, new byte[(256 << 20) + 1])]);
        Assert.True(bomb.Length < 4 << 20);
        Assert.Contains("unpacks to more than 256 MiB", Refusal(bomb), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_TooManyEntries_IsRefused() =>
        Assert.Contains("2001 entries", Refusal(WorkbookBuilder.Archive(Enumerable.Range(0, Workbook.MaxEntries + 1).Select(i => (FormattableString.Invariant($"{i}"), Array.Empty<byte>())))), StringComparison.Ordinal);

    [Theory]
    [InlineData("mimetype", "content.xml", "an OpenDocument file")]
    [InlineData("[Content_Types].xml", "xl/workbook.bin", "a binary workbook (XLSB)")]
    [InlineData("photos/1.jpg", "photos/2.jpg", "a zip archive, not a workbook")]
    [InlineData("[Content_Types].xml", "word/document.xml", "The ")]
    public void Read_OtherArchive_SaysWhatItIsAndWhatWouldBeRight(string first, string second, string said)
    {
        var refusal = Refusal(WorkbookBuilder.Archive([(first, "<x/>"u8.ToArray()), (second, "<x/>"u8.ToArray())]));
        Assert.Contains(said, refusal, StringComparison.Ordinal);
        Assert.Contains("ave it a", refusal, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_OlderOrProtectedWorkbook_SaysWhatWouldBeRight()
    {
        var refused = Assert.IsType<ComponentListReading.Refused>(ComponentListFile.Read((byte[])[0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1, .. new byte[600]], "list.xls"));
        Assert.Contains("protected with a password", refused.Reason, StringComparison.Ordinal);
        Assert.Contains("XLSX", refused.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("xl/workbook.xml")]
    [InlineData("xl/sharedStrings.xml")]
    [InlineData("xl/styles.xml")]
    [InlineData(Sheet1)]
    public void Read_DocumentTypeDeclaration_IsRefused(string part)
    {
        var book = Plain();
        var xml = book.Parts()[part];
        var root = xml[1..xml.IndexOfAny([' ', '>'])];
        Refusal(book.Part(part, $"<!DOCTYPE {root} [<!ENTITY a SYSTEM \"file:///etc/hostname\">]>{xml}").Bytes());
    }

    [Theory]
    [InlineData("xl/workbook.xml", "<workbook")]
    [InlineData("xl/sharedStrings.xml", "<sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><si><t>")]
    [InlineData(Sheet1, "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData><row r=\"1\"><c t=\"s\"><v>99</v></c></row></sheetData></worksheet>")]
    [InlineData(Sheet1, "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData><row r=\"2\"><c><v>1</v></c></row><row r=\"2\"><c><v>2</v></c></row></sheetData></worksheet>")]
    [InlineData("[Content_Types].xml", "")]
    public void Read_DamagedPart_IsRefused(string part, string content) => Assert.Contains("damaged", Refusal(Plain().Part(part, content).Bytes()), StringComparison.Ordinal);

    [Fact]
    public void Read_LinksToElsewhere_AreNeverFollowedAndDoNoHarm()
    {
        const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        var book = Plain()
            .Part("xl/worksheets/_rels/sheet1.xml.rels", "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                + $"<Relationship Id=\"a\" Type=\"{Relations}/hyperlink\" Target=\"mailto:sales at parts.example, please\" TargetMode=\"External\"/>"
                + $"<Relationship Id=\"b\" Type=\"{Relations}/hyperlink\" Target=\"http://[bad\" TargetMode=\"External\"/>"
                + $"<Relationship Id=\"c\" Type=\"{Relations}/image\" Target=\"http://127.0.0.1:9/x.png\" TargetMode=\"External\"/></Relationships>");
        Assert.Equal("R1", Assert.Single(Sheets(book)).Rows[1].Cells[0]);
    }

    [Fact]
    public void Read_StrictNamespaces_AreReadToo()
    {
        var book = Plain();
        foreach (var (name, xml) in book.Parts())
        {
            book.Part(name, xml.Replace("http://schemas.openxmlformats.org/spreadsheetml/2006/main", "http://purl.oclc.org/ooxml/spreadsheetml/main", StringComparison.Ordinal)
                .Replace("http://schemas.openxmlformats.org/officeDocument/2006/relationships", "http://purl.oclc.org/ooxml/officeDocument/relationships", StringComparison.Ordinal));
        }

        Assert.Equal(["R1", "1", "10k"], Assert.Single(Sheets(book)).Rows[1].Cells);
    }

    [Fact]
    public void Read_CellsFarToTheRight_MakeTheirRowTooBig()
    {
        var book = Plain();
        book.Part(Sheet1, book.Parts()[Sheet1].Replace("<c r=\"C2\"", "<c r=\"XFD2\"", StringComparison.Ordinal));
        Assert.Equal("the row reaches to column 16384; at most 500 are read", Assert.Single(Sheets(book)).Rows[1].TooBig);
    }

    [Fact]
    public void Read_MillionsOfRowsOrEmptyStyledCells_StaysWithinTheLimits()
    {
        var book = Plain();
        var styled = new StringBuilder("<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>");
        for (var i = 1; i <= 400_000; i++)
            styled.Append(System.Globalization.CultureInfo.InvariantCulture, $"<row r=\"{i}\"><c r=\"A{i}\" s=\"0\"/></row>");
        Assert.Empty(Assert.Single(Sheets(book.Part(Sheet1, styled + "</sheetData></worksheet>"))).Rows);
        Assert.Contains("more than 100000 rows", Refusal(book.Part(Sheet1, styled.ToString().Replace("s=\"0\"/>", "><v>1</v></c>", StringComparison.Ordinal) + "</sheetData></worksheet>").Bytes()), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_OneLongTextNamedByManyCells_IsRefused()
    {
        var book = new WorkbookBuilder();
        var sheet = book.Sheet("list").Row("Ref", "Qty", "Value");
        for (var i = 0; i < 2300; i++)
            sheet.Row(new string('x', 30_000));
        var content = book.Bytes();
        Assert.True(content.Length < 100_000);
        Assert.Contains("64 million characters", Refusal(content), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("xl/styles.xml")]
    [InlineData("xl/_rels/workbook.xml.rels")]
    [InlineData("[Content_Types].xml")]
    public void Read_HugePartThatIsHeldAsAWhole_IsRefused(string part)
    {
        var book = Plain();
        var xml = book.Parts()[part];
        var end = xml.LastIndexOf("</", StringComparison.Ordinal);
        Assert.Contains("larger than 8 MiB", Refusal(book.Part(part, xml[..end] + new string(' ', 9 << 20) + xml[end..]).Bytes()), StringComparison.Ordinal);
    }

    private static WorkbookBuilder Plain()
    {
        var book = new WorkbookBuilder();
        book.Sheet("list").Row("Ref", "Qty", "Value").Row("R1", 1, "10k");
        return book;
    }

    private static IReadOnlyList<ListGrid> Sheets(WorkbookBuilder book)
    {
        var (sheets, refusal) = Workbook.Read(book.Bytes());
        Assert.Null(refusal);
        return sheets!;
    }

    private static string Refusal(byte[] content)
    {
        var (sheets, refusal) = Workbook.Read(content);
        Assert.Null(sheets);
        Assert.NotNull(refusal);
        return refusal;
    }
}
