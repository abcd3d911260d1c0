using static Catalogue.Testing.Components.Lists.WorkbookCell;

namespace Catalogue.Testing.Components.Lists;

/// <summary>Workbooks of an invented lab, with the quirks of real ones.</summary>
public static class SampleWorkbooks
{
    /// <summary>Two boards and a hidden sheet, with what spreadsheets do to quantities and part numbers.</summary>
    public static WorkbookBuilder TwoBoards()
    {
        static string Count(int row) => FormattableString.Invariant($"LEN(B{row})-LEN(SUBSTITUTE(B{row},\",\",\"\"))+1");
        var book = new WorkbookBuilder();
        book.Sheet("main").HideColumn(7)
            .Row("No.", "Designator", "Qty", "Manufacturer", "Manufacturer Part Number", "Spec", "Link")
            .Row(1, "BT1", 1, "Ondrel", "OND-AA-2", null, "https://parts.example/1")
            .Row(2, "C101, C803, CA01", OfFormula(Count(3), "3"), "Mawick", "MWC06-334K", "0.33uF", "https://parts.example/2")
            .Row(3, "C102", OfFormula(Count(4), "1"), "Mawick", "MWC06-225M", "2.2uF")
            .Skip()
            .Row(5, "R1, R2", OfFormula(Count(6)), "Ondrel", Shown("518", "000000"), "22 kΩ x 4")
            .Row(6, "U1", OfFormula(Count(7), "1"), "Mawick", "MWK720,TR(XC", "2.5 V")
            .Row(7, "TP1", 1, null, Shown("45537", "d-mmm"));
        book.Sheet("display")
            .Row("No.", "Designator", "Qty", "Manufacturer", "Manufacturer Part Number", "Spec")
            .Row(1, "C1, C2", OfFormula(Count(2), "2"), "Mawick", "MWC06-334K", Inline("0.33 uF"))
            .HiddenRow(2, "IC1", 1, "Mawick", "MWK41", "temperature")
            .Row(3, "R7", OfFormula("prices!B1"), "Ondrel", "OR06-2202", "22 kΩ");
        book.Sheet("prices", hidden: true).Row("Lot", Error("#REF!")).Row("Spare", 88);
        return book;
    }

    /// <summary>Two tables under each other with merged titles, a merged quantity, order numbers as numbers and as texts, and a total; an empty sheet.</summary>
    public static WorkbookBuilder PanelAndCase()
    {
        object[] header = ["Anzahl", "Bauteil", "Wert", "Bestellnummer", "Lieferant", "Preis"];
        var book = new WorkbookBuilder();
        book.Sheet("Blatt 1").Merge("A1:B1").Merge("A8:B8").Merge("A6:A7")
            .Row("Frontplatte")
            .Row(header)
            .Row(1, "Netztrafo", "UI30/16 115V / 115V", 5512, "Händler 1", 48.25)
            .Row(1, "Stelltrafo", "0~115V 0,6A", "8-310-02-004", "Händler 1", 66)
            .Row(2, "Zeigerinstrument", "0,3A~", Inline("0740"), "Händler 2", 4.15)
            .Row(3, "Glimmlampe", "115V", null, "Händler 2", 2.4)
            .Row(null, "Glimmlampe grün", "115V", "662 013", "Händler 2", 2.4)
            .Row("Gehäuse")
            .Row(header)
            .Row(4, "Gummifuß", "Ø 18 mm", "G-18", "Händler 3", 0.3)
            .Row(1, "Deckel", "140 x 90 x 1,5", "D-140", "Händler 3", 8.55)
            .Row(null, null, null, null, "Summe", OfFormula("SUM(F3:F11)", "131.75"));
        book.Sheet("Blatt 2");
        return book;
    }
}
