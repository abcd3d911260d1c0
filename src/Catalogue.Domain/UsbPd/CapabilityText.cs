using System.Collections.Frozen;
using System.Globalization;

namespace Catalogue.Domain.UsbPd;

/// <summary>
/// Reads capability lists out of whatever was pasted: words in any style, the bytes of messages, logs with other numbers around, tables, or
/// only text that states supplies.
/// </summary>
/// <remarks>
/// House rules. A number is an object only where its line says so: it stands alone, or the nearest word before it names an object, a list, a
/// role or a kind. Damaged words keep their place and are never guessed. A dump that breaks off gives way to a complete one. Text is read only
/// where there are neither words nor bytes. Time grows with the length of the text, not faster.
/// </remarks>
public sealed class CapabilityText
{
    /// <summary>Longer texts are refused, in characters.</summary>
    public const int LongestText = 1 << 20;

    // More lists than this are a log to be cut first; nobody reads hundreds of answers.
    private const int MostLists = 2000;

    private const int MostWarnings = 40;

    private static readonly FrozenSet<string> ObjectWords = FrozenSet.ToFrozenSet(
    [
        "obj", "object", "objects", "pdo", "pdos", "apdo", "apdos", "cap", "caps", "capability", "capabilities", "source", "src", "sink", "snk", "supply", "supplies", "word", "words", "raw", "fixed", "pps", "avs", "epr", "spr",
        "battery", "variable", "position", "pos", "profile", "profiles", "offer", "offers", "item", "dword", "data",
    ]);

    // Say nothing of what a number is: the word before them decides.
    private static readonly FrozenSet<string> NeutralWords = FrozenSet.ToFrozenSet(
        ["is", "was", "value", "val", "hex", "uint", "uint32", "t", "u", "u32", "unsigned", "int", "const", "static", "list", "array", "new", "the", "of", "no", "nr", "n", "v", "mv", "a", "ma", "w", "mw", "max", "min", "x", "be", "and"]);

    private static readonly FrozenSet<string> OtherMessages = FrozenSet.ToFrozenSet(["request", "rdo", "vdm", "vdo", "bist"]);

    private static readonly FrozenSet<string> MeterWords = FrozenSet.ToFrozenSet(["vbus", "ibus", "pbus", "vconn", "measured", "meas", "load", "ripple", "input"]);

    private readonly List<ListRun> _runs = [];
    private readonly List<ClaimRun> _claims = [];
    private readonly List<string> _warnings = [];
    private readonly List<string> _notes = [];
    private readonly List<(string Text, int Line)> _otherNumbers = [];
    private readonly MessageLines _messages;
    private ListRun? _open;
    private PortRole? _role;
    private (int Count, PortRole Role)? _announced;
    private bool _isOtherMessage;
    private bool _afterBlank;
    private int _lineNumber;
    private int _lastObjectLine = -2;
    private int _agreeing;
    private int _repeated;

    private CapabilityText() => _messages = new MessageLines(GiveMessage, _warnings, _notes);

    /// <summary>Reads a text.</summary>
    /// <param name="text">Any text, with any line ends; null is empty.</param>
    public static CapabilityReading Read(string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
            return new CapabilityReading.Refused("The text is empty. Paste the words of a capability list (such as 0x0801912C), the bytes of its message, or a log that holds them.");
        if (text.Length > LongestText)
            return new CapabilityReading.Refused(Say($"The text has {text.Length} characters; {LongestText} are read at most. Paste the part with the capability list."));
        return new CapabilityText().Run(text);
    }

    private CapabilityReading Run(string text)
    {
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            _lineNumber++;
            if (_runs.Count < MostLists)
                TakeLine(line.ToString());
        }

        _messages.Finish();
        CloseRun();
        return Finish();
    }

    private void TakeLine(string line)
    {
        var tokens = DumpToken.Of(line);
        if (tokens.Count == 0)
        {
            _messages.Flush();
            _afterBlank |= string.IsNullOrWhiteSpace(line);
            if (string.IsNullOrWhiteSpace(line))
                _isOtherMessage = false;
            return;
        }

        TakeHeading(tokens);
        var found = _messages.Take(line, tokens, _lineNumber);
        if (!found)
            found = TakeWords(line, tokens);
        TakeClaims(line, tokens, found);
        _afterBlank = false;
    }

    // ---- headings ----

    private void TakeHeading(List<DumpToken> tokens)
    {
        PortRole? role = null;
        var (isList, isOther, isHeader) = (false, false, false);
        foreach (var token in tokens)
        {
            if (isHeader && token.Digits is { Length: 4 })
            {
                TakeHeader(token);
                return;
            }

            if (token.Digits is not null && (token.IsMarked || token.Digits.Length > 4))
                continue;
            foreach (var part in token.Parts())
            {
                role ??= part is "source" or "src" or "sources" or "sourcecap" ? PortRole.Source : part is "sink" or "snk" or "sinks" ? PortRole.Sink : null;
                isList |= part is "cap" or "caps" or "capability" or "capabilities" or "pdo" or "pdos" or "profiles" or "list" or "offers";
                isOther |= OtherMessages.Contains(part);
                isHeader |= part is "hdr" or "header" or "head";
            }
        }

        // "role: sink", "[SNK]" and "Sink: 0x0001912C" head a list as well.
        var isBareRole = role is not null && (tokens.Count <= 2 && !tokens.Exists(token => token.IsWord || token.Digits is { Length: > 4 }) || (tokens.Count > 1 && tokens[1].IsWord && tokens[0].Digits is null));
        if (role is not null && (isList || isBareRole))
        {
            if (tokens.Exists(token => token.IsWord) ? _role != role : _open is not null)
                CloseRun();
            (_role, _isOtherMessage) = (role, false);
        }
        else if (isOther)
        {
            CloseRun();
            _isOtherMessage = true;
        }
        else if (isList)
        {
            _isOtherMessage = false;
        }
    }

    private void TakeHeader(DumpToken token)
    {
        CloseRun();
        var header = new MessageHeader(ushort.Parse(token.Digits!, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture));
        // What a header of another message announces is no capability.
        _isOtherMessage = header.Capabilities is null;
        _announced = header.Capabilities is { } role && !header.IsExtended ? (header.ObjectCount, role) : null;
        if (header.Capabilities is { } named)
            _role = named;
    }

    private void GiveMessage(ListRun run)
    {
        CloseRun();
        Keep(run);
    }

    // A source says its list again and again; a log of hours holds it once.
    private void Keep(ListRun run)
    {
        if (_runs is [.., var last] && last.Identity == run.Identity && run.MissingWords is null)
            _repeated++;
        else
            _runs.Add(run);
    }

    // ---- words ----

    private bool TakeWords(string line, List<DumpToken> tokens)
    {
        var found = false;
        var words = tokens.Count(token => token.IsWord);
        var (isFree, isKnown) = (true, false);
        int? index = null;
        for (var i = 0; i < tokens.Count; i++)
        {
            var token = tokens[i];
            if (token.IsWord && (token.IsMarked || isKnown || !LooksLikeDate(token.Text)))
            {
                if ((isFree || isKnown) && !_isOtherMessage && !(i == 0 && words > 1 && IsAddress(line, token)))
                {
                    Object(token, index, isFirst: !found);
                    if (isKnown || token.IsMarked)
                        _open!.IsVouched = true;
                    found = true;
                }
                else
                {
                    _otherNumbers.Add((token.Text, _lineNumber));
                }

                index = null;
                continue;
            }

            // "71A1 0A01912C ...": a header before its objects.
            if (i == 0 && token.Digits is { Length: 4 } && i + 1 < tokens.Count && tokens[1].IsWord
                && new MessageHeader(ushort.Parse(token.Digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture)) is { Capabilities: not null, IsExtended: false } header
                && header.ObjectCount == words)
            {
                TakeHeader(token);
                continue;
            }

            if ((isFree || isKnown) && !_isOtherMessage && IsDamagedWord(token, words, found, isKnown, IsAlone(line, token)))
            {
                Run().Damage(token.Text, Why(token), index);
                (found, _lastObjectLine, index) = (true, _lineNumber, null);
                continue;
            }

            if (token.SmallNumber is { } number)
            {
                index = number;
                continue;
            }

            // The number of a header speaks for what follows it: "hdr=0x21A1 0x0801912C ...".
            if (token.Digits is { Length: 4 } && _announced is not null && i > 0 && tokens[i - 1].Parts().LastOrDefault() is "hdr" or "header" or "head")
            {
                (isKnown, index) = (true, null);
                continue;
            }

            index = null;
            foreach (var part in token.Parts().Where(part => !NeutralWords.Contains(part)))
                (isFree, isKnown) = (false, ObjectWords.Contains(part));
            if (isKnown && token.Text.Length < 20 && TrailingNumber(token.Text) is { } inName)
                index = inName;
        }

        return found;

        void Object(DumpToken token, int? at, bool isFirst)
        {
            var word = uint.Parse(token.Digits!, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
            if (_open is { } open && (open.WouldRestart(at) || (isFirst && open.Count > 0 && CapabilityWord.IsFiveVolts(word) && (_afterBlank || open.ObjectsInLastLine > 1))))
                CloseRun();
            if (_open is { Count: >= ListRun.Longest })
                CloseRun();
            Run().Add(word, at);
            _open!.Saw(_lineNumber);
            _lastObjectLine = _lineNumber;
        }
    }

    private ListRun Run()
    {
        if (_open is not null)
            return _open;
        _open = new ListRun(_announced?.Role ?? _role ?? PortRole.Source, WordOrigin.Word, _lineNumber) { Announced = _announced?.Count };
        _announced = null;
        return _open;
    }

    private void CloseRun()
    {
        if (_open is { Count: > 0, IsCredible: true } open)
            Keep(open);
        if (_afterBlank && _open is not null)
            _role = null;
        _open = null;
    }

    // A number of nearly eight digits where a word should stand; where nothing says so, only right beside other words.
    private bool IsDamagedWord(DumpToken token, int words, bool isBehindWord, bool isKnown, bool isAlone)
    {
        var beside = _open is not null && _lineNumber - _lastObjectLine <= 1;
        if (token.Text.Length is < 5 or > 24 || token.IsWord)
            return false;
        if (token.Text.StartsWith("0x", StringComparison.OrdinalIgnoreCase))
        {
            // Alone between words, four digits are a header or what is left of a word.
            var isHeader = token.Digits is { Length: 4 } four && new MessageHeader(ushort.Parse(four, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture)).Capabilities is not null;
            return isKnown || ((words > 0 || beside) && token.Digits is null or { Length: not (3 or 4) }) || (isAlone && beside && !isHeader);
        }

        // Before a single word, a number of decimal digits is a time.
        return token.Digits is { Length: >= 5 and <= 11 } digits && (digits[0] == '0' || digits.Any(char.IsAsciiLetter)) && digits.Any(char.IsAsciiDigit)
            && (isBehindWord || words > 1 || (words > 0 && digits.Any(char.IsAsciiLetter)) || (isAlone && beside));
    }

    private static bool IsAlone(string line, DumpToken token) => line.Length <= 80 && line.AsSpan().Trim().Trim(",;|{}[]\"'").Trim().SequenceEqual(token.Text);

    // A dump of memory begins its lines with where they stand.
    private static bool IsAddress(string line, DumpToken token)
    {
        var word = uint.Parse(token.Digits!, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
        return line.AsSpan(token.End).StartsWith(":") || (CapabilityWord.Decode(word, 1) is Capability.Fixed { VoltageMv: 0 });
    }

    private static string Why(DumpToken token) => WordText.Read(token.Text, out _) ?? "It is no word.";

    private static bool LooksLikeDate(string text) =>
        text.All(char.IsAsciiDigit) && (text.StartsWith("20", StringComparison.Ordinal) || text.StartsWith("19", StringComparison.Ordinal)) && text[4] is '0' or '1' && text[6] is >= '0' and <= '3';

    private static int? TrailingNumber(string text)
    {
        var digits = text.AsSpan()[(text.AsSpan().LastIndexOfAnyExceptInRange('0', '9') + 1)..];
        return digits.Length is 1 or 2 ? int.Parse(digits, CultureInfo.InvariantCulture) : null;
    }

    // ---- claims ----

    private void TakeClaims(string line, List<DumpToken> tokens, bool besideWords)
    {
        var claims = ClaimText.Of(line, tokens);
        var run = _open ?? _runs.LastOrDefault();
        if (besideWords)
        {
            if (claims.FindAll(claim => claim.IsWhole) is [var one] && _open is { ObjectsInLastLine: 1 } open && open.LastLine == _lineNumber)
                Compare(one, open.LastCapability);
            return;
        }

        // "Voltage 5000 mV" and "Current 5000 mA" on lines of their own belong to the object above.
        if (_open is { } above && above.LastLine >= _lineNumber - 3 && claims is [{ IsWhole: false, Index: null } part] && tokens.Exists(token => token.Text.Equals("voltage", StringComparison.OrdinalIgnoreCase) || token.Text.Equals("current", StringComparison.OrdinalIgnoreCase)))
        {
            Compare(part, above.LastCapability);
            return;
        }

        claims.RemoveAll(claim => !claim.IsWhole || claim.Capability is null);
        if (claims.Count == 0)
        {
            if (_claims.Count > 0 && tokens.Exists(token => token.Parts().Any()))
                _claims[^1].IsClosed = true;
            return;
        }

        var isMeter = tokens.Exists(token => token.Parts().Any(MeterWords.Contains));
        foreach (var claim in claims)
        {
            if (claim.Index is null && isMeter)
                continue;
            if (claim.Index is { } index && run is not null)
            {
                if (index == 0)
                    run.ClaimsCountFromZero = true;
                else if (index == 1 && !run.SawClaimZero(_lineNumber))
                    run.ClaimsCountFromZero = false;
                if (run.At(index + (run.ClaimsCountFromZero ? 1 : 0)) is { } decoded)
                    Compare(claim, decoded);
                if (index == 0)
                    run.ZeroAtLine = _lineNumber;
            }

            if (_claims.Count == 0 || _claims[^1].Ends(claim, _afterBlank))
            {
                if (_claims.Count >= MostLists)
                    return;
                _claims.Add(new ClaimRun(_role ?? PortRole.Source, _lineNumber));
            }

            _claims[^1].Items.Add(claim);
        }
    }

    private void Compare(ClaimedSupply claim, Capability? decoded)
    {
        if (decoded is null or Capability.Unreadable)
            return;
        if (claim.AgreesWith(decoded))
            _agreeing++;
        else
            _warnings.Add(Say($"The text in line {_lineNumber} states other values than the object it belongs to; the object counts."));
    }

    // ---- the answer ----

    private CapabilityReading Finish()
    {
        var runs = DropRepeated(DropIncomplete(_runs));
        var lists = runs.ConvertAll(run => run.ToList(_warnings));
        if (lists.Count == 0 && !_claims.Exists(claims => claims.IsCredible))
            lists = [.. Unlabelled()];
        if (lists.Count == 0)
            lists = [.. _claims.Where(claims => claims.IsCredible).Take(MostLists).Select(claims => claims.ToList())];
        lists = Distinct(lists);
        if (lists.Count == 0)
            return new CapabilityReading.Refused(Refusal());
        var isText = lists[0].Items[0].Origin == WordOrigin.Text;
        if (isText)
            _warnings.Add("There are no words in the text: the values are what it states, a claim, not a decode.");
        else if (_agreeing > 0)
            _notes.Add(Say($"Values that the text states beside the objects agree in {_agreeing} {(_agreeing == 1 ? "place" : "places")}."));
        var sources = lists.FindAll(list => list.Role == PortRole.Source);
        var sinks = lists.FindAll(list => list.Role == PortRole.Sink);
        if (sources.Count == 0)
            _warnings.Add("The list is labelled as a sink's: it says what a device wants, not what a charger offers.");
        else if (sinks.Count > 0)
            _warnings.Add(sinks.Sum(list => list.Items.Count) is > 1 and var count
                ? Say($"{count} sink objects are kept apart; they are no part of the source's list.")
                : "One sink object is kept apart; it is no part of the source's list.");
        var asked = sources.Count > 0 ? sources : sinks;
        if (asked.Count > 1)
            _warnings.Add(Say($"{asked.Count} different lists were found; they are given one after the other."));
        var asWritten = AskAboutOrder(asked);
        SayOtherNumbers();
        foreach (var list in asked)
            _warnings.AddRange(list.Facts.Select(fact => asked.Count > 1 && isText && fact is ListFact.Skipped ? Say($"List {asked.IndexOf(list) + 1}: {fact.Words}") : fact.Words));
        if (_runs.Count >= MostLists)
            _warnings.Add(Say($"Reading stopped after {MostLists} lists."));
        return new CapabilityReading.Read(asked, sources.Count > 0 ? sinks : [], asWritten, Shortened(_warnings), Shortened(_notes));
    }

    // Where nothing else is there, numbers side by side of which the first is 5 V are a list, whatever they are called.
    private List<CapabilityList> Unlabelled()
    {
        var runs = new List<ListRun>();
        var last = 0;
        foreach (var (text, line) in _otherNumbers)
        {
            var word = uint.Parse(WordText.HexDigits(text, out _)!, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
            var goesOn = runs.Count > 0 && line - last <= 1 && runs[^1].Count < ListRun.Longest && !CapabilityWord.IsFiveVolts(word);
            if (!goesOn && CapabilityWord.IsFiveVolts(word) && runs.Count < MostLists)
                runs.Add(new ListRun(PortRole.Source, WordOrigin.Word, line));
            else if (!goesOn)
                continue;
            runs[^1].Add(word, null);
            last = line;
        }

        runs = DropRepeated(runs.FindAll(run => run.Count > 1));
        if (runs.Count > 0)
        {
            _otherNumbers.Clear();
            _warnings.Add(Say($"Nothing in line {runs[0].Line} says that its numbers are objects; they were taken for a list because the first is 5 V. Please check."));
        }

        return runs.ConvertAll(run => run.ToList(_warnings));
    }

    private string Refusal() => _warnings.Count > 0 ? Reasons() + " " + _warnings[0] : Reasons();

    private string Reasons() => _otherNumbers.Count > 0
        ? Say($"No capability list was found. {_otherNumbers.Count} numbers of eight hexadecimal digits are there (such as {_otherNumbers[0].Text} in line {_otherNumbers[0].Line}), but nothing says that they are objects; write the words alone, one on each line, or put “source capabilities:” before them.")
        : _messages.OtherLines > 0
            ? Say($"No capability list was found: the bytes in line {_messages.FirstOtherLine} are no source or sink capability message. Write the words of the list (such as 0x0801912C), or the bytes of the whole message.")
            : "No capability list was found. Write its words (eight hexadecimal digits each, such as 0x0801912C), the bytes of its message, or text that states volts and amperes.";

    private List<ListRun> DropIncomplete(List<ListRun> runs)
    {
        var kept = new List<ListRun>();
        foreach (var run in runs)
        {
            if (run.MissingWords is not { } missing)
            {
                kept.Add(run);
                continue;
            }

            var hasWhole = runs.Exists(other => other != run && other.Role == run.Role && other.MissingWords is null && other.Count >= run.WholeWords);
            _warnings.Add(hasWhole
                ? Say($"An incomplete dump from line {run.Line} on was left out ({run.WholeWords} whole words of {run.Announced}); a complete one is there.")
                : Say($"The header from line {run.Line} on announces {run.Announced} objects; {run.WholeWords} whole words were found, {missing} are missing or damaged."));
            if (!hasWhole)
                kept.Add(run);
        }

        return kept;
    }

    private List<ListRun> DropRepeated(List<ListRun> runs)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var kept = new List<ListRun>();
        var repeated = _repeated;
        foreach (var run in runs)
        {
            if (run.Halve())
                repeated++;
            if (seen.Add(run.Identity))
                kept.Add(run);
            else
                repeated++;
        }

        if (repeated > 0)
            _warnings.Add(Say($"The same message stands in the text {(repeated == 1 ? "twice" : Say($"{repeated + 1} times"))}; it is counted once."));
        return kept;
    }

    // Text and chunked messages may repeat a list in another form.
    private static List<CapabilityList> Distinct(List<CapabilityList> lists)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        return lists.FindAll(list => seen.Add(list.Role + string.Join(';', list.Items.Select(item => Say($"{item.Position}:{item.Word:X8}{(item.Word is null ? item.Capability.ToString() : "")}")))));
    }

    // Words printed as their bytes came over the wire: only then does a list begin with 5 V.
    private CapabilityList? AskAboutOrder(List<CapabilityList> lists)
    {
        CapabilityList? asWritten = null;
        for (var i = 0; i < lists.Count; i++)
        {
            if (!lists[i].LooksSwapped)
                continue;
            var written = lists[i];
            asWritten ??= written;
            lists[i] = written.Swapped();
            _warnings.Add(Say($"The first object {CapabilityWord.Text(written.Items[0].Word!.Value)} is not 5 V as written, but is with its bytes in the opposite order. The swapped reading is offered here; please confirm it."));
        }

        return asWritten;
    }

    private void SayOtherNumbers()
    {
        if (_otherNumbers.Count > 0)
            _warnings.Add(Say($"{_otherNumbers.Count} other hexadecimal {(_otherNumbers.Count == 1 ? "number is no object and was" : "numbers are no objects and were")} not read, such as {_otherNumbers[0].Text} in line {_otherNumbers[0].Line}."));
        if (_messages.OtherLines > 0)
            _warnings.Add(Say($"{_messages.OtherLines} {(_messages.OtherLines == 1 ? "line of bytes is" : "lines of bytes are")} no capability message and {(_messages.OtherLines == 1 ? "was" : "were")} not read: line {_messages.FirstOtherLine}{(_messages.OtherLines > 1 ? " and later" : "")}."));
    }

    private static List<string> Shortened(List<string> sentences)
    {
        var distinct = sentences.Distinct(StringComparer.Ordinal).ToList();
        return distinct.Count <= MostWarnings ? distinct : [.. distinct.Take(MostWarnings), Say($"And {distinct.Count - MostWarnings} more of this kind.")];
    }

    internal static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
