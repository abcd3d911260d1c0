using System.Xml;
using DocumentFormat.OpenXml.Packaging;

namespace Catalogue.Data.Components.Lists;

/// <summary>The texts that cells of a workbook name by number.</summary>
internal static class SharedStrings
{
    /// <summary>The most texts.</summary>
    public const int Max = 2_000_000;

    public static List<string> Read(SharedStringTablePart? part)
    {
        var (texts, characters) = (new List<string>(), 0L);
        if (part is null)
            return texts;
        using var xml = WorkbookXml.Open(part);
        while (xml.Read())
        {
            if (xml.NodeType != XmlNodeType.Element || xml.LocalName != "si")
                continue;
            if (texts.Count == Max)
                throw new WorkbookRefusedException($"The workbook has more than {Max} texts.");
            texts.Add(WorkbookXml.ReadItem(xml));
            if ((characters += texts[^1].Length) > Workbook.MaxCharacters)
                throw WorkbookRefusedException.TooMuchText();
        }

        return texts;
    }
}
