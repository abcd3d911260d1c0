using System.Globalization;
using System.Text;

namespace Catalogue.Domain.Components.Lists;

/// <summary>The bytes of a component list as text, and how they were read.</summary>
internal sealed class ListText
{
    internal const double MostControlsInText = 0.05;

    private static readonly UTF8Encoding StrictUtf8 = new(false, true);

    private ListText(string text, string encoding, IReadOnlyList<string> warnings)
    {
        Text = text;
        Encoding = encoding;
        Warnings = warnings;
    }

    public string Text { get; }

    public string Encoding { get; }

    public IReadOnlyList<string> Warnings { get; }

    /// <summary>Decodes the bytes; a null text comes with the reason for refusing them.</summary>
    public static (ListText? Text, string? Refusal) Decode(ReadOnlySpan<byte> bytes, string? forcedEncoding)
    {
        var warnings = new List<string>();
        if (Signature(bytes) is { } kind)
        {
            return (null, $"The content is {kind}, not a list. Save it as a workbook (XLSX) without a password, or as text with separators (CSV or TSV).");
        }
        if (forcedEncoding is not null)
        {
            var forced = Find(forcedEncoding);
            if (forced is null)
            {
                return (null, $"The encoding “{forcedEncoding}” is not known. Give an IANA name such as UTF-8, windows-1252, Shift_JIS or GBK.");
            }
            return Finish(forced.GetString(bytes), IanaName(forced), warnings);
        }
        var marked = ByMark(bytes);
        if (marked is var (markedEncoding, markedName, markLength) && markedEncoding is not null)
        {
            return Finish(markedEncoding.GetString(bytes[markLength..]), markedName, warnings);
        }
        if (WideWithoutMark(bytes) is { } wide)
        {
            warnings.Add($"The file does not say its encoding; {wide.Name} was taken from the pattern of its bytes. Choose another one if letters look wrong.");
            return Finish(wide.Encoding.GetString(bytes), wide.Name, warnings);
        }
        if (ShareOfControls(bytes) > MostControlsInText)
        {
            return (null, "The content is binary, not a text list. Save the list as text with separators (CSV or TSV).");
        }
        if (AsUtf8(bytes, warnings) is { } utf8)
        {
            return Finish(utf8, "UTF-8", warnings);
        }
        var (guess, name) = LegacyGuess(bytes);
        warnings.Add($"The file does not say its encoding; {name} is a guess. Choose another one if letters look wrong.");
        return Finish(guess.GetString(bytes), name, warnings);
    }

    private static (ListText? Text, string? Refusal) Finish(string decoded, string name, List<string> warnings)
    {
        var removed = 0;
        var text = WithoutControls(decoded.StartsWith('\uFEFF') ? decoded[1..] : decoded, ref removed);
        if (removed > 0)
        {
            warnings.Add(RemovedControls(removed));
        }
        var unreadable = text.AsSpan().Count('\uFFFD');
        if (unreadable > 0)
        {
            warnings.Add(string.Create(CultureInfo.InvariantCulture, $"{unreadable} places could not be read as {name} and show as �."));
        }
        return (new ListText(text, name, warnings), null);
    }

    internal static string? Signature(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith("PK\u0003\u0004"u8))
        {
            return "a workbook or another zip archive";
        }
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0]))
        {
            return "a workbook of the older binary kind, or one that is protected with a password";
        }
        if (bytes.StartsWith("%PDF-"u8))
        {
            return "a PDF document";
        }
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0x89, 0x50, 0x4E, 0x47]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]))
        {
            return "a picture";
        }
        return bytes.StartsWith((ReadOnlySpan<byte>)[0x1F, 0x8B]) ? "a packed archive" : null;
    }

    private static Encoding? Find(string name)
    {
        try
        {
            return CodePagesEncodingProvider.Instance.GetEncoding(name) ?? System.Text.Encoding.GetEncoding(name);
        }
        catch (Exception exception) when (exception is ArgumentException or NotSupportedException)
        {
            return null;
        }
    }

    private static string IanaName(Encoding encoding) => encoding.CodePage switch
    {
        65001 => "UTF-8",
        1200 => "UTF-16LE",
        1201 => "UTF-16BE",
        28591 => "ISO-8859-1",
        932 => "Shift_JIS",
        936 => "GBK",
        _ => encoding.WebName,
    };

    internal static (Encoding? Encoding, string Name, int MarkLength) ByMark(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
        {
            return (System.Text.Encoding.UTF8, "UTF-8", 3);
        }
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE, 0, 0]))
        {
            return (System.Text.Encoding.UTF32, "UTF-32LE", 4);
        }
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
        {
            return (System.Text.Encoding.Unicode, "UTF-16LE", 2);
        }
        return bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF])
            ? (System.Text.Encoding.BigEndianUnicode, "UTF-16BE", 2)
            : (null, "", 0);
    }

    /// <summary>Two bytes a character leave a zero in every other place wherever the text is Latin, and a list's separators always are.</summary>
    internal static (Encoding Encoding, string Name)? WideWithoutMark(ReadOnlySpan<byte> bytes)
    {
        var pairs = Math.Min(bytes.Length, 1 << 16) / 2;
        if (pairs < 2)
        {
            return null;
        }
        int firstZeros = 0, secondZeros = 0;
        for (var i = 0; i < pairs; i++)
        {
            firstZeros += bytes[2 * i] == 0 ? 1 : 0;
            secondZeros += bytes[(2 * i) + 1] == 0 ? 1 : 0;
        }
        var many = pairs / 5;
        var few = pairs / 50;
        if (secondZeros > many && firstZeros <= few)
        {
            return (System.Text.Encoding.Unicode, "UTF-16LE");
        }
        return firstZeros > many && secondZeros <= few ? (System.Text.Encoding.BigEndianUnicode, "UTF-16BE") : null;
    }

    internal static double ShareOfControls(ReadOnlySpan<byte> bytes)
    {
        var controls = 0;
        // Some tools fill a file up with zeros at its end.
        foreach (var value in bytes.TrimEnd((byte)0))
        {
            controls += value < 0x20 && value is not ((byte)'\t' or (byte)'\n' or (byte)'\r' or 0x0C) ? 1 : 0;
        }
        // A handful of strays in a short list is damage, not a binary format.
        return controls <= 4 ? 0 : (double)controls / bytes.Length;
    }

    /// <summary>Takes UTF-8 when it is valid, or when most of what is not ASCII is valid and a little is damaged.</summary>
    private static string? AsUtf8(ReadOnlySpan<byte> bytes, List<string> warnings)
    {
        try
        {
            return StrictUtf8.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            int valid = 0, broken = 0;
            var cutAtEnd = false;
            for (var rest = bytes; !rest.IsEmpty;)
            {
                var status = Rune.DecodeFromUtf8(rest, out var rune, out var used);
                valid += status == System.Buffers.OperationStatus.Done && !rune.IsAscii ? 1 : 0;
                broken += status == System.Buffers.OperationStatus.Done ? 0 : 1;
                cutAtEnd = status == System.Buffers.OperationStatus.NeedMoreData;
                rest = rest[used..];
            }
            if (valid < broken * 4 && !(cutAtEnd && broken == 1 && valid > 0))
            {
                return null;
            }
            warnings.Add("The text is UTF-8 with damaged places.");
            return System.Text.Encoding.UTF8.GetString(bytes);
        }
    }

    internal static (Encoding Encoding, string Name) LegacyGuess(ReadOnlySpan<byte> bytes)
    {
        var latin = bytes.ContainsAnyInRange((byte)0x80, (byte)0x9F)
            ? (CodePagesEncodingProvider.Instance.GetEncoding(1252)!, "windows-1252")
            : (System.Text.Encoding.Latin1, "ISO-8859-1");
        var japanese = ShareOfPairs(bytes, IsShiftJisLead, IsCommonShiftJisPair);
        var chinese = ShareOfPairs(bytes, lead => lead is >= 0x81 and <= 0xFE, IsCommonGbkPair);
        // Latin letters beyond ASCII mostly stand alone; a text of double bytes is nearly all made of common pairs.
        const double Enough = 0.7;
        if (Math.Max(japanese, chinese) < Enough)
        {
            return latin;
        }
        return japanese >= chinese
            ? (CodePagesEncodingProvider.Instance.GetEncoding(932)!, "Shift_JIS")
            : (CodePagesEncodingProvider.Instance.GetEncoding(936)!, "GBK");
    }

    /// <summary>The share of units beyond ASCII that are common double-byte characters, when the bytes are walked as that encoding.</summary>
    private static double ShareOfPairs(ReadOnlySpan<byte> bytes, Func<byte, bool> isLead, Func<byte, byte, bool> isCommon)
    {
        int units = 0, common = 0;
        for (var i = 0; i < bytes.Length; i++)
        {
            if (bytes[i] < 0x80)
            {
                continue;
            }
            units++;
            if (isLead(bytes[i]) && i + 1 < bytes.Length)
            {
                common += isCommon(bytes[i], bytes[i + 1]) ? 1 : 0;
                i++;
            }
        }
        return units == 0 ? 0 : (double)common / units;
    }

    private static bool IsShiftJisLead(byte lead) => lead is (>= 0x81 and <= 0x9F) or (>= 0xE0 and <= 0xFC);

    // Punctuation, full-width forms, kana, Greek, and the first level of the character set.
    private static bool IsCommonShiftJisPair(byte lead, byte trail) =>
        lead is (>= 0x81 and <= 0x83) or (>= 0x88 and <= 0x98) && trail is >= 0x40 and not 0x7F and <= 0xFC;

    // Symbols and full-width forms, and the first level of the character set.
    private static bool IsCommonGbkPair(byte lead, byte trail) => lead is (>= 0xA1 and <= 0xA6) or (>= 0xB0 and <= 0xD7) && trail is >= 0xA1 and <= 0xFE;

    internal static string RemovedControls(int count) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} control characters were taken out of the text; they stand for nothing.");

    /// <summary>The text without characters that stand for nothing, which are counted.</summary>
    internal static string WithoutControls(string text, ref int removed)
    {
        var before = removed;
        var kept = new StringBuilder();
        var start = 0;
        for (var i = 0; i < text.Length; i++)
        {
            // U+FFFE and U+FFFF are no characters either.
            if ((!char.IsControl(text[i]) && text[i] < '\uFFFE') || text[i] is '\t' or '\n' or '\r')
            {
                continue;
            }
            kept.Append(text, start, i - start);
            start = i + 1;
            removed++;
        }
        if (removed == before)
        {
            return text;
        }
        return kept.Append(text, start, text.Length - start).ToString();
    }
}
