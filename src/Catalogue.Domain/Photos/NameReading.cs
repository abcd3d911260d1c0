using System.Buffers;
using System.Text;

namespace Catalogue.Domain.Photos;

/// <summary>What one part of a path says: the name of a folder, or that of the file without its ending.</summary>
internal sealed class NameReading
{
    private const int LongestName = 4;

    private static readonly SearchValues<char> InsideWords = SearchValues.Create(".,;+&'’/");

    private readonly string _composed;
    private readonly List<NameToken> _tokens;
    private readonly List<Unit> _units = [];

    private NameReading(string composed)
    {
        _composed = composed;
        _tokens = NameToken.Of(composed);
        FindUnits();
        var board = FindBoard();
        if (board is var (from, to, word))
        {
            (Board, BoardWord) = (NameOf(from, to), word);
            SetBoardKey(from, to);
        }

        var sides = _units.Where(unit => unit.Kind is PhotoWordKind.Top or PhotoWordKind.Bottom && !Within(unit, board)).ToList();
        if (sides.Count > 0)
        {
            (IsTop, SideWord) = (sides[^1].Kind == PhotoWordKind.Top, TextOf(sides[^1]));
            HasBothSides = sides.Exists(side => side.Kind != sides[^1].Kind);
        }

        DetailWord = First(PhotoWordKind.Detail, board);
        ProductWord = First(PhotoWordKind.Product, board);
        if (_units.FindIndex(unit => unit.Kind == PhotoWordKind.Step) is var step and >= 0)
        {
            StepWord = TextOf(_units[step]);
            var number = step + 1 < _units.Count && _units[step + 1].Kind == PhotoWordKind.Number ? step + 1
                : step > 0 && _units[step - 1].Kind == PhotoWordKind.Number ? step - 1
                : -1;
            if (number >= 0 && int.TryParse(_tokens[_units[number].From].Key, out var counted) && counted is > 0 and < 1000)
                Step = counted;
            Caption = WholeCaption = CaptionOf(Math.Max(step, number) + 1, null, isWhole: true);
        }
        else
        {
            Caption = CaptionOf(0, board, isWhole: false);
            WholeCaption = CaptionOf(0, null, isWhole: true);
            if (_units is [{ Kind: PhotoWordKind.Number }, ..] && int.TryParse(_tokens[0].Key, out var leading) && leading is > 0 and < 1000)
                LeadingNumber = leading;
        }

        if (board is null && StepWord is null && ProductWord is null)
            FindPlainName();
    }

    /// <summary>The name of the board that it speaks of, as it would be printed; null where it says no word for a board.</summary>
    public string? Board { get; }

    /// <summary>The word for a board as written, or null.</summary>
    public string? BoardWord { get; }

    /// <summary>What distinguishes the board, for comparing; empty where nothing does.</summary>
    public BoardKey BoardKey { get; private set; } = BoardKey.None;

    /// <summary>Words that no meaning is known for and that may be the name of a board, or null.</summary>
    public string? PlainName { get; private set; }

    /// <summary>True where the plain name stands before a side or a word for a detail.</summary>
    public bool IsNameBeforeSide { get; private set; }

    /// <summary>True for the upper side or the front; counts only with a <see cref="SideWord"/>.</summary>
    public bool IsTop { get; }

    /// <summary>The word for the side as written, or null.</summary>
    public string? SideWord { get; }

    /// <summary>True where both sides are named.</summary>
    public bool HasBothSides { get; }

    /// <summary>The word for a detail as written, or null.</summary>
    public string? DetailWord { get; }

    /// <summary>The word for the product from outside as written, or null.</summary>
    public string? ProductWord { get; }

    /// <summary>The word for a step as written, or null.</summary>
    public string? StepWord { get; }

    /// <summary>The number of the step, 1 to 999, or null.</summary>
    public int? Step { get; }

    /// <summary>The number that the name begins with, 1 to 999, or null.</summary>
    public int? LeadingNumber { get; }

    /// <summary>What is left for a caption, or null.</summary>
    public string? Caption { get; private set; }

    /// <summary>The caption where the picture is one of a step: words for boards and sides then only describe it. Null where nothing is left.</summary>
    public string? WholeCaption { get; }

    /// <summary>Reads one part of a path.</summary>
    public static NameReading Of(string name) => new(NameToken.Compose(name));

    private void FindUnits()
    {
        for (var at = 0; at < _tokens.Count;)
        {
            var (kind, length) = KindAt(at);
            _units.Add(new Unit(kind, at, at + length));
            at += length;
        }
    }

    private (PhotoWordKind Kind, int Length) KindAt(int at)
    {
        if (_tokens[at].IsNumber)
            return (PhotoWordKind.Number, 1);
        for (var length = Math.Min(PhotoWords.LongestPhrase, _tokens.Count - at); length > 0; length--)
        {
            if (PhotoWords.KindOf(string.Join(' ', _tokens.Skip(at).Take(length).Select(token => token.Key))) is { } kind)
                return (kind, length);
        }

        return (PhotoWordKind.Other, 1);
    }

    // The word for a board with the words that say which: in front of it, or behind it where the language puts them there, and its letter or number.
    private (int From, int To, string Word)? FindBoard()
    {
        var at = _units.FindIndex(unit => unit.Kind is PhotoWordKind.Board or PhotoWordKind.BoardBeforeName);
        if (at < 0)
            return null;
        var (first, last) = (at, at);
        while (first > 0 && at - first < LongestName && _units[first - 1].Kind == PhotoWordKind.Other)
            first--;
        if (_units[at].Kind == PhotoWordKind.BoardBeforeName)
            last = BehindBoard(at);
        if (last == at && first == at && at + 1 < _units.Count && IsDesignator(at + 1))
            last = at + 1;
        else if (last == at && at + 1 < _units.Count && IsDesignator(at + 1) && !IsLastOf(at + 1))
            last = at + 1;
        return (_units[first].From, _units[last].To, TextOf(_units[at]));
    }

    private int BehindBoard(int at)
    {
        var last = at;
        for (var next = at + 1; next < _units.Count && next - at <= LongestName; next++)
        {
            var key = _tokens[_units[next].From].Key;
            if (key is "de" or "du" or "des" or "del" or "la" or "d")
                continue;
            var isNamed = PhotoWords.Meaning(key) != key || _tokens[_units[next - 1].From].Key is "de" or "du" or "des" or "del" or "la" or "d";
            if (_units[next].Kind is not (PhotoWordKind.Other or PhotoWordKind.Filler) || !isNamed)
                break;
            last = next;
        }

        return last;
    }

    // One letter, or a number as people count boards: not padded with zeros, not in brackets.
    private bool IsDesignator(int unit)
    {
        var token = _tokens[_units[unit].From];
        return token.IsNumber
            ? !token.IsPadded && token.Key.Length <= 2 && !IsBracketed(token)
            : token.Text.Length == 1 && char.IsAsciiLetter(token.Text[0]) && _units[unit].To - _units[unit].From == 1;
    }

    private bool IsBracketed(NameToken token) =>
        token.Start > 0 && _composed[token.Start - 1] is '(' or '[' && token.End < _composed.Length && _composed[token.End] is ')' or ']';

    private bool IsLastOf(int unit) => unit == _units.Count - 1 && _tokens[_units[unit].From].IsNumber;

    private void SetBoardKey(int from, int to) => BoardKey = BoardKey.Of(_tokens[from..to]);

    private void FindPlainName()
    {
        var run = _units.FindIndex(unit => unit.Kind == PhotoWordKind.Other);
        if (run < 0 || _units[run].From > 0 && _units[..run].Exists(unit => unit.Kind is not (PhotoWordKind.Filler or PhotoWordKind.Number)))
            return;
        var end = run;
        while (end + 1 < _units.Count && end - run < LongestName && _units[end + 1].Kind == PhotoWordKind.Other)
            end++;
        var isLast = end == _units.Count - 1 || _units[(end + 1)..].TrueForAll(unit => unit.Kind is PhotoWordKind.Number);
        var next = end + 1 < _units.Count ? _units[end + 1].Kind : PhotoWordKind.Filler;
        IsNameBeforeSide = next is PhotoWordKind.Top or PhotoWordKind.Bottom or PhotoWordKind.Detail;
        if (!IsNameBeforeSide && !isLast)
            return;
        PlainName = NameOf(_units[run].From, _units[end].To);
        SetBoardKey(_units[run].From, _units[end].To);
        if (IsNameBeforeSide)
            CaptionWithoutName = CaptionOf(end + 1, null, isWhole: false);
    }

    /// <summary>The caption where the plain name is taken for that of a board.</summary>
    public string? CaptionWithoutName { get; private set; }

    // From a unit on, without the board and its side, without counters, and without words that say nothing at either end.
    private string? CaptionOf(int from, (int From, int To, string Word)? board, bool isWhole)
    {
        var units = _units.Skip(from)
            .Where(unit => !Within(unit, board) && (isWhole || unit.Kind is not (PhotoWordKind.Top or PhotoWordKind.Bottom or PhotoWordKind.Detail) || (unit.Kind is not PhotoWordKind.Detail && ProductIsSaid(board))))
            .ToList();
        while (units.Count > 0 && (units[^1].Kind == PhotoWordKind.Filler || (units[^1].Kind == PhotoWordKind.Number && IsCounter(units[^1]))))
            units.RemoveAt(units.Count - 1);
        while (units.Count > 0 && units[0].Kind is PhotoWordKind.Filler or PhotoWordKind.Number)
            units.RemoveAt(0);
        if (units.Count == 0 || units.TrueForAll(unit => unit.Kind is PhotoWordKind.Number or PhotoWordKind.Filler))
            return null;

        // What was taken out of the middle leaves two pieces.
        var caption = new StringBuilder();
        for (var i = 0; i < units.Count; i++)
        {
            var last = i;
            while (last + 1 < units.Count && units[last + 1].From == units[last].To)
                last++;
            caption.Append(caption.Length > 0 ? " " : "").Append(SpanText(units[i].From, units[last].To));
            i = last;
        }

        var text = Families.WellFormedText.Start(caption.ToString(), Photo.MaxCaptionLength);
        return char.ToUpperInvariant(text[0]) + text[1..];
    }

    private bool ProductIsSaid((int From, int To, string Word)? board) => board is null && _units.Exists(unit => unit.Kind == PhotoWordKind.Product);

    // A number at the end counts pictures; one that stands right behind a letter, as in U3, belongs to it.
    private bool IsCounter(Unit unit) => unit.From == 0 || _tokens[unit.From].Start > _tokens[unit.From - 1].End || _tokens[unit.From].IsPadded;

    private string NameOf(int from, int to)
    {
        // “board-a” is printed as board A is: the letter stands large and alone.
        var text = to - from == 2 && _tokens[to - 1].Text.Length == 1 ? $"{_tokens[from].Text} {_tokens[to - 1].Text.ToUpperInvariant()}" : SpanText(from, to);
        text = Families.WellFormedText.Start(text, Teardowns.Board.MaxNameLength);
        return char.ToUpperInvariant(text[0]) + text[1..];
    }

    // As written, with blanks for underscores and for hyphens that only stand for blanks: the one of “DC-DC” stays.
    private string SpanText(int from, int to)
    {
        var text = new StringBuilder(_tokens[from].Text);
        for (var i = from + 1; i < to; i++)
        {
            var (before, after) = (_tokens[i - 1], _tokens[i]);
            var between = _composed[before.End..after.Start];
            text.Append(between switch
            {
                "" => "",
                "-" when IsCapital(before) && IsCapital(after) => "-",
                _ when between.AsSpan().ContainsAnyExcept(InsideWords) => " ",
                _ => between,
            }).Append(after.Text);
        }

        return text.ToString();

        static bool IsCapital(NameToken token) => token.Text.All(character => char.IsAsciiLetterUpper(character) || char.IsAsciiDigit(character));
    }

    private string? First(PhotoWordKind kind, (int From, int To, string Word)? board) => _units.Find(unit => unit.Kind == kind && !Within(unit, board)) is { } unit ? TextOf(unit) : null;

    private string TextOf(Unit unit) => _composed[_tokens[unit.From].Start.._tokens[unit.To - 1].End];

    private static bool Within(Unit unit, (int From, int To, string Word)? board) => board is var (from, to, _) && unit.From >= from && unit.To <= to;

    /// <summary>Tokens that say one thing together.</summary>
    private sealed record Unit(PhotoWordKind Kind, int From, int To);
}
