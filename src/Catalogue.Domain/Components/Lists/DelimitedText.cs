using System.Globalization;

namespace Catalogue.Domain.Components.Lists;

/// <summary>
/// Splits text into records and fields, one pass, in time linear in its length whatever the quotation marks do.
/// </summary>
/// <remarks>
/// A field is quoted when a quotation mark opens it and another one, standing before a delimiter, a line's end or the end of the text,
/// closes it; doubled marks inside stand for one. Any other mark is text. A mark that would swallow the openings of later quoted fields
/// is taken as text too, so that one stray mark costs one field and not the rest of the file.
/// </remarks>
internal sealed class DelimitedText
{
    private const int None = int.MaxValue;

    private readonly string _text;
    private readonly char _delimiter;
    private readonly List<string> _cells = [];
    private int _position;
    private int _line = 1;
    private int _nextClose = -1;
    private int _nextOpening = -1;
    private int _nextBreak = -1;
    private string? _tooBig;
    private bool _bareQuote;
    private bool _openQuote;

    private DelimitedText(string text, char delimiter)
    {
        _text = text;
        _delimiter = delimiter;
    }

    /// <summary>The records in order, blank ones included.</summary>
    public static IEnumerable<ListLine> Lines(string text, char delimiter)
    {
        var reader = new DelimitedText(text, delimiter);
        while (reader._position < text.Length)
        {
            yield return reader.ReadLine();
        }
    }

    private ListLine ReadLine()
    {
        var firstLine = _line;
        _cells.Clear();
        (_tooBig, _bareQuote, _openQuote) = (null, false, false);
        var fields = 0;
        while (true)
        {
            var cell = ReadField(fields);
            if (++fields <= ComponentList.MaxColumns)
            {
                _cells.Add(cell);
            }
            if (_position >= _text.Length || _text[_position] != _delimiter)
            {
                break;
            }
            _position++;
        }
        SkipBreak();
        if (fields > ComponentList.MaxColumns)
        {
            _tooBig = string.Create(CultureInfo.InvariantCulture, $"the row has {fields} fields; at most {ComponentList.MaxColumns} are read");
        }
        var kept = _cells.Count;
        while (kept > 0 && _cells[kept - 1].Length == 0)
        {
            kept--;
        }
        return new ListLine(firstLine, kept == 0 ? [] : [.. _cells[..kept]], fields, _tooBig, _bareQuote, _openQuote);
    }

    private void SkipBreak()
    {
        if (_position >= _text.Length)
        {
            return;
        }
        _position += _text[_position] == '\r' && _position + 1 < _text.Length && _text[_position + 1] == '\n' ? 2 : 1;
        _line++;
    }

    private string ReadField(int index)
    {
        var start = _position;
        while (start < _text.Length && _text[start] == ' ' && _delimiter != ' ')
        {
            start++;
        }
        if (start < _text.Length && _text[start] == '"')
        {
            var close = FindClose(start);
            if (close >= 0)
            {
                return ReadQuoted(start + 1, close, index);
            }
            _openQuote = true;
        }
        var length = _text.AsSpan(_position).IndexOfAny(_delimiter, '\r', '\n');
        var end = length < 0 ? _text.Length : _position + length;
        var field = Take(_position, end, index);
        _bareQuote |= field.Contains('"', StringComparison.Ordinal);
        _position = end;
        return field;
    }

    private string ReadQuoted(int from, int close, int index)
    {
        for (var i = from; i < close; i++)
        {
            _line += _text[i] == '\n' || (_text[i] == '\r' && _text[i + 1] != '\n') ? 1 : 0;
        }
        _position = AfterBlanks(close + 1);
        var content = Take(from, close, index);
        if (!content.Contains('"', StringComparison.Ordinal))
        {
            return content;
        }
        _bareQuote |= content.Replace("\"\"", "", StringComparison.Ordinal).Contains('"', StringComparison.Ordinal);
        return content.Replace("\"\"", "\"", StringComparison.Ordinal);
    }

    private string Take(int from, int end, int index)
    {
        if (end - from > ComponentList.MaxCellCharacters)
        {
            _tooBig ??= string.Create(
                CultureInfo.InvariantCulture,
                $"the cell in column {index + 1} has {end - from} characters; at most {ComponentList.MaxCellCharacters} are read");
            return "";
        }
        return end == from ? "" : _text[from..end];
    }

    /// <summary>Where the mark is that closes the field opened at <paramref name="open"/>; -1 where the opening mark is mere text.</summary>
    private int FindClose(int open)
    {
        var afterRun = open;
        while (afterRun < _text.Length && _text[afterRun] == '"')
        {
            afterRun++;
        }
        if ((afterRun - open) % 2 == 0 && EndsField(afterRun))
        {
            return afterRun - 1;
        }
        var close = NextRun(ref _nextClose, afterRun, closing: true);
        if (close == None)
        {
            return -1;
        }
        var lineBreak = NextBreak(afterRun);
        if (lineBreak > close)
        {
            return close;
        }
        return close - open > ComponentList.MaxCellCharacters || NextRun(ref _nextOpening, lineBreak, closing: false) < close ? -1 : close;
    }

    // The three look-aheads only ever move forward: what was found stays valid until the reader passes it, so that no text is searched twice.
    private int NextBreak(int from)
    {
        if (_nextBreak < from)
        {
            var length = _text.AsSpan(from).IndexOfAny('\r', '\n');
            _nextBreak = length < 0 ? None : from + length;
        }
        return _nextBreak;
    }

    private int NextRun(ref int cached, int from, bool closing)
    {
        if (cached >= from)
        {
            return cached;
        }
        cached = None;
        for (var i = from; i < _text.Length;)
        {
            var length = _text.AsSpan(i).IndexOf('"');
            if (length < 0)
            {
                break;
            }
            var run = i + length;
            i = run;
            while (i < _text.Length && _text[i] == '"')
            {
                i++;
            }
            if ((i - run) % 2 == 1 && (closing ? EndsField(i) : !EndsField(i) && StartsField(run)))
            {
                cached = i - 1;
                break;
            }
        }
        return cached;
    }

    private bool EndsField(int position)
    {
        var end = AfterBlanks(position);
        return end >= _text.Length || _text[end] == _delimiter || _text[end] is '\r' or '\n';
    }

    private bool StartsField(int position) => position == 0 || _text[position - 1] == _delimiter || _text[position - 1] is '\r' or '\n';

    private int AfterBlanks(int position)
    {
        while (position < _text.Length && _text[position] == ' ' && _delimiter != ' ')
        {
            position++;
        }
        return position;
    }
}
