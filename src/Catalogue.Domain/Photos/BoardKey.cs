namespace Catalogue.Domain.Photos;

/// <summary>What tells boards apart in a name: its words without those for “board”, each brought to one language, its letter and its number.</summary>
internal sealed class BoardKey : IEquatable<BoardKey>
{
    private const double Likely = 0.5;

    private readonly string[] _words;

    private BoardKey(IEnumerable<string> words) => _words = [.. words.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The key of a name that says nothing but “board”.</summary>
    public static BoardKey None { get; } = new([]);

    /// <summary>True where nothing tells this board from others.</summary>
    public bool IsEmpty => _words.Length == 0;

    /// <summary>The place of the board in a record, from 0, where the name gives a letter or a number and nothing else: <c>A</c> and <c>1</c> are 0.</summary>
    public int? Place => _words is not [var only] ? null
        : only.Length == 1 && char.IsAsciiLetterLower(only[0]) ? only[0] - 'a'
        : int.TryParse(only, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var number) && number is > 0 and < 100 ? number - 1
        : null;

    /// <summary>True where the place is given by a letter, as boards are printed.</summary>
    public bool IsLetter => _words is [{ Length: 1 } only] && char.IsAsciiLetterLower(only[0]);

    /// <summary>The key of a name.</summary>
    public static BoardKey Of(string name) => Of(NameToken.Of(NameToken.Compose(name)));

    /// <summary>The key of tokens.</summary>
    public static BoardKey Of(IReadOnlyList<NameToken> tokens)
    {
        var words = new List<string>();
        foreach (var token in tokens)
        {
            if (PhotoWords.BeforeBoard(token.Key) is { } before)
                words.Add(PhotoWords.Meaning(before));
            else if (PhotoWords.KindOf(token.Key) is not (PhotoWordKind.Board or PhotoWordKind.BoardBeforeName or PhotoWordKind.Filler) || token.Key.Length == 1)
                words.Add(PhotoWords.Meaning(token.Key));
        }

        return new BoardKey(words.Where(word => !PhotoWords.IsBoardWord(word)));
    }

    /// <summary>How alike two names are, 0 to 1 (twice the words that both have, by the words of both); words of one slip of the pen count as the same.</summary>
    public double Likeness(BoardKey other) =>
        IsEmpty || other.IsEmpty ? 0 : 2.0 * _words.Count(word => Array.Exists(other._words, mate => IsSame(word, mate))) / (_words.Length + other._words.Length);

    /// <summary>True where two names are alike enough to propose one for the other.</summary>
    public bool IsLike(BoardKey other) => Likeness(other) >= Likely;

    /// <inheritdoc />
    public bool Equals(BoardKey? other) => other is not null && _words.AsSpan().SequenceEqual(other._words);

    /// <inheritdoc />
    public override bool Equals(object? obj) => Equals(obj as BoardKey);

    /// <inheritdoc />
    public override int GetHashCode() => _words.Aggregate(0, (hash, word) => HashCode.Combine(hash, word.GetHashCode(StringComparison.Ordinal)));

    // The same, or one letter wrong, missing or too many in a word long enough for that to be a slip.
    private static bool IsSame(string x, string y)
    {
        const int LongEnough = 5;
        if (x == y)
            return true;
        if (Math.Min(x.Length, y.Length) < LongEnough || Math.Abs(x.Length - y.Length) > 1)
            return false;
        var start = x.AsSpan().CommonPrefixLength(y);
        return x.AsSpan(start + (x.Length >= y.Length ? 1 : 0)).SequenceEqual(y.AsSpan(start + (y.Length >= x.Length ? 1 : 0)));
    }
}
