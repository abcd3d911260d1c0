namespace Catalogue.Domain.BenchLogs;

/// <summary>
/// Where the cells of a line lie, found without allocating: the same arrays serve every line. A cell may stand in quotation marks, also as
/// <c>="..."</c>; a mark that nothing closes is text.
/// </summary>
internal sealed class LogCells
{
    /// <summary>Cells beyond this many are counted and not kept.</summary>
    public const int MaxColumns = 1024;

    /// <summary>Stands for runs of blanks between cells.</summary>
    public const byte Blanks = (byte)' ';

    /// <summary>Stands for no delimiter: the line is one cell.</summary>
    public const byte NoDelimiter = 0;

    private readonly int[] _from = new int[MaxColumns];
    private readonly int[] _to = new int[MaxColumns];

    /// <summary>How many cells the line has, kept or not.</summary>
    public int Count { get; private set; }

    /// <summary>How many cells were written as <c>="..."</c>.</summary>
    public int FormulaTexts { get; private set; }

    /// <summary>How many cells begin with a quotation mark that nothing closes.</summary>
    public int OpenQuotes { get; private set; }

    /// <summary>The cell's bytes without blanks and marks around them; empty beyond the last.</summary>
    public ReadOnlySpan<byte> Cell(ReadOnlySpan<byte> line, int index) =>
        (uint)index < (uint)Math.Min(Count, MaxColumns) ? line[_from[index].._to[index]].Trim((byte)' ') : default;

    public void Split(ReadOnlySpan<byte> line, byte delimiter)
    {
        (Count, FormulaTexts, OpenQuotes) = (0, 0, 0);
        if (delimiter == NoDelimiter)
            Keep(0, line.Length);
        else if (delimiter == Blanks)
            SplitAtBlanks(line);
        else if (line.Contains((byte)'"'))
            SplitQuoted(line, delimiter);
        else
            SplitPlain(line, delimiter);
    }

    private void SplitPlain(ReadOnlySpan<byte> line, byte delimiter)
    {
        var from = 0;
        var from0 = _from;
        var to0 = _to;
        var count = 0;
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] != delimiter)
                continue;
            if ((uint)count < (uint)from0.Length && (uint)count < (uint)to0.Length)
                (from0[count], to0[count]) = (from, i);
            count++;
            from = i + 1;
        }

        Count = count;
        Keep(from, line.Length);
    }

    private void SplitAtBlanks(ReadOnlySpan<byte> line)
    {
        for (var at = 0; at < line.Length;)
        {
            if (line[at] == ' ')
            {
                at++;
                continue;
            }

            var length = line[at..].IndexOf((byte)' ');
            var end = length < 0 ? line.Length : at + length;
            Keep(at, end);
            at = end;
        }
    }

    private void SplitQuoted(ReadOnlySpan<byte> line, byte delimiter)
    {
        var noMoreCloses = false;
        for (var at = 0; ;)
        {
            var open = at;
            while (open < line.Length && line[open] == ' ')
                open++;
            var isFormula = line[open..].StartsWith("=\""u8);
            open += isFormula ? 1 : 0;
            var close = noMoreCloses || open >= line.Length || line[open] != '"' ? -1 : FindClose(line, open + 1, delimiter);
            // What nothing closes from here on, nothing closes further on either: no line is searched twice.
            noMoreCloses |= close < 0 && open < line.Length && line[open] == '"';
            int end;
            if (close >= 0)
            {
                Keep(open + 1, close);
                FormulaTexts += isFormula ? 1 : 0;
                end = AfterBlanks(line, close + 1);
            }
            else
            {
                var length = line[at..].IndexOf(delimiter);
                end = length < 0 ? line.Length : at + length;
                Keep(at, end);
                OpenQuotes += open < line.Length && line[open] == '"' ? 1 : 0;
            }

            if (end >= line.Length)
                return;
            at = end + 1;
        }
    }

    private static int FindClose(ReadOnlySpan<byte> line, int from, byte delimiter)
    {
        for (var i = from; i < line.Length; i++)
        {
            var length = line[i..].IndexOf((byte)'"');
            if (length < 0)
                return -1;
            i += length;
            if (i + 1 < line.Length && line[i + 1] == '"')
            {
                i++;
                continue;
            }

            var after = AfterBlanks(line, i + 1);
            if (after >= line.Length || line[after] == delimiter)
                return i;
        }

        return -1;
    }

    private static int AfterBlanks(ReadOnlySpan<byte> line, int at)
    {
        while (at < line.Length && line[at] == ' ')
            at++;
        return at;
    }

    private void Keep(int from, int to)
    {
        if (Count < MaxColumns)
            (_from[Count], _to[Count]) = (from, to);
        Count++;
    }
}
