using System.Globalization;
using System.IO.Compression;
using System.Security;
using System.Text;

namespace Catalogue.Testing.Components.Lists;

/// <summary>
/// Makes small workbooks, part by part, also such as no spreadsheet program would write. A cell is null for nothing, a text, a whole number, a
/// <see cref="double"/>, or a <see cref="WorkbookCell"/>.
/// </summary>
public sealed class WorkbookBuilder
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Package = "http://schemas.openxmlformats.org/package/2006";
    private const string Types = "application/vnd.openxmlformats-officedocument.spreadsheetml";

    private readonly List<SheetBuilder> _sheets = [];
    private readonly List<string> _formats = [];
    private readonly List<string> _texts = [];
    private readonly Dictionary<string, string> _parts = [];

    /// <summary>True where days are to be counted from 1904.</summary>
    public bool Counts1904 { get; init; }

    /// <summary>Adds a sheet.</summary>
    public SheetBuilder Sheet(string name, bool hidden = false)
    {
        var sheet = new SheetBuilder(this, name, hidden);
        _sheets.Add(sheet);
        return sheet;
    }

    /// <summary>Puts a part into the archive as it is, beside or instead of what would be written there.</summary>
    public WorkbookBuilder Part(string name, string content)
    {
        _parts[name] = content;
        return this;
    }

    /// <summary>The names and texts of the parts.</summary>
    public IReadOnlyDictionary<string, string> Parts()
    {
        var parts = new Dictionary<string, string>
        {
            ["[Content_Types].xml"] = $"<Types xmlns=\"{Package}/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>"
                + "<Default Extension=\"xml\" ContentType=\"application/xml\"/>"
                + Override("workbook", "sheet.main") + Override("styles", "styles") + Override("sharedStrings", "sharedStrings")
                + string.Concat(_sheets.Select((_, i) => Override(Name($"worksheets/sheet{i + 1}"), "worksheet"))) + "</Types>",
            ["_rels/.rels"] = RelationList([("officeDocument", "xl/workbook.xml")]),
            ["xl/_rels/workbook.xml.rels"] = RelationList([.. _sheets.Select((_, i) => ("worksheet", Name($"worksheets/sheet{i + 1}.xml"))), ("styles", "styles.xml"), ("sharedStrings", "sharedStrings.xml")]),
            ["xl/workbook.xml"] = $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Relations}\"><workbookPr date1904=\"{(Counts1904 ? 1 : 0)}\"/><sheets>"
                + string.Concat(_sheets.Select((sheet, i) => Name($"<sheet name=\"{Escape(sheet.Name)}\" sheetId=\"{i + 1}\"{(sheet.IsHidden ? " state=\"hidden\"" : "")} r:id=\"r{i + 1}\"/>"))) + "</sheets></workbook>",
            ["xl/styles.xml"] = $"<styleSheet xmlns=\"{Main}\"><numFmts>{string.Concat(_formats.Select((format, i) => Name($"<numFmt numFmtId=\"{200 + i}\" formatCode=\"{Escape(format)}\"/>")))}</numFmts>"
                + $"<cellXfs><xf numFmtId=\"0\"/>{string.Concat(_formats.Select((_, i) => Name($"<xf numFmtId=\"{200 + i}\" applyNumberFormat=\"1\"/>")))}</cellXfs></styleSheet>",
        };
        for (var i = 0; i < _sheets.Count; i++)
            parts[Name($"xl/worksheets/sheet{i + 1}.xml")] = _sheets[i].Xml(Main);
        parts["xl/sharedStrings.xml"] = $"<sst xmlns=\"{Main}\">{string.Concat(_texts.Select(text => $"<si><t xml:space=\"preserve\">{Escape(text)}</t></si>"))}</sst>";
        foreach (var (name, content) in _parts)
            parts[name] = content;
        return parts;
    }

    /// <summary>The workbook.</summary>
    public byte[] Bytes() => Archive(Parts().Select(part => (part.Key, Encoding.UTF8.GetBytes(part.Value))));

    /// <summary>A zip archive of such entries.</summary>
    public static byte[] Archive(IEnumerable<(string Name, byte[] Content)> entries)
    {
        using var bytes = new MemoryStream();
        using (var archive = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, content) in entries)
            {
                using var entry = archive.CreateEntry(name, CompressionLevel.Fastest).Open();
                entry.Write(content);
            }
        }

        return bytes.ToArray();
    }

    internal int Style(string format)
    {
        var index = _formats.IndexOf(format);
        if (index < 0)
        {
            index = _formats.Count;
            _formats.Add(format);
        }

        return index + 1;
    }

    internal int Text(string text)
    {
        var index = _texts.IndexOf(text);
        if (index < 0)
        {
            index = _texts.Count;
            _texts.Add(text);
        }

        return index;
    }

    internal static string Escape(string text) => SecurityElement.Escape(text);

    private static string Override(string part, string type) => $"<Override PartName=\"/xl/{part}.xml\" ContentType=\"{Types}.{type}+xml\"/>";

    private static string RelationList((string Type, string Target)[] relations) =>
        $"<Relationships xmlns=\"{Package}/relationships\">"
        + string.Concat(relations.Select((relation, i) => Name($"<Relationship Id=\"r{i + 1}\" Type=\"{Relations}/{relation.Type}\" Target=\"{relation.Target}\"/>"))) + "</Relationships>";

    private static string Name(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
