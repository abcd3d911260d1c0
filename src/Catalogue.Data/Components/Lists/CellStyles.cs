using System.Globalization;
using DocumentFormat.OpenXml.Spreadsheet;
using ExcelNumberFormat;

namespace Catalogue.Data.Components.Lists;

/// <summary>How a workbook's styles show numbers.</summary>
internal sealed class CellStyles
{
    private const int LongestFormat = 255;

    private readonly List<NumberFormat?> _formats;
    private readonly List<string> _codes;

    private CellStyles(List<string> codes, bool counts1904)
    {
        _codes = codes;
        var parsed = codes.Distinct(StringComparer.Ordinal).ToDictionary(code => code, Parse, StringComparer.Ordinal);
        _formats = [.. codes.Select(code => parsed[code])];
        Counts1904 = counts1904;
    }

    /// <summary>True where days are counted from 1904 and not from 1900.</summary>
    public bool Counts1904 { get; }

    public static CellStyles Of(Stylesheet? stylesheet, bool counts1904)
    {
        var own = new Dictionary<uint, string>();
        foreach (var format in stylesheet?.NumberingFormats?.Elements<NumberingFormat>() ?? [])
        {
            if (format is { NumberFormatId.Value: var id, FormatCode.Value: { } code })
                own[id] = code;
        }

        return new CellStyles([.. (stylesheet?.CellFormats?.Elements<CellFormat>() ?? []).Select(style => Code(style.NumberFormatId?.Value ?? 0))], counts1904);

        string Code(uint id) => own.TryGetValue(id, out var code) ? code : BuiltIn(id);
    }

    /// <summary>The format code of a style; empty for the general format and for one that cannot be read.</summary>
    public string Code(int style) => Format(style) is null ? "" : _codes[style];

    public bool IsDate(int style) => Format(style) is { IsDateTimeFormat: true };

    public bool IsExponent(int style) => Format(style) is not null && _codes[style].Contains("E+", StringComparison.OrdinalIgnoreCase);

    /// <summary>What the sheet shows for the number; null where the general format is used.</summary>
    public string? Show(int style, double number) => Format(style)?.Format(number, CultureInfo.InvariantCulture).Trim();

    /// <summary>The formats that files name by number alone (ECMA-376 part 1, 18.8.30); 27 to 36 and 50 to 58 are dates in East Asian languages.</summary>
    private static string BuiltIn(uint id) => id switch
    {
        1 => "0",
        2 => "0.00",
        3 => "#,##0",
        4 => "#,##0.00",
        9 => "0%",
        10 => "0.00%",
        11 => "0.00E+00",
        12 => "# ?/?",
        13 => "# ??/??",
        14 => "mm-dd-yy",
        15 => "d-mmm-yy",
        16 => "d-mmm",
        17 => "mmm-yy",
        18 => "h:mm AM/PM",
        19 => "h:mm:ss AM/PM",
        20 => "h:mm",
        21 => "h:mm:ss",
        22 => "m/d/yy h:mm",
        37 or 38 => "#,##0;(#,##0)",
        39 or 40 => "#,##0.00;(#,##0.00)",
        45 => "mm:ss",
        46 => "[h]:mm:ss",
        47 => "mm:ss.0",
        48 => "##0.0E+0",
        (>= 27 and <= 36) or (>= 50 and <= 58) => "yyyy/m/d",
        _ => "",
    };

    private NumberFormat? Format(int style) => style >= 0 && style < _formats.Count ? _formats[style] : null;

    private static NumberFormat? Parse(string code) =>
        code is "" or "@" || code.Length > LongestFormat || code.Equals("General", StringComparison.OrdinalIgnoreCase) || new NumberFormat(code) is not { IsValid: true } format ? null : format;
}
