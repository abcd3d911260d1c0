using System.Globalization;

namespace Catalogue.Domain.UsbPd;

/// <summary>Objects found one after the other, on their way to a list.</summary>
/// <param name="role">Whose they are.</param>
/// <param name="origin">What they were read from.</param>
/// <param name="line">The line of the first.</param>
internal sealed class ListRun(PortRole role, WordOrigin origin, int line)
{
    /// <summary>More objects in one run than this are no list but a dump of something else.</summary>
    public const int Longest = 64;

    private readonly List<Entry> _entries = [];

    /// <summary>Whose they are.</summary>
    public PortRole Role => role;

    /// <summary>The line of the first.</summary>
    public int Line => line;

    /// <summary>How many a header announces; null where none does.</summary>
    public int? Announced { get; init; }

    /// <summary>Something says that the numbers are objects: a label, or a mark that they are hexadecimal.</summary>
    public bool IsVouched { get; set; }

    /// <summary>False for plain decimal numbers that nothing vouches for.</summary>
    public bool IsCredible => IsVouched || origin == WordOrigin.Bytes || Announced is not null || _entries.Exists(entry => entry.Word is { } word
        && (word.ToString("X8", CultureInfo.InvariantCulture).Any(char.IsAsciiLetter) || CapabilityWord.IsFiveVolts(word) || CapabilityWord.IsFiveVolts(CapabilityWord.Swapped(word))));

    /// <summary>How many objects, damaged ones included.</summary>
    public int Count => _entries.Count;

    /// <summary>The line of the last one.</summary>
    public int LastLine { get; private set; }

    /// <summary>How many stand in that line.</summary>
    public int ObjectsInLastLine { get; private set; }

    /// <summary>Text beside the list counts its objects from zero.</summary>
    public bool ClaimsCountFromZero { get; set; }

    /// <summary>The line in which text counted zero.</summary>
    public int? ZeroAtLine { get; set; }

    /// <summary>Words that are neither damaged nor zero.</summary>
    public int WholeWords => _entries.Count(entry => entry.Word is not null and not 0);

    /// <summary>How many announced words are missing or damaged; null where the list is complete or nothing was announced. Zero words pad messages, they are none of its own making in text.</summary>
    public int? MissingWords => Announced is { } count && (origin == WordOrigin.Bytes ? _entries.Count(entry => entry.Word is not null) : WholeWords) is var have && have < count ? count - have : null;

    /// <summary>Two runs of the same objects have the same identity.</summary>
    public string Identity => Role + string.Join(' ', _entries.Select(entry => entry.Word?.ToString("X8", CultureInfo.InvariantCulture) ?? "?" + entry.AsRead));

    /// <summary>The last object; null before the first.</summary>
    public Capability? LastCapability => At(_entries.Count);

    /// <summary>Takes a word.</summary>
    /// <param name="word">The word.</param>
    /// <param name="index">The number written before it, or null.</param>
    public void Add(uint word, int? index) => _entries.Add(new Entry(word, "", "", index));

    /// <summary>Takes something that is no word where one should be.</summary>
    public void Damage(string asRead, string reason, int? index = null) => _entries.Add(new Entry(null, asRead, reason, index));

    /// <summary>Notes the line of the word just taken.</summary>
    public void Saw(int lineNumber)
    {
        ObjectsInLastLine = LastLine == lineNumber ? ObjectsInLastLine + 1 : 1;
        LastLine = lineNumber;
    }

    /// <summary>True where a number before a word says that a list begins anew.</summary>
    public bool WouldRestart(int? index) => index is { } next and <= 1 && _entries.Count > 0 && _entries[^1].Index is { } last && next <= last && _entries[0].Index is { } first && next == first;

    /// <summary>True where text has just counted an object zero above.</summary>
    public bool SawClaimZero(int lineNumber) => ZeroAtLine is { } at && lineNumber - at <= 1;

    /// <summary>The object at a position; null where none is.</summary>
    public Capability? At(int position) => position >= 1 && position <= _entries.Count && _entries[position - 1] is { Word: { } word } ? CapabilityWord.Decode(word, position) : null;

    /// <summary>Where the objects are one list said twice or more, keeps it once and says so.</summary>
    public bool Halve()
    {
        for (var length = 2; length <= _entries.Count / 2; length++)
        {
            if (_entries.Count % length != 0 || _entries[0].Word is not { } first || !CapabilityWord.IsFiveVolts(first))
                continue;
            var period = length;
            if (Enumerable.Range(length, _entries.Count - length).All(i => _entries[i].Word is { } word && word == _entries[i - period].Word))
            {
                _entries.RemoveRange(length, _entries.Count - length);
                return true;
            }
        }

        return false;
    }

    /// <summary>The list.</summary>
    /// <param name="warnings">Takes what has to be said of it.</param>
    public CapabilityList ToList(List<string> warnings)
    {
        if (Announced is { } count && _entries.Count(entry => entry.Word is not null) > count && origin == WordOrigin.Word)
            warnings.Add(string.Create(CultureInfo.InvariantCulture, $"The header announces {count} objects; {_entries.Count(entry => entry.Word is not null)} were found from line {line} on."));
        var positions = Positions();
        return new CapabilityList(
            _entries.Select((entry, i) => entry.Word is { } word
                ? PlacedCapability.Of(positions[i], word, origin)
                : new PlacedCapability(positions[i], new Capability.Unreadable(entry.AsRead, entry.Reason), null, origin)),
            role,
            role == PortRole.Sink ? "sink" : null);
    }

    // Numbers written before the objects count where they all are there, rise, and begin a list; else the order does.
    private int[] Positions()
    {
        var inOrder = Enumerable.Range(1, _entries.Count).ToArray();
        if (_entries[0].Index is not (0 or 1) || _entries[^1].Index is not <= CapabilityList.LongestExtended + 2)
            return inOrder;
        var shift = 1 - _entries[0].Index!.Value;
        var asNumbered = new int[_entries.Count];
        for (var i = 0; i < _entries.Count; i++)
        {
            if (_entries[i].Index is not { } index || (i > 0 && index <= _entries[i - 1].Index))
                return inOrder;
            asNumbered[i] = index + shift;
        }

        return asNumbered;
    }

    private sealed record Entry(uint? Word, string AsRead, string Reason, int? Index);
}
