using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using DocumentFormat.OpenXml.Packaging;

namespace Catalogue.Data.Components.Lists;

/// <summary>The parts of a workbook that may be large, as a stream of XML that can reach nothing outside.</summary>
internal static partial class WorkbookXml
{
    private static readonly XmlReaderSettings Settings = new()
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        IgnoreComments = true,
        IgnoreProcessingInstructions = true,
        MaxCharactersInDocument = Workbook.MaxUnpackedBytes,
    };

    public static XmlReader Open(OpenXmlPart part) => XmlReader.Create(part.GetStream(FileMode.Open, FileAccess.Read), Settings);

    /// <summary>The text of a string item (ECMA-376 part 1, 18.4.8 and 18.3.1.53): its runs joined, readings of characters (rPh) left out.</summary>
    /// <remarks>The reader stands on the item's start and stands on its end, or still on it where it is empty, afterwards.</remarks>
    public static string ReadItem(XmlReader xml)
    {
        if (xml.IsEmptyElement)
            return "";
        var (depth, text) = (xml.Depth, new StringBuilder());
        xml.Read();
        while (xml.Depth > depth)
        {
            if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "rPh")
            {
                xml.Skip();
            }
            else if (xml.NodeType == XmlNodeType.Element && xml.LocalName == "t")
            {
                text.Append(xml.ReadElementContentAsString());
            }
            else if (!xml.Read())
            {
                break;
            }
        }

        return Unescape(text.ToString());
    }

    /// <summary>Text in which <c>_x000D_</c> and its like stand for characters (ECMA-376 part 1, 22.9.2.19); control characters are left out.</summary>
    public static string Unescape(string text) => !text.Contains("_x", StringComparison.Ordinal) ? text : Escape().Replace(
        text,
        match => (char)int.Parse(match.Groups[1].ValueSpan, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture) is var character
            && (character is '\t' or '\n' || !char.IsControl(character)) ? character.ToString() : "");

    [GeneratedRegex("_x([0-9A-Fa-f]{4})_")]
    private static partial Regex Escape();
}
