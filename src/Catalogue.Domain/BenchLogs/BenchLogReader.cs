using System.Buffers;
using System.Text;
using Catalogue.Domain.Components.Lists;

namespace Catalogue.Domain.BenchLogs;

/// <summary>Reads a bench log while its bytes arrive, in memory that does not grow with its length.</summary>
/// <remarks>
/// <para>The first <see cref="HeadBytes"/> bytes decide on encoding, delimiter, header, roles and the form of times; then lines go by one at a
/// time. A line has at most <see cref="MaxLineBytes"/> bytes and <see cref="LogCells.MaxColumns"/> cells that are read; longer lines are
/// passed over and said.</para>
/// <para>A record is a line. Where quotation marks leave one open, up to eight lines are joined if together they have the cells of a record.</para>
/// </remarks>
public sealed class BenchLogReader
{
    /// <summary>How much of a log is looked at before its samples are read.</summary>
    public const int HeadBytes = 128 * 1024;

    /// <summary>The longest line that is read.</summary>
    public const int MaxLineBytes = 256 * 1024;

    private const int MostJoinedLines = 8;
    private const int MostHeadersLookedFor = 10_000;
    private const int BlockChars = 4096;

    private static readonly SearchValues<byte> LineEnds = SearchValues.Create("\r\n"u8);

    private readonly BenchLogOptions _options;
    private readonly LogCells _cells = new();
    private readonly ArrayBufferWriter<byte> _carry = new();
    private readonly ArrayBufferWriter<byte> _open = new();
    private readonly ArrayBufferWriter<byte> _short = new();
    private ArrayBufferWriter<byte>? _head = new(HeadBytes);
    private Decoder? _wideDecoder;
    private readonly LogEncoding _encoding = new();
    private LogLayout? _layout;
    private LogSamples? _samples;
    private readonly LogRemarks _remarks = new();
    private byte[] _header = [];
    private string? _refusal;
    private bool _afterReturn;
    private bool _lineTooLong;
    private bool _hasShort;
    private int _openLines;
    private long _shortLine;
    private long _line;
    private long _firstSampleLine;
    private bool _completed;

    /// <summary>Prepares to read a log.</summary>
    public BenchLogReader(BenchLogOptions? options = null) => _options = options ?? new BenchLogOptions();

    /// <summary>Reads a log to the end of a stream. Faults of the stream go to the caller.</summary>
    public static async ValueTask<BenchLogReading> ReadAsync(Stream stream, BenchLogOptions? options = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var reader = new BenchLogReader(options);
        var buffer = ArrayPool<byte>.Shared.Rent(64 * 1024);
        try
        {
            for (int read; (read = await stream.ReadAsync(buffer, cancellationToken).ConfigureAwait(false)) > 0;)
                reader.Push(buffer.AsSpan(0, read));
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }

        return reader.Complete();
    }

    /// <summary>Reads a log that is all there.</summary>
    public static BenchLogReading Read(ReadOnlySpan<byte> bytes, BenchLogOptions? options = null)
    {
        var reader = new BenchLogReader(options);
        reader.Push(bytes);
        return reader.Complete();
    }

    /// <summary>Takes the next bytes of the log, cut anywhere.</summary>
    public void Push(ReadOnlySpan<byte> bytes)
    {
        ObjectDisposedException.ThrowIf(_completed, this);
        if (_refusal is not null)
            return;
        if (_head is not null)
        {
            var taken = Math.Min(bytes.Length, HeadBytes - _head.WrittenCount);
            _head.Write(bytes[..taken]);
            bytes = bytes[taken..];
            if (_head.WrittenCount < HeadBytes)
                return;
            Begin(isAll: false);
        }

        Decode(bytes);
    }

    /// <summary>Ends the log and tells what it says.</summary>
    public BenchLogReading Complete()
    {
        ObjectDisposedException.ThrowIf(_completed, this);
        if (_head is not null)
            Begin(isAll: true);
        _completed = true;
        if (_refusal is not null)
            return new BenchLogReading.Refused(_refusal);
        if (_carry.WrittenCount > 0 || _lineTooLong)
            EndLine([]);
        ReleaseOpen();
        if (_hasShort)
            TakeShort(isLast: true);
        return _samples!.Samples == 0
            ? new BenchLogReading.Refused("The log has no line with a time or a measured value. It needs a header and lines of numbers, as text with separators (CSV or TSV).")
            : new BenchLogReading.Read(new LogReport(_layout!, _samples, _remarks, _encoding).Make());
    }

    private void Begin(bool isAll)
    {
        var head = _head!.WrittenSpan;
        _head = null;
        _refusal = Refusal(head, out var markLength);
        if (_refusal is not null)
            return;
        var text = head[markLength..];
        if (_encoding.Wide is not null)
        {
            _wideDecoder = _encoding.Wide.GetDecoder();
            text = Narrow(text);
        }

        _encoding.Look(text);
        var lines = Lines(text, isAll);
        _layout = LogLayout.Find(lines.ConvertAll(line => line.Text), DecodeText, _options);
        if (_layout is null)
        {
            _refusal = "The text has no line of numbers or times. A bench log has a header and lines of numbers, as text with separators (CSV or TSV).";
            return;
        }

        _firstSampleLine = lines[_layout.Table.FirstSamples].Number;
        if (_layout.Table.Header >= 0)
            _header = lines[_layout.Table.Header].Text.ToArray();
        _samples = new LogSamples(_layout, _cells, _options.StepBack, DecodeText);
        Feed(text);
    }

    private string? Refusal(ReadOnlySpan<byte> head, out int markLength)
    {
        markLength = 0;
        if (head.Trim(" \t\r\n\0"u8).IsEmpty)
            return "The log is empty.";
        if (ListText.Signature(head) is { } kind)
            return $"The content is {kind}, not a bench log. Save the log as text with separators (CSV or TSV).";
        (var marked, var name, markLength) = ListText.ByMark(head);
        var isGuess = marked is null;
        if (isGuess && ListText.WideWithoutMark(head) is { } wide)
            (marked, name) = wide;
        if (marked is not null && marked.CodePage != Encoding.UTF8.CodePage)
            _encoding.TakeWide(marked, name, isGuess);
        else if (ListText.ShareOfControls(head) > ListText.MostControlsInText)
            return "The content is binary, not a bench log. Save the log as text with separators (CSV or TSV).";
        return null;
    }

    private string DecodeText(ReadOnlySpan<byte> bytes) => LogText.Decode(bytes, _encoding.Text);

    private static List<(ReadOnlyMemory<byte> Text, long Number)> Lines(ReadOnlySpan<byte> text, bool isAll)
    {
        var lines = new List<(ReadOnlyMemory<byte> Text, long Number)>();
        var memory = text.ToArray().AsMemory();
        var starts = new List<int>();
        for (var at = 0; at < memory.Length;)
        {
            var length = memory.Span[at..].IndexOfAny(LineEnds);
            if (length < 0 && !isAll && lines.Count > 0)
                break;
            var end = length < 0 ? memory.Length : at + length;
            starts.Add(at);
            lines.Add((memory[at..end], lines.Count + 1));
            at = end + (end + 1 < memory.Length && memory.Span[end] == '\r' && memory.Span[end + 1] == '\n' ? 2 : 1);
        }

        return Joined(lines, starts, memory);
    }

    // A record that a quotation mark carries over a line's end is one line to whoever looks for the header.
    private static List<(ReadOnlyMemory<byte> Text, long Number)> Joined(List<(ReadOnlyMemory<byte> Text, long Number)> lines, List<int> starts, ReadOnlyMemory<byte> memory)
    {
        var joined = new List<(ReadOnlyMemory<byte>, long)>(lines.Count);
        for (var i = 0; i < lines.Count; i++)
        {
            var last = IsOdd(lines[i].Text.Span) ? i + 1 : i;
            while (last > i && last < lines.Count && last - i < MostJoinedLines && !IsOdd(lines[last].Text.Span))
                last++;
            if (last == i || last >= lines.Count || last - i >= MostJoinedLines)
            {
                joined.Add(lines[i]);
                continue;
            }

            joined.Add((memory[starts[i]..(starts[last] + lines[last].Text.Length)], lines[i].Number));
            i = last;
        }

        return joined;
    }

    private static bool IsOdd(ReadOnlySpan<byte> line) => line.Count((byte)'"') % 2 != 0;

    private void Decode(ReadOnlySpan<byte> bytes)
    {
        if (_refusal is not null || bytes.IsEmpty)
            return;
        if (_wideDecoder is not null)
            bytes = Narrow(bytes);
        _encoding.Look(bytes);
        Feed(bytes);
    }

    // Two or four bytes a character become UTF-8, which the rest of the reader is made for.
    private byte[] Narrow(ReadOnlySpan<byte> bytes)
    {
        var narrow = new ArrayBufferWriter<byte>(bytes.Length + 16);
        Span<char> chars = stackalloc char[BlockChars];
        while (!bytes.IsEmpty)
        {
            _wideDecoder!.Convert(bytes, chars, flush: false, out var used, out var made, out _);
            bytes = bytes[used..];
            Encoding.UTF8.GetBytes(chars[..made], narrow);
        }

        return narrow.WrittenSpan.ToArray();
    }

    private void Feed(ReadOnlySpan<byte> text)
    {
        while (!text.IsEmpty)
        {
            if (_afterReturn && text[0] == '\n')
                text = text[1..];
            _afterReturn = false;
            var length = text.IndexOfAny(LineEnds);
            if (length < 0)
            {
                Carry(text);
                return;
            }

            _afterReturn = text[length] == '\r';
            EndLine(text[..length]);
            text = text[(length + 1)..];
        }
    }

    private void Carry(ReadOnlySpan<byte> part)
    {
        _lineTooLong |= _carry.WrittenCount + part.Length > MaxLineBytes;
        if (!_lineTooLong)
            _carry.Write(part);
    }

    private void EndLine(ReadOnlySpan<byte> rest)
    {
        _line++;
        if (_lineTooLong || _carry.WrittenCount + rest.Length > MaxLineBytes)
        {
            _lineTooLong = false;
            _remarks.TooLongLines++;
        }
        else if (_carry.WrittenCount == 0)
        {
            Join(rest);
        }
        else
        {
            _carry.Write(rest);
            Join(_carry.WrittenSpan);
        }

        _carry.ResetWrittenCount();
    }

    private void Join(ReadOnlySpan<byte> line)
    {
        if (_line < _firstSampleLine)
            return;
        var isOdd = IsOdd(line);
        if (_openLines == 0 && !isOdd)
        {
            Take(line, _line);
            return;
        }

        if (_openLines > 0)
            _open.Write("\n"u8);
        _open.Write(line);
        _openLines++;
        if (isOdd && _openLines > 1)
        {
            _cells.Split(_open.WrittenSpan, _layout!.Table.Delimiter);
            if (_cells.Count == _layout.Table.Width && _cells.OpenQuotes == 0)
                TakeJoined();
            else
                ReleaseOpen();
        }
        else if (_openLines >= MostJoinedLines || _open.WrittenCount > MaxLineBytes)
        {
            ReleaseOpen();
        }
    }

    private void TakeJoined()
    {
        Take(_open.WrittenSpan, _line - _openLines + 1);
        _open.ResetWrittenCount();
        _openLines = 0;
    }

    private void ReleaseOpen()
    {
        if (_openLines == 0)
            return;
        var number = _line - _openLines;
        foreach (var part in _open.WrittenSpan.Split((byte)'\n'))
            Take(_open.WrittenSpan[part], ++number);
        _remarks.OpenQuotes++;
        _open.ResetWrittenCount();
        _openLines = 0;
    }

    private void Take(ReadOnlySpan<byte> line, long number)
    {
        if (line.IsEmpty || _remarks.OtherHeaderLine > 0 || line.Trim(" \t\0"u8).IsEmpty)
            return;
        if (_hasShort)
            TakeShort(isLast: false);
        _cells.Split(line, _layout!.Table.Delimiter);
        if (_cells.Count < _layout.Table.Width)
        {
            // Whether it was cut off or only lacks cells is known when the next line comes.
            _short.Write(line);
            (_hasShort, _shortLine) = (true, number);
            return;
        }

        TakeSplit(line, number, isCutOff: false);
    }

    private void TakeShort(bool isLast)
    {
        _hasShort = false;
        var line = _short.WrittenSpan;
        _cells.Split(line, _layout!.Table.Delimiter);
        if (isLast && _samples!.Samples > 0)
            _remarks.CutOffLine = _shortLine;
        TakeSplit(line, _shortLine, isLast && _samples!.Samples > 0);
        _short.ResetWrittenCount();
    }

    private void TakeSplit(ReadOnlySpan<byte> line, long number, bool isCutOff)
    {
        _remarks.FormulaTexts += _cells.FormulaTexts;
        if (_header.Length > 0 && line.SequenceEqual(_header))
        {
            _remarks.RepeatedHeaders++;
            _remarks.FirstRepeatedHeader = _remarks.FirstRepeatedHeader == 0 ? number : _remarks.FirstRepeatedHeader;
        }
        else if (!_samples!.Take(line, number, isCutOff))
        {
            _remarks.LinesWithoutSample++;
            _remarks.FirstLineWithoutSample = _remarks.FirstLineWithoutSample == 0 ? number : _remarks.FirstLineWithoutSample;
            if (_remarks.LinesWithoutSample <= MostHeadersLookedFor && IsOtherHeader(line))
                _remarks.OtherHeaderLine = number;
        }
        else if (!isCutOff && _cells.Count < _layout!.Table.Width)
        {
            _remarks.ShortLines++;
        }
    }

    private bool IsOtherHeader(ReadOnlySpan<byte> line)
    {
        var named = 0;
        for (var i = 0; i < Math.Min(_cells.Count, _layout!.Columns.Count); i++)
            named += _cells.Cell(line, i) is { Length: > 0 and <= 60 } cell && LogName.Read(DecodeText(cell)) is { Quantity: not LogQuantity.None } ? 1 : 0;
        return named >= 2;
    }
}
