using System.Text;
using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Tests.Samples;
using CsCheck;

namespace Catalogue.Domain.Tests.Components.Lists;

public sealed class ComponentListTests
{
    [Theory]
    [InlineData("01-comma-spaced-refs.csv", "UTF-8", ',', 10, 19)]
    [InlineData("02-semicolon-title-latin1.csv", "ISO-8859-1", ';', 8, 14)]
    [InlineData("03-utf16le-tab.csv", "UTF-16LE", '\t', 9, 11)]
    [InlineData("04-utf8-bom-leading-zeros.csv", "UTF-8", ',', 10, 14)]
    [InlineData("05-shift-jis.csv", "Shift_JIS", ',', 8, 8)]
    [InlineData("06-win1252-blank-row.csv", "windows-1252", ',', 7, 19)]
    [InlineData("07-trailer-and-shifted-row.csv", "UTF-8", ',', 6, 11)]
    [InlineData("08-two-header-rows.csv", "UTF-8", ',', 5, 8)]
    [InlineData("09-extension-lies.tsv", "UTF-8", ',', 6, 12)]
    [InlineData("10-semicolon-decimal-comma-win1252.csv", "windows-1252", ';', 10, 10)]
    [InlineData("11-title-lines-tab.txt", "UTF-8", '\t', 5, 12)]
    [InlineData("12-reference-ranges.csv", "UTF-8", ',', 12, 41)]
    [InlineData("13-quoted-newline.csv", "UTF-8", ',', 6, 10)]
    [InlineData("14-dnp-and-bare-values.csv", "UTF-8", ',', 10, 12)]
    public void Read_Sample_GivesEncodingDelimiterRowsAndQuantities(string file, string encoding, char delimiter, int rows, int quantity)
    {
        var list = Sample(file);
        Assert.Equal(encoding, list.Encoding);
        Assert.Equal(delimiter, list.Delimiter);
        Assert.Equal(rows, list.Rows.Count);
        Assert.Equal(quantity, list.Rows.Sum(row => row.Quantity));
        Assert.Empty(list.Rejected);
    }

    [Fact]
    public void Read_SpacedReferences_SaysWhatIsOdd()
    {
        var list = Sample("01-comma-spaced-refs.csv");
        var first = Row(list, "C3");
        Assert.Equal(["C3", "C9"], first.Designators);
        Assert.Equal(2, first.LineNumber);
        Assert.Equal("1.5nF", first.Value);
        Assert.Null(first.Maker);
        Assert.Equal("any", AsRead(first, "Manufacturer"));
        Assert.Equal("63V, C0G", AsRead(first, "Remarks"));
        Assert.Equal("3.3µF", Row(list, "C1").Value);
        Assert.Equal(("Dapplecrest", "DPV-10D680", "68V"), (Row(list, "RV1").Maker, Row(list, "RV1").PartNumber, Row(list, "RV1").Value));
        Assert.Equal(ColumnMeaning.RunningNumber, list.Columns[0].Meaning);
        Warns(list, "Rows 2, 4, 7, 8, 9: “any” is no maker");
        Warns(list, "Row 4: belongs to variant +dbg");
        Warns(list, "Row 8: R7 stands on the footprint C_0603_1608");
    }

    [Fact]
    public void Read_TitleLines_AreNoRows()
    {
        var list = Sample("02-semicolon-title-latin1.csv");
        Warns(list, "Line 3 above the header is a title, no part: “PROYECTO DE MUESTRA. Versión de demostración”");
        Warns(list, "Row 6: empty");
        Warns(list, "Row 15: 7 fields where the header has 8");
        Assert.Equal("SOPORTE BATERÍA", Row(list, "BT1").Description);
        Assert.Equal("http://example.invalid/p?name=ZX-1001&id=7", AsRead(Row(list, "BT1"), "URL"));
        Assert.Equal("6.8µF", Row(list, "C1").Value);
        Assert.Equal("CAP ELEC 390UF 35V ±20% RADIAL", Row(list, "C5").Description);
        Assert.Equal("39", Row(list, "R1").Value);
        Assert.Null(Row(list, "U1").PartNumber);
        Assert.Equal(ColumnMeaning.SupplierPartNumber, list.Columns[4].Meaning);
    }

    [Fact]
    public void Read_WideText_KeepsMakersAsWritten()
    {
        var list = Sample("03-utf16le-tab.csv");
        Assert.Equal("ID", list.Columns[0].Header);
        Assert.Equal("Zorvex(佐维)", Row(list, "C3").Maker);
        Assert.Equal(["C3", "C7"], Row(list, "C3").Designators);
        Assert.Equal("Z001023", AsRead(Row(list, "C2"), "Supplier Part"));
        Assert.Equal("ZX2010-R050F", Row(list, "R4").PartNumber);
        Assert.Equal("0R05 1%", Row(list, "R4").Value);
        Warns(list, "Row 6: no maker and no part number");
        Warns(list, "the content decides");
    }

    [Fact]
    public void Read_LeadingZerosAndExponents_StayText()
    {
        var list = Sample("04-utf8-bom-leading-zeros.csv");
        Assert.Equal("Designator", list.Columns[0].Header);
        Assert.Equal("0402", Row(list, "C2").Package);
        Assert.Equal("000471", AsRead(Row(list, "TP1"), "Supplier Part #"));
        Assert.Equal("Z900102 ", AsRead(Row(list, "C14"), "Supplier Part #"));
        Assert.Equal("MAR1", Row(list, "TP1").Value);
        Assert.Equal("1E5", Row(list, "U2").Value);
        Assert.Equal("1E500", AsRead(Row(list, "U2"), "Supplier Part #"));
        Assert.Empty(list.Warnings);
    }

    [Fact]
    public void Read_ShiftJis_SaysThatItGuessed()
    {
        var list = Sample("05-shift-jis.csv");
        Assert.Equal(["Reference", "Value", "Footprint", "説明"], list.Columns.Select(column => column.Header));
        Assert.Equal("3.3μ", Row(list, "C4").Value);
        Assert.Equal("56Ω", Row(list, "R1").Value);
        Assert.EndsWith("(横) 表面", Row(list, "J2").Description, StringComparison.Ordinal);
        Warns(list, "Shift_JIS is a guess");
        Warns(list, "no quantity column");
    }

    [Fact]
    public void Read_Windows1252_KeepsDashesAndUnitLetters()
    {
        var list = Sample("06-win1252-blank-row.csv");
        Warns(list, "Row 2: empty");
        Assert.Equal(["C7A", "C7B", "C9A", "C9B"], Row(list, "C7A").Designators);
        Assert.Contains("7.5mm – 2750mA", Row(list, "C20").Description, StringComparison.Ordinal);
        Assert.Equal(["C3_U_Leg1", "C3_U_Leg2", "C3_U_Leg3"], Row(list, "C3_U_Leg1").Designators);
        Assert.StartsWith("0.47µF ±10%", Row(list, "C37A").Description, StringComparison.Ordinal);
        Assert.Equal("QLX60N06T", Row(list, "Q1A").Value);
        Assert.Null(Row(list, "Q1A").PartNumber);
    }

    [Fact]
    public void Read_SummaryBelowAndShiftedRow_AreToldApart()
    {
        var list = Sample("07-trailer-and-shifted-row.csv");
        var shifted = Row(list, "J2");
        Assert.Equal(("TBX_1,5_3-G", 3), (shifted.Package, shifted.Quantity));
        Assert.Equal("TBX 1.5 p3", AsRead(shifted, "Datasheet"));
        Assert.Equal("22nF", Row(list, "C4").Value);
        Warns(list, "Row 4: 9 fields where the header has 8: put right by joining “TBX_1,5_3-G” in column Footprint");
        Warns(list, "Row 13: a total, no part");
        Warns(list, "Row 16: a note, no part (“BoM Date: středa");
        Warns(list, "Row 7: the last column, Datasheet, is empty here alone");
    }

    [Fact]
    public void Read_TwoHeaderRows_JoinsTheirNames()
    {
        var list = Sample("08-two-header-rows.csv");
        Assert.Equal("SKU / Shop A", list.Columns[7].Header);
        Assert.Equal("In Stock / Shop C", list.Columns[15].Header);
        Assert.Equal("10,000", AsRead(Row(list, "R5"), "In Stock / Shop A"));
        Assert.Equal("1e3", AsRead(Row(list, "D1"), "In Stock / Shop B"));
        Assert.Equal("Zener 6.2V ½W", Row(list, "D1").Description);
        Assert.Equal("YH14-620R", Row(list, "R5").PartNumber);
    }

    [Fact]
    public void Read_GroupNamesAboveTheHeader_AreJoinedToTheRepeatedNames()
    {
        var list = Read("Part,,,Shop A,,Shop B,\nRef,Qty,Value,SKU,Price,SKU,Price\nR1,1,10k,a,1,b,2\n");
        Assert.Equal(
            ["Part / Ref", "Qty", "Value", "Shop A / SKU", "Shop A / Price", "Shop B / SKU", "Shop B / Price"],
            list.Columns.Select(column => column.Header));
        Assert.Equal(3, Assert.Single(list.Rows).LineNumber);
    }

    [Fact]
    public void Read_SeveralMakers_KeepsAllOfThem()
    {
        var list = Sample("09-extension-lies.tsv");
        Assert.Equal(("Zorvex", "ZXC08-224K"), (Row(list, "C1").Maker, Row(list, "C1").PartNumber));
        Assert.Equal([new MakersPart("Brimstow", "BRW08X224K")], Row(list, "C1").Alternatives);
        Assert.Equal([new MakersPart("Zorvex", "771204"), new MakersPart("Brimstow", "6090417")], Row(list, "R4").Alternatives);
        Assert.Equal("560771204", AsRead(Row(list, "R4"), "ShopC"));
        Assert.Equal(["R7"], Row(list, "R7").Designators);
        Assert.Equal(["U1"], NotFitted(list));
        var makers = list.Columns.Where(column => column.Header == "Manufacturer").Select(column => column.Key);
        Assert.Equal(["Manufacturer", "Manufacturer (2)", "Manufacturer (3)"], makers);
        Warns(list, "its content is separated by commas");
    }

    [Fact]
    public void Read_DecimalCommas_StayInTheirFields()
    {
        var list = Sample("10-semicolon-decimal-comma-win1252.csv");
        Assert.Equal(("3,3µ", "E3,5-8", "Elko – stehend"), (Row(list, "C1").Value, Row(list, "C1").Package, Row(list, "C1").Description));
        Assert.Equal("33µH/1,2A", Row(list, "L1").Value);
        Warns(list, "Row 8: “1.000k” may have a thousands point");
        Warns(list, "Row 7: the value has no unit");
        Warns(list, "Columns without a name and without content: 6, 8, 9, 10");
    }

    [Fact]
    public void Read_TitlesUnderlineAndContinuation_GiveWholeRows()
    {
        var list = Sample("11-title-lines-tab.txt");
        Assert.Equal(["C1", "C2", "C3", "C4", "C5"], Row(list, "C1").Designators);
        Assert.Equal("C1,C2,C3,C4,\nC5", AsRead(Row(list, "C1"), "Reference"));
        Assert.Equal("30417702", Row(list, "J4").PartNumber);
        Assert.Equal("270R 1%", Row(list, "R8").Value);
        Assert.All(list.Rows, row => Assert.Null(row.Maker));
        Warns(list, "Row 15: goes on in line 16");
        Warns(list, "Row 10: underline");
        Warns(list, "Line 5 above the header is a title, no part: “A. Nonymous”");
    }

    [Fact]
    public void Read_ReferenceRanges_AreExpanded()
    {
        var list = Sample("12-reference-ranges.csv");
        Assert.Equal([6, 8, 4, 1, 3, 3, 3, 4, 2, 3, 2, 3], list.Rows.Select(row => row.Designators.Count));
        Assert.Equal(2, Row(list, "L1").Quantity);
        Assert.Equal("U4A, U4B, U4C", Row(list, "U4").DesignatorsAsWritten);
        Warns(list, "Row 11: 3 designators but quantity 2");
        Warns(list, "Row 6: the range D9-D7 runs backwards");
        Warns(list, "Row 5: U4A, U4B, U4C are units of one part, U4");
    }

    [Fact]
    public void Read_QuotedLineBreaksAndBareMarks_SwallowNothing()
    {
        var list = Sample("13-quoted-newline.csv");
        Assert.Equal("Long lead time.\nAsk for \"rev B\".", AsRead(Row(list, "J1"), "Note"));
        Assert.Equal("3.5\" drive plug", Row(list, "J2").Value);
        Assert.Equal("Foot 1/2\" high", Row(list, "M1").Value);
        Assert.Equal("12k\r\n0.1%", Row(list, "R1").Value);
        Assert.Equal("two\r\nlines", AsRead(Row(list, "R1"), "Note"));
        Assert.Equal([2, 3, 5, 6, 7, 10], list.Rows.Select(row => row.LineNumber));
        Warns(list, "Row 6: a quotation mark inside a field was taken as text");
    }

    [Fact]
    public void Read_NotFittedMarks_AreFoundInValueColumnAndText()
    {
        var list = Sample("14-dnp-and-bare-values.csv");
        Assert.Equal(["C3", "C4", "C5", "R4", "R5", "R6"], NotFitted(list));
        Assert.Null(Row(list, "C3").Value);
        Assert.Equal("NF/120p", Row(list, "C5").Value);
        Assert.Null(Row(list, "D1").Value);
        Assert.Equal(0, Row(list, "D1").Quantity);
        Assert.Equal("?", AsRead(Row(list, "D1"), "Value"));
        Warns(list, "Row 7: taken as not fitted because of a mere “x” under DNP: check");
        Warns(list, "Rows 3, 9: no value");
        Warns(list, "Rows 6, 8: the value has no unit");
        Warns(list, "Row 10: quantity 0");
        Warns(list, "Row 10: “?” is no value");
    }

    [Theory]
    [InlineData("Bauteil;Anzahl;Wert;Gehäuse;Hersteller;Hersteller-Nr.\nR1, R2;2;4k7;0603;Zorvex;ZX-1\n")]
    [InlineData("Repère;Quantité;Valeur;Boîtier;Fabricant;Réf. fabricant\nR1, R2;2;4k7;0603;Zorvex;ZX-1\n")]
    [InlineData("Referencia;Cantidad;Valor;Encapsulado;Fabricante;Código fabricante\nR1, R2;2;4k7;0603;Zorvex;ZX-1\n")]
    [InlineData("位号;数量;值;封装;制造商;制造商型号\nR1, R2;2;4k7;0603;Zorvex;ZX-1\n")]
    [InlineData("部品記号;個数;値;パッケージ;メーカー;メーカー型番\nR1, R2;2;4k7;0603;Zorvex;ZX-1\n")]
    [InlineData("RefDes|QTY.|Comment|Case/Package|Mfr. Name|Mfr Part #\nR1, R2|2|4k7|0603|Zorvex|ZX-1\n")]
    public void Read_HeadersInAnyLanguage_MeanTheSame(string text)
    {
        var row = Assert.Single(Read(text).Rows);
        Assert.Equal(["R1", "R2"], row.Designators);
        Assert.Equal((2, "4k7", "0603", "Zorvex", "ZX-1"), (row.Quantity, row.Value, row.Package, row.Maker, row.PartNumber));
    }

    [Fact]
    public void Read_MakersAndOtherNumbers_TakesTheMakers()
    {
        var row = Assert.Single(Read("Ref,Qty,Part Number,Manufacturer Part,Supplier Part,Name\nU1,1,LAB-0007,QLX-1,S-99,Controller\n").Rows);
        Assert.Equal(("QLX-1", "Controller"), (row.PartNumber, row.Value));
    }

    [Fact]
    public void Read_PartColumn_IsNameOrDesignatorsByItsCells()
    {
        Assert.Equal(ColumnMeaning.Value, Read("Part,Qty,Maker\nQLX61,1,Zorvex\nZXD18,2,Zorvex\n").Columns[0].Meaning);
        Assert.Equal(ColumnMeaning.Designators, Read("Part,Qty,Maker\nR1,1,Zorvex\nC18,2,Zorvex\n").Columns[0].Meaning);
        Assert.Equal(ColumnMeaning.RunningNumber, Read("Component,Qty,Value\n1,1,10k\n2,2,22k\n").Columns[0].Meaning);
    }

    [Fact]
    public void Read_ZerosAtTheEnd_AreNoBinary()
    {
        var list = Read("Ref,Qty,Value\nR1,1,10k\n" + new string('\0', 4096));
        Assert.Single(list.Rows);
        Warns(list, "4096 control characters");
    }

    [Fact]
    public void Read_BetterColumnEmpty_TakesTheFilledOne()
    {
        var row = Assert.Single(Read("Ref,Qty,Value,MPN,Part Number,Package,Footprint\nU1,1,QLX,,QLX-1,,SOIC-8\n").Rows);
        Assert.Equal(("QLX-1", "SOIC-8"), (row.PartNumber, row.Package));
    }

    [Fact]
    public void Read_TwoNumberColumnsOneMaker_TakesTheFirstGiven()
    {
        var list = Read("Ref,Qty,Manufacturer,Manufacturer Part,MPN\nU1,1,Zorvex,,ZX-1\nU2,1,Zorvex,ZX-2,ZX-2\nU3,1,Zorvex,ZX-3,ZX-4\n");
        Assert.Equal(["ZX-1", "ZX-2", "ZX-3"], list.Rows.Select(row => row.PartNumber));
        Assert.Equal([0, 0, 1], list.Rows.Select(row => row.Alternatives.Count));
        Assert.All(list.Rows, row => Assert.Equal("Zorvex", row.Maker));
    }

    [Fact]
    public void Read_ReferenceBesideRepere_IsThePartNumber()
    {
        var row = Assert.Single(Read("Repère;Désignation;Référence;Qté\nR1;Résistance 10k;ZX-1;1\n").Rows);
        Assert.Equal(("ZX-1", "Résistance 10k", "R1"), (row.PartNumber, row.Description, row.Designators[0]));
    }

    [Fact]
    public void Read_EmptyAmongYes_IsFittedWithAWarning()
    {
        var list = Read("Ref,Qty,Value,Populate\nR1,1,10k,Yes\nR2,1,10k,No\nR3,1,10k,\n");
        Assert.Equal(["R2"], NotFitted(list));
        Warns(list, "Row 4: empty under Populate");
    }

    [Fact]
    public void Read_Utf8CutInsideALetter_StaysUtf8()
    {
        var bytes = Encoding.UTF8.GetBytes("Ref,Qty,Value\nC1,1,10µ\nC2,1,22µ");
        var list = Assert.IsType<ComponentListReading.Read>(ComponentList.Read(bytes.AsMemory(0, bytes.Length - 1), null));
        Assert.Equal(("UTF-8", "10µ"), (list.Encoding, list.Rows[0].Value));
    }

    [Fact]
    public void Read_BareMarkInsideQuotes_IsTextWithAWarning()
    {
        var list = Read("Ref,Qty,Value,Note\nM1,1,\"5\" fan\",x\nR1,1,10k,z\n");
        Assert.Equal(["5\" fan", "10k"], list.Rows.Select(row => row.Value));
        Warns(list, "Row 2: a quotation mark inside a field was taken as text");
    }

    [Theory]
    [InlineData("?")]
    [InlineData("n/a")]
    [InlineData("~")]
    [InlineData("-")]
    [InlineData("#REF!")]
    [InlineData("unknown")]
    public void Read_Placeholder_IsNoPartNumberButStaysAsRead(string text)
    {
        var row = Assert.Single(Read($"Ref,Qty,Value,MPN,Manufacturer\nR1,1,10k,{text},{text}\n").Rows);
        Assert.Null(row.PartNumber);
        Assert.Null(row.Maker);
        Assert.Equal(text, AsRead(row, "MPN"));
        Assert.NotEmpty(row.Warnings);
    }

    [Theory]
    [InlineData("UTF-16LE")]
    [InlineData("UTF-16BE")]
    public void Read_WideTextWithoutMark_IsRecognised(string name)
    {
        var list = Assert.IsType<ComponentListReading.Read>(ComponentList.Read(Encoding.GetEncoding(name).GetBytes("Ref;Qty;Value\nR1;1;10kΩ\n"), "a.csv"));
        Assert.Equal((name, "10kΩ"), (list.Encoding, list.Rows[0].Value));
    }

    [Fact]
    public void Read_Gbk_IsGuessedAndCanBeForced()
    {
        var gbk = CodePagesEncodingProvider.Instance.GetEncoding("GBK")!;
        var bytes = gbk.GetBytes("位号,数量,值,封装,描述\nR1,1,10k,0603,贴片电阻\nC1,1,1u,0603,贴片电容\n");
        var list = Assert.IsType<ComponentListReading.Read>(ComponentList.Read(bytes, null));
        Assert.Equal(("GBK", "贴片电阻"), (list.Encoding, list.Rows[0].Description));
        Warns(list, "GBK is a guess");
        var forced = ComponentList.Read(gbk.GetBytes("Ref,Qty,Value\nR1,1,\u6d4b\n"), null, new ComponentListOptions("gbk"));
        Assert.Equal("测", Assert.IsType<ComponentListReading.Read>(forced).Rows[0].Value);
        Assert.IsType<ComponentListReading.Refused>(ComponentList.Read(bytes, null, new ComponentListOptions("no-such-encoding")));
    }

    [Theory]
    [InlineData("")]
    [InlineData("   \n\n  ")]
    [InlineData("Ref,Qty,Value\n")]
    [InlineData("Ref,Qty,Value\n,,\n---,---,---\nTotal,,\n")]
    [InlineData("a,b,c\n1,2,3\n")]
    [InlineData("PK\u0003\u0004whatever")]
    public void Read_NoList_IsRefusedWithReason(string text)
    {
        var refused = Assert.IsType<ComponentListReading.Refused>(ComponentList.Read(Encoding.UTF8.GetBytes(text), null));
        Assert.NotEmpty(refused.Reason);
    }

    [Fact]
    public void Read_RowWithoutPart_IsRejectedWithItsLine()
    {
        var list = Read("Qty,Value,Remarks\n1,10k,\n3,,spare\n2,22k,\n");
        Assert.Equal([2, 4], list.Rows.Select(row => row.LineNumber));
        Assert.Equal(3, Assert.Single(list.Rejected).Row);
    }

    [Fact]
    public void Read_NulsAndControls_AreTakenOutWithAWarning()
    {
        var list = Read("Ref,Qty,Value\nR1,1,10\0k\nR2,1,\"4k7\t1%\"\nR3,1,\u00011M\n");
        Assert.Equal(["10k", "4k7\t1%", "1M"], list.Rows.Select(row => row.Value));
        Warns(list, "2 control characters were taken out");
    }

    [Fact]
    public void Read_QuoteNeverClosed_CostsOneFieldOnly()
    {
        var list = Read("Ref,Qty,Value,Package\nR1,1,\"10k,0603\nR2,1,\"22k\",0603\nR3,1,33k,0603\n");
        Assert.Equal(["\"10k", "22k", "33k"], list.Rows.Select(row => row.Value));
        Warns(list, "Row 2: a quotation mark opens a field and is never closed");
    }

    [Fact]
    public void Read_MarkAmongDesignators_MeansNotFitted()
    {
        var row = Assert.Single(Read("Ref,Qty,Value,MPN\n\"R5, R6 (DNP)\",2,10k,DNP\n").Rows);
        Assert.Equal(["R5", "R6"], row.Designators);
        Assert.False(row.Fitted);
        Assert.Null(row.PartNumber);
        Assert.Equal("R5, R6 (DNP)", row.DesignatorsAsWritten);
    }

    [Fact]
    public void Read_NanofaradInCapitals_IsNoMark()
    {
        var list = Read("Ref,Qty,Value\nC1,1,100 NF\nC2,1,100NF\nK1,1,Relay NC\nU1,1,DNP3020\n");
        Assert.All(list.Rows, row => Assert.True(row.Fitted));
    }

    [Fact]
    public void Read_HeadingsAndTotalsBetweenRows_AreNamedButNoRows()
    {
        var list = Read("Item,Ref,Qty,Value\nResistors,,,\n1,R1,1,10k\n,Capacitors,,\n2,C1,1,1u\n,,2,\nTotal parts: 2,,,\nItem,Ref,Qty,Value\n3,C2,1,1u\n");
        Assert.Equal([3, 5, 9], list.Rows.Select(row => row.LineNumber));
        Assert.Equal([6], list.Rejected.Select(row => row.Row));
        Warns(list, "Row 2: a note, no part (“Resistors”)");
        Warns(list, "Row 4: a note, no part (“Capacitors”)");
        Warns(list, "Row 7: a total, no part");
        Warns(list, "Row 8: the header again");
    }

    [Theory]
    [InlineData("2x", 2)]
    [InlineData("3 pcs", 3)]
    [InlineData("4,00", 4)]
    [InlineData("1.200", 1200)]
    [InlineData("1.5", null)]
    [InlineData("-1", null)]
    [InlineData("99999999999", null)]
    [InlineData("１２", 12)]
    public void Read_QuantityStyles_AreWholeNumbersOrOpen(string written, int? quantity)
    {
        var row = Assert.Single(Read($"Ref;Qty;Value\nR1;{written};10k\n").Rows);
        Assert.Equal((quantity, written), (row.Quantity, row.QuantityAsWritten));
    }

    [Fact]
    public void Read_QuantityMissing_IsCountedOrOpen()
    {
        var list = Read("Ref,Qty,Value\n\"R1,R2\",,10k\n,,22k\nR1-C4,,33k\n");
        Assert.Equal([2, null, null], list.Rows.Select(row => row.Quantity));
        Warns(list, "Row 2: no quantity: counted from the designators");
        Warns(list, "Rows 3, 4: the quantity is not known");
        Assert.Equal(1, Assert.Single(Read("Value,Description\n10k,Resistor\n").Rows).Quantity);
    }

    [Theory]
    [InlineData(',')]
    [InlineData(';')]
    [InlineData('\t')]
    [InlineData('|')]
    public void Read_AnyCellsQuotedByRule_ComeBackExactly(char delimiter) =>
        Gen.Char["ab1 ,;|\t\"\n\r.-'µ"].Array[1, 12].Select(characters => new string(characters)).Array[1, 20].Sample(cells =>
        {
            var text = new StringBuilder().AppendJoin(delimiter, "Ref", "Qty", "Value", "Remarks").Append('\n');
            for (var i = 0; i < cells.Length; i++)
            {
                var quoted = $"\"{cells[i].Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
                text.AppendJoin(delimiter, $"R{i + 1}", "1", "10k", quoted).Append("\r\n");
            }
            return Read(text.ToString()).Rows.Select(row => AsRead(row, "Remarks")).SequenceEqual(cells);
        }, iter: 300);

    [Fact]
    public void Read_EqualHeaders_GetKeysOfTheirOwn()
    {
        var list = Read("Ref,Note,Note,Note (2),,\nR1,a,b,c,d,e\n");
        Assert.Equal(["Ref", "Note", "Note (2)", "Note (2) (2)", "column 5", "column 6"], list.Columns.Select(column => column.Key));
        Warns(list, "Columns without a name, kept as read: 5, 6");
    }

    private static string[] NotFitted(ComponentListReading.Read list) => [.. list.Rows.Where(row => !row.Fitted).Select(row => row.Designators[0])];

    private static ComponentListReading.Read Sample(string file) =>
        Assert.IsType<ComponentListReading.Read>(ComponentList.Read(SampleFile.Bytes("Lists", file), file));

    private static ComponentListReading.Read Read(string text) =>
        Assert.IsType<ComponentListReading.Read>(ComponentList.Read(Encoding.UTF8.GetBytes(text), "list.csv"));

    private static ListRow Row(ComponentListReading.Read list, string designator) => Assert.Single(list.Rows, row => row.Designators.Contains(designator));

    private static string AsRead(ListRow row, string header) => Assert.Single(row.AsRead, cell => cell.Header == header).Text;

    private static void Warns(ComponentListReading.Read list, string part) =>
        Assert.Contains(list.Warnings, warning => warning.Contains(part, StringComparison.Ordinal));
}
