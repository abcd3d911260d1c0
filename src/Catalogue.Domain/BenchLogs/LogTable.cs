namespace Catalogue.Domain.BenchLogs;

/// <summary>Finds the table in the first lines of a log: what separates cells, which mark numbers have, where the header and the samples begin.</summary>
/// <remarks>The delimiter that makes most cells into numbers and times on most lines is taken; on a tie the first of <c>; tab , | blanks</c>.</remarks>
internal sealed class LogTable
{
    private const int MostLines = 400;
    private const int MostPreamble = 32;
    private const int LongestPreambleLine = 400;

    private static readonly byte[] Delimiters = [(byte)';', (byte)'\t', (byte)',', (byte)'|', LogCells.Blanks, LogCells.NoDelimiter];

    private readonly LogCells _cells = new();

    public byte Delimiter { get; private init; }

    public byte DecimalMark { get; private set; } = (byte)'.';

    /// <summary>Every number with a comma could be whole as well: three digits follow each.</summary>
    public bool IsDecimalMarkDoubtful { get; private set; }

    /// <summary>How many cells a full line of samples has.</summary>
    public int Width { get; private init; }

    /// <summary>Index of the header among the lines, or -1.</summary>
    public int Header { get; private set; } = -1;

    /// <summary>Index of the row of units, or -1.</summary>
    public int Units { get; private set; } = -1;

    /// <summary>Index of the first line with samples.</summary>
    public int FirstSamples { get; private init; }

    /// <summary>Finds the table, or null where no line has a number.</summary>
    public static LogTable? Find(IReadOnlyList<ReadOnlyMemory<byte>> lines)
    {
        var looked = lines.Count <= MostLines ? lines : [.. lines.Take(MostLines)];
        LogTable? best = null;
        var bestScore = 0.0;
        foreach (var delimiter in Delimiters)
        {
            var (table, score) = Try(looked, delimiter);
            if (table is not null && score > bestScore + 1e-9)
                (best, bestScore) = (table, score);
        }

        best?.FindDecimalMark(looked);
        best?.FindHeader(looked);
        return best;
    }

    /// <summary>The cells of a line as text.</summary>
    public string[] Texts(ReadOnlyMemory<byte> line, Func<ReadOnlySpan<byte>, string> decode)
    {
        _cells.Split(line.Span, Delimiter);
        var texts = new string[Math.Min(_cells.Count, LogCells.MaxColumns)];
        for (var i = 0; i < texts.Length; i++)
            texts[i] = decode(_cells.Cell(line.Span, i)).Replace("\"\"", "\"", StringComparison.Ordinal);
        return texts;
    }

    /// <summary>The lines above the header that say something, cut to a bearable length.</summary>
    public List<string> Preamble(IReadOnlyList<ReadOnlyMemory<byte>> lines, Func<ReadOnlySpan<byte>, string> decode) =>
    [
        .. lines.Take(Header >= 0 ? Header : FirstSamples).Where(line => !line.Span.Trim((byte)' ').IsEmpty).Take(MostPreamble)
            .Select(line => decode(line.Span[..Math.Min(line.Length, LongestPreambleLine)])),
    ];

    /// <summary>True when a cell holds what samples are made of: a number, a time, or a word that stands for a missing number.</summary>
    public static bool IsValue(ReadOnlySpan<byte> cell) =>
        LogNumber.Read(cell, (byte)'.', out _, out _) != LogCellKind.Words
        || LogNumber.Read(cell, (byte)',', out _, out _) != LogCellKind.Words
        || (LogClock.TryClock(cell, out _, out var used) && used == cell.Length)
        || LogClock.TryDateTime(cell, LogClock.DateOrder.YearFirst, out _, out _)
        || LogClock.TryDateTime(cell, LogClock.DateOrder.DayFirst, out _, out _)
        || LogClock.TryDateTime(cell, LogClock.DateOrder.MonthFirst, out _, out _);

    private static (LogTable? Table, double Score) Try(IReadOnlyList<ReadOnlyMemory<byte>> lines, byte delimiter)
    {
        var cells = new LogCells();
        var byWidth = new Dictionary<int, (int Lines, int Values, int Words, int First)>();
        var written = 0;
        for (var index = 0; index < lines.Count; index++)
        {
            var line = lines[index].Span;
            cells.Split(line, delimiter);
            if (cells.Count == 0 || line.Trim((byte)' ').IsEmpty)
                continue;
            written++;
            var (values, words) = Count(cells, line);
            if (cells.Count < 2 && delimiter != LogCells.NoDelimiter)
                continue;
            var isSamples = values >= 2 || (values == 1 && (cells.Count <= 2 || words == 0));
            var before = byWidth.GetValueOrDefault(cells.Count, (Lines: 0, Values: 0, Words: 0, First: -1));
            byWidth[cells.Count] = (
                before.Lines + 1, before.Values + values, before.Words + words, before.First >= 0 || !isSamples ? before.First : index);
        }

        LogTable? best = null;
        var bestScore = 0.0;
        foreach (var (width, found) in byWidth.Where(entry => entry.Value.First >= 0).OrderBy(entry => entry.Value.First))
        {
            var score = found.Values / (double)Math.Max(1, found.Values + found.Words) * found.Lines * width;
            if (score > bestScore)
                (best, bestScore) = (new LogTable { Delimiter = delimiter, Width = width, FirstSamples = found.First }, score);
        }

        if (best is null)
            return (null, 0);
        var taken = byWidth[best.Width];
        return (best, taken.Values / (double)(taken.Values + taken.Words) * taken.Lines / written);
    }

    // What is missing counts neither way.
    private static (int Values, int Words) Count(LogCells cells, ReadOnlySpan<byte> line)
    {
        var (values, words) = (0, 0);
        for (var i = 0; i < Math.Min(cells.Count, LogCells.MaxColumns); i++)
        {
            var cell = cells.Cell(line, i);
            if (cell.IsEmpty)
                continue;
            if (IsValue(cell))
                values++;
            else
                words++;
        }

        return (values, words);
    }

    private void FindDecimalMark(IReadOnlyList<ReadOnlyMemory<byte>> lines)
    {
        int commas = 0, points = 0, doubtful = 0;
        for (var index = FirstSamples; index < lines.Count; index++)
        {
            var line = lines[index].Span;
            _cells.Split(line, Delimiter);
            for (var i = 0; _cells.Count == Width && i < Math.Min(Width, LogCells.MaxColumns); i++)
            {
                var cell = _cells.Cell(line, i);
                var comma = cell.LastIndexOf((byte)',');
                var point = cell.LastIndexOf((byte)'.');
                if (cell.Contains((byte)':') || cell.Count((byte)'.') > 1 || comma == point)
                    continue;
                if (comma > point && (point >= 0 || cell.Count((byte)',') == 1) && LogNumber.Read(cell, (byte)',', out _, out _) == LogCellKind.Number)
                {
                    var mayBeThousands = point < 0 && cell.Length - comma == 4 && comma is > 0 and <= 4 && cell[comma == 1 ? 0 : 1] is not (byte)'0' && cell[0] != '0';
                    commas += mayBeThousands ? 0 : 1;
                    doubtful += mayBeThousands ? 1 : 0;
                }
                else if (point > comma && LogNumber.Read(cell, (byte)'.', out _, out _) == LogCellKind.Number)
                {
                    points++;
                }
            }
        }

        if (commas > points || (points == 0 && doubtful > 0))
            DecimalMark = (byte)',';
        IsDecimalMarkDoubtful = commas == 0 && points == 0 && doubtful > 0;
    }

    private void FindHeader(IReadOnlyList<ReadOnlyMemory<byte>> lines)
    {
        for (var index = FirstSamples - 1; index >= Math.Max(0, FirstSamples - 4); index--)
        {
            var line = lines[index].Span;
            _cells.Split(line, Delimiter);
            if (line.Trim((byte)' ').IsEmpty)
                continue;
            var (values, words) = Count(_cells, line);
            if (words == 0 || values * 4 > _cells.Count || _cells.Count * 2 < Width)
                return;
            if (Header < 0)
                Header = index;
            else if (Units < 0 && IsRowOfUnits(lines[Header].Span))
                (Units, Header) = (Header, index);
            else
                return;
        }
    }

    private bool IsRowOfUnits(ReadOnlySpan<byte> line)
    {
        _cells.Split(line, Delimiter);
        var units = 0;
        for (var i = 0; i < Math.Min(_cells.Count, LogCells.MaxColumns); i++)
        {
            var cell = _cells.Cell(line, i).Trim("[]()"u8);
            if (cell.IsEmpty || cell.SequenceEqual("-"u8))
                continue;
            // Any letters beyond ASCII in a unit are µ, Ω or °, which one bad byte may stand for.
            if (cell.Length > 8 || (LogUnit.Find(System.Text.Encoding.UTF8.GetString(cell)) is null && !cell.ContainsAnyInRange((byte)0x80, (byte)0xFF)))
                return false;
            units++;
        }

        return units > 0;
    }
}
