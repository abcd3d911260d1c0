using System.IO.Compression;
using System.Text;
using System.Xml;
using Catalogue.Domain.Components.Lists;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace Catalogue.Data.Components.Lists;

/// <summary>Reads the sheets of a workbook (Office Open XML, ECMA-376, also its strict form) as plain texts.</summary>
/// <remarks>
/// Sheets are streamed. Links to other files are never followed, document type declarations are refused, nothing is evaluated: a formula gives the
/// result that the file stores, or none.
/// </remarks>
public static class Workbook
{
    /// <summary>The most that the archive may unpack to, in bytes.</summary>
    public const long MaxUnpackedBytes = 256L * 1024 * 1024;

    /// <summary>The most text in its cells, in UTF-16 code units; a text that many cells name counts for each of them.</summary>
    public const long MaxCharacters = 64L * 1024 * 1024;

    /// <summary>The most entries of the archive.</summary>
    public const int MaxEntries = 2000;

    /// <summary>The most sheets.</summary>
    public const int MaxSheets = 100;

    // Parts that are held as a whole: the list of sheets, the styles, and what joins parts. All others are streamed.
    private const long MaxHeldBytes = 8L * 1024 * 1024;

    private const string SaveAs = "Save it as a workbook (XLSX) without a password, or as text with separators (CSV).";

    /// <summary>True for what begins as a zip archive does, as every workbook of this kind.</summary>
    public static bool IsArchive(ReadOnlySpan<byte> content) => content.StartsWith("PK\u0003\u0004"u8) || content.StartsWith("PK\u0005\u0006"u8);

    /// <summary>Reads the sheets in the workbook's order; null comes with the reason for refusing the file and what would be right.</summary>
    /// <param name="content">The file's bytes.</param>
    public static (IReadOnlyList<ListGrid>? Sheets, string? Refusal) Read(ReadOnlyMemory<byte> content)
    {
        try
        {
            using var stream = content.AsStream();
            if (RefuseArchive(stream) is { } refusal)
                return (null, refusal);
            stream.Position = 0;
            using var document = SpreadsheetDocument.Open(stream, false, new OpenSettings { MaxCharactersInPart = MaxHeldBytes });
            return (Sheets(document), null);
        }
        catch (WorkbookRefusedException refused)
        {
            return (null, refused.Message);
        }
        // What a damaged or forged archive makes the libraries throw: each of these says no more than that it is damaged.
        catch (Exception exception) when (exception is InvalidDataException or XmlException or OpenXmlPackageException or FileFormatException or IOException or FormatException
            or ArgumentException or InvalidOperationException or NotSupportedException or KeyNotFoundException or OverflowException or NullReferenceException or IndexOutOfRangeException)
        {
            return (null, $"The workbook is damaged: {Cause(exception)} Open it in a spreadsheet program and save it anew.");
        }
    }

    private static string? RefuseArchive(Stream stream)
    {
        using var archive = new ZipArchive(stream, ZipArchiveMode.Read, leaveOpen: true, Encoding.UTF8);
        if (archive.Entries.Count > MaxEntries)
            return $"The archive has {archive.Entries.Count} entries; a workbook with at most {MaxEntries} is read.";
        var unpacked = archive.Entries.Sum(entry => (double)entry.Length);
        if (unpacked > MaxUnpackedBytes)
            return $"The workbook unpacks to more than {MaxUnpackedBytes / (1024 * 1024)} MiB. Save only the sheet with the list, or save it as text with separators (CSV).";
        if (archive.Entries.FirstOrDefault(entry => entry.Length > MaxHeldBytes && (entry.Name.EndsWith(".rels", StringComparison.OrdinalIgnoreCase) || entry.Name.StartsWith('['))) is { } joint)
            return $"The part {joint.Name} of the workbook is larger than {MaxHeldBytes / (1024 * 1024)} MiB. Save only the sheet with the list, or save it as text with separators (CSV).";
        if (archive.Entries.Any(entry => entry.IsEncrypted))
            return $"The archive is protected with a password. {SaveAs}";
        bool Has(string name) => archive.Entries.Any(entry => entry.FullName.Equals(name, StringComparison.OrdinalIgnoreCase));
        if (Has("mimetype") && Has("content.xml"))
            return $"The content is an OpenDocument file, which is not read. {SaveAs}";
        if (Has("xl/workbook.bin"))
            return $"The content is a binary workbook (XLSB), which is not read. {SaveAs}";
        return Has("[Content_Types].xml") ? null : $"The content is a zip archive, not a workbook. {SaveAs}";
    }

    private static List<ListGrid> Sheets(SpreadsheetDocument document)
    {
        if (document.WorkbookPart is not { Workbook: { } workbook } part)
            throw new WorkbookRefusedException($"The archive holds no workbook. {SaveAs}");
        var entries = workbook.Sheets?.Elements<Sheet>().ToList() ?? [];
        if (entries.Count > MaxSheets)
            throw new WorkbookRefusedException($"The workbook has {entries.Count} sheets; at most {MaxSheets} are read.");
        var styles = CellStyles.Of(part.WorkbookStylesPart?.Stylesheet, workbook.WorkbookProperties?.Date1904?.Value ?? false);
        var reader = new SheetReader(SharedStrings.Read(part.SharedStringTablePart), styles);
        var sheets = new List<ListGrid>(entries.Count);
        foreach (var entry in entries)
        {
            var name = entry.Name?.Value is { } given && !string.IsNullOrWhiteSpace(given) ? given : $"sheet {sheets.Count + 1}";
            var hidden = entry.State is { } state && state.Value != SheetStateValues.Visible;
            // A chart or a dialog is a sheet without cells; a sheet without its part is damage that is said as an empty one.
            var grid = entry.Id?.Value is { } id && part.TryGetPartById(id, out var found) && found is WorksheetPart worksheet
                ? reader.Read(name, worksheet)
                : new ListGrid(name, []);
            sheets.Add(grid with { IsHidden = hidden });
        }

        return sheets;
    }

    private static string Cause(Exception exception) => exception switch
    {
        XmlException { LineNumber: > 0 } xml when xml.Message.Contains("DTD", StringComparison.Ordinal) => "it holds a document type declaration, which no workbook has.",
        XmlException xml when xml.Message.Contains("MaxCharacters", StringComparison.Ordinal) => $"its styles or its list of sheets are larger than {MaxHeldBytes / (1024 * 1024)} MiB.",
        XmlException => "its XML cannot be read.",
        InvalidDataException => "its archive cannot be unpacked.",
        _ => "its parts do not fit together.",
    };

    private static Stream AsStream(this ReadOnlyMemory<byte> content) =>
        System.Runtime.InteropServices.MemoryMarshal.TryGetArray(content, out var array)
            ? new MemoryStream(array.Array!, array.Offset, array.Count, writable: false)
            : new MemoryStream(content.ToArray(), writable: false);
}
