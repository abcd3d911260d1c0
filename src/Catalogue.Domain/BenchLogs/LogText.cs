using System.Text;

namespace Catalogue.Domain.BenchLogs;

/// <summary>Short texts of a log from their bytes.</summary>
internal static class LogText
{
    private static readonly Encoding Windows1252 = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;

    /// <summary>Reads bytes in the encoding of the log; where UTF-8 is expected and the bytes are none, as Windows-1252.</summary>
    public static string Decode(ReadOnlySpan<byte> bytes, Encoding encoding) =>
        (encoding.CodePage == Encoding.UTF8.CodePage && !System.Text.Unicode.Utf8.IsValid(bytes) ? Windows1252 : encoding).GetString(bytes);
}
