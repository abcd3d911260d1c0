using System.Buffers;
using Catalogue.Domain.Codes;

namespace Catalogue.Domain.Quantities;

/// <summary>One pass over a folded text. Reads without allocating, except for codes; what it cannot decide it notes and takes as it was told.</summary>
internal ref struct QuantityScanner
{
    public const int MaxQuantities = 32;
    public const int MaxUnread = 64;

    private static readonly SearchValues<char> DigitsAndR = SearchValues.Create("0123456789R");

    private readonly ReadOnlySpan<char> _text;
    private readonly Span<FoundQuantity> _found;
    private readonly Span<(int Start, int End)> _unread;
    private readonly PartKind _kind;
    private readonly Unit? _assumed;
    private readonly ScanChoices _choices;
    // The number each value came from, so that a tolerance is taken in decimal.
    private readonly Span<DecimalNumber> _written;
    private int _at;
    private CurrentKind _pending;

    public QuantityScanner(ReadOnlySpan<char> text, PartKind kind, Unit? assumed, ScanChoices choices, Span<FoundQuantity> found, Span<DecimalNumber> written, Span<(int Start, int End)> unread)
    {
        _text = text;
        (_kind, _assumed, _choices) = (kind, assumed, choices);
        _found = found;
        _written = written;
        _unread = unread;
    }

    /// <summary>How many quantities were found.</summary>
    public int Count { get; private set; }

    /// <summary>How many pieces were left unread.</summary>
    public int UnreadCount { get; private set; }

    /// <summary>What was left open.</summary>
    public ScanDoubts Doubts { get; private set; }

    /// <summary>Why a quantity in it cannot be, or null.</summary>
    public string? Refusal { get; private set; }

    /// <summary>How many readings each thing left open has.</summary>
    public int BareUnits { get; private set; }

    /// <summary>How many readings the code has.</summary>
    public int Codes { get; private set; }

    /// <summary>True where the first reading of the code is surer than the second.</summary>
    public bool IsFirstCodePreferred { get; private set; }

    /// <summary>How the code was read.</summary>
    public string? CodeNote { get; private set; }

    /// <summary>True where digits stood without unit.</summary>
    public bool HasBareNumber { get; private set; }

    private readonly Unit? MainUnit => _assumed ?? _kind.ValueUnit();

    /// <summary>Reads the whole text.</summary>
    public void Run()
    {
        while (_at < _text.Length && Refusal is null)
        {
            if (Spread())
                continue;
            if (IsSeparator(_text[_at]) || IsLoneMark())
                _at++;
            else if (!(Tolerance() || Mark() || ShapedCode() || Quantity()))
                Word();
        }
    }

    private static bool IsSeparator(char c) => c is ' ' or ',' or ';' or '/' or '(' or ')' or '[' or ']' or '{' or '}' or '|' or ':' or '@' or '"' or '=';

    private readonly bool IsLoneMark() => _text[_at] is '-' or '+' or '.' or '…' or '~' && (_at + 1 >= _text.Length || _text[_at + 1] is ' ' or ',' or ';' or '/');

    private readonly int SkipBlanks(int at)
    {
        while (at < _text.Length && _text[at] == ' ')
            at++;
        return at;
    }

    // A token ends where a blank or a separator stands.
    private readonly int TokenEnd(int start)
    {
        var end = start;
        while (end < _text.Length && !IsSeparator(_text[end]))
            end++;
        return end;
    }

    private readonly bool HasMain()
    {
        for (var i = 0; i < Count; i++)
            if (MainUnit is { } unit ? _found[i].Quantity.Unit == unit : _found[i].Quantity.Unit is Unit.Ohm or Unit.Farad or Unit.Henry)
                return true;
        return false;
    }

    // 10kΩ±1%, 1% alone behind a value, +80/-20%, ±0.25pF.
    private bool Tolerance()
    {
        var start = _at;
        var isMarked = _text[_at] == '±' || _text[_at..].StartsWith("+/-") || _text[_at..].StartsWith("+-");
        if (!isMarked && _text[_at] == '+')
            return UnevenTolerance();
        if (Count == 0 || (!isMarked && !char.IsAsciiDigit(_text[_at]) && _text[_at] != '.'))
            return false;
        var at = isMarked ? SkipBlanks(_at + (_text[_at] == '±' ? 1 : _text[_at + 1] == '/' ? 3 : 2)) : _at;
        if (!WrittenNumber.TryRead(_text, at, out var number) || number.IsTooLong)
            return false;
        var unitAt = SkipBlanks(number.End);
        if (!UnitScanner.TryMatch(_text[unitAt..], unitAt == number.End, out var match) || (match.Unit is not Unit.Ratio && !isMarked))
            return false;
        var share = number.Value.Shift(match.Shift);
        if (!isMarked && (share.ToDouble() > 0.3 || match.Shift == 0))
            return false;
        var target = Target(match.Unit, match.Shift == -6);
        if (target < 0)
            return false;
        _at = unitAt + match.Length;
        Apply(target, share, share, match.Unit is not Unit.Ratio, start);
        return true;
    }

    private bool UnevenTolerance()
    {
        var start = _at;
        if (Count == 0 || !WrittenNumber.TryRead(_text, SkipBlanks(_at + 1), out var above))
            return false;
        var at = SkipBlanks(above.End);
        if (at < _text.Length && _text[at] == '%')
            at = SkipBlanks(at + 1);
        if (at < _text.Length && _text[at] == '/')
            at = SkipBlanks(at + 1);
        if (at >= _text.Length || _text[at] != '-' || !WrittenNumber.TryRead(_text, SkipBlanks(at + 1), out var below))
            return false;
        at = SkipBlanks(below.End);
        if (at >= _text.Length || _text[at] != '%' || Target(Unit.Ratio, isPerMillion: false) is not (>= 0 and var target))
            return false;
        _at = at + 1;
        Apply(target, below.Value.Shift(-2), above.Value.Shift(-2), isAbsolute: false, start);
        return true;
    }

    // A tolerance belongs to the value of the part, not to the rating that happens to stand before it.
    private readonly int Target(Unit unit, bool isPerMillion)
    {
        var target = -1;
        for (var i = Count - 1; i >= 0; i--)
        {
            var quantity = _found[i].Quantity;
            if (quantity.Value is null || quantity.HasSpread)
                continue;
            if (unit is not Unit.Ratio)
            {
                if (quantity.Unit == unit)
                    return i;
                continue;
            }

            if (quantity.Unit is Unit.Ratio or Unit.DegreeCelsius or Unit.PerDegreeCelsius)
                continue;
            var isComponent = isPerMillion && quantity.Unit is Unit.Hertz || quantity.Unit == MainUnit;
            if (isComponent)
                return i;
            if (target < 0 || (Rank(quantity.Unit) > Rank(_found[target].Quantity.Unit)))
                target = i;
        }

        return target;

        static int Rank(Unit unit) => unit is Unit.Ohm or Unit.Farad or Unit.Henry ? 1 : 0;
    }

    private void Apply(int target, DecimalNumber below, DecimalNumber above, bool isAbsolute, int start)
    {
        var found = _found[target];
        var value = found.Quantity.Value!.Value;
        // A value that came from a code has no digits of its own here.
        var written = _written[target].Digits == 0 ? DecimalNumber.Of(value) : _written[target];
        var (low, high) = isAbsolute ? written.Around(below, above) : written.Spread(below, above);
        if (value < 0)
            (low, high) = (-high, -low);
        if (!double.IsFinite(low) || !double.IsFinite(high) || low > value || high < value || (MustBePositive(found.Quantity.Unit) && low < 0))
        {
            Refusal = "A tolerance is larger than its value.";
            return;
        }

        var isNext = SkipBlanks(found.Start + found.Length) >= start;
        _found[target] = found with
        {
            Quantity = Quantities.Quantity.Between(low, value, high, found.Quantity.Unit) with { Current = found.Quantity.Current, Count = found.Quantity.Count },
            Length = isNext ? _at - found.Start : found.Length,
            ToleranceStart = start,
            ToleranceLength = _at - start,
        };
    }

    // The print of a value with its spread: 4.7 kΩ [4.465 kΩ … 4.935 kΩ].
    private bool Spread()
    {
        if (_text[_at] != '[' || Count == 0 || _found[Count - 1].Quantity is not { Value: { } value, HasSpread: false })
            return false;
        var (found, written, save) = (_found[Count - 1], _written[Count - 1], _at);
        _at = SkipBlanks(_at + 1);
        if (Quantity() && _found[Count - 1].Quantity is { Value: null, Low: { } low, High: { } high } range && range.Unit == found.Quantity.Unit && _at < _text.Length && _text[_at] == ']' && low <= value && value <= high)
        {
            Count--;
            _at++;
            _found[Count - 1] = found with { Quantity = Quantities.Quantity.Between(low, value, high, range.Unit) with { Current = found.Quantity.Current, Count = found.Quantity.Count }, Length = _at - found.Start };
            return true;
        }

        Count = found == _found[Count - 1] ? Count : Count - 1;
        (_found[Count - 1], _written[Count - 1], _at) = (found, written, save);
        return false;
    }

    // T3.15AL250V.
    private bool Mark()
    {
        if (_choices.IsProse || _assumed is not null || _kind is not (PartKind.Fuse or PartKind.NotSaid) || (_at > 0 && !IsSeparator(_text[_at - 1])))
            return false;
        if (!(_text[_at] is 'T' or 'F' or 'M' || (_kind is PartKind.Fuse && char.IsAsciiDigit(_text[_at]))) || FuseMark.DecodeStart(_text[_at..]) is not { } mark)
            return false;
        // A bare 5A 125V is two plain quantities.
        if (mark.Characteristic is null && mark.BreakingClass is null || (_kind is PartKind.NotSaid && mark.RatedVoltage is null))
            return false;
        var start = _at;
        _at += mark.Used.Length;
        Add(mark.RatedCurrent, default, start, _at);
        if (mark.RatedVoltage is { } voltage)
            Add(voltage, default, start, _at);
        return true;
    }

    // Codes that would else be read as a number with a unit: 01A, 479C, 100M, 4R7 on a capacitor.
    private bool ShapedCode()
    {
        if (_choices.IsProse || _assumed is not null || _kind is not (PartKind.Resistor or PartKind.Capacitor or PartKind.Inductor) || (_at > 0 && !IsSeparator(_text[_at - 1])) || HasMain())
            return false;
        var token = _text[_at..TokenEnd(_at)];
        if (token.Length is < 2 or > 8 || !IsShaped(token))
            return false;
        if (Code(token, mayBeEia96: token.Length == _text.Trim().Length))
            return true;
        if (_kind is not PartKind.Resistor || token.Length != 3)
            return false;
        // 97C on a resistor is a code with an index that does not exist, and no temperature.
        AddUnread(_at, _at + token.Length);
        _at += token.Length;
        return true;
    }

    private readonly bool IsShaped(ReadOnlySpan<char> token)
    {
        var digits = token.IndexOfAnyExceptInRange('0', '9');
        if (_kind is PartKind.Resistor)
            return token.Length == 3 && digits == 2 && token[2] is 'R' or 'E' or >= 'A' and <= 'F' or 'H' or 'S' or 'X' or 'Y' or 'Z' || (digits is 3 or 4 && token.Length == digits + 1 && token[^1] is 'B' or 'C' or 'D' or 'F' or 'G' or 'J');
        if (digits == 3 && token.Length == 4 && char.IsAsciiLetterUpper(token[3]) && token[3] is not ('V' or 'W' or 'A' or 'P' or 'U'))
            return true;
        if (digits >= 0 && token.IndexOfAnyExcept(DigitsAndR) is var odd && token.Contains('R') && (odd < 0 || odd == token.Length - 1))
            return true;
        return _kind is PartKind.Capacitor && ((digits == 1 && token.Length is 5 or 6 && char.IsAsciiLetterUpper(token[1]) && token[2..5].IndexOfAnyExceptInRange('0', '9') < 0)
            || (digits == 0 && token.Length is 4 or 5 && char.IsAsciiLetterUpper(token[0]) && token[1..4].IndexOfAnyExceptInRange('0', '9') < 0));
    }

    private bool Code(ReadOnlySpan<char> token, bool mayBeEia96)
    {
        var readings = PartCodes.Decode(token.ToString(), _kind);
        if (!mayBeEia96 && readings.Count > 1)
            readings = [.. readings.Where(reading => reading.Scheme is not CodeScheme.Eia96)];
        if (readings.Count == 0)
            return false;
        if (readings.Count > 1)
        {
            Doubts |= ScanDoubts.Code;
            (Codes, IsFirstCodePreferred) = (readings.Count, readings[0].Confidence > readings[1].Confidence);
        }

        var reading = readings[Math.Min(_choices.Code, readings.Count - 1)];
        CodeNote = reading.Note ?? reading.Scheme.Word();
        var start = _at;
        _at += token.Length;
        Add(reading.Quantity, default, start, _at);
        if (reading.RatedVoltage is { } voltage)
            Add(voltage, default, start, _at);
        return true;
    }

    private bool Quantity()
    {
        var start = _at;
        var at = start;
        var bound = Bound(ref at);
        var count = bound == 0 ? Repetition(ref at) : 1;
        var isBothWays = at < _text.Length && (_text[at] == '±' || _text[at..].StartsWith("+/-"));
        if (isBothWays)
            at = SkipBlanks(at + (_text[at] == '±' ? 1 : 3));
        var isNegative = Sign(ref at);
        if (at >= _text.Length)
            return false;
        if (!char.IsAsciiDigit(_text[at]) && Leading(at, out var value, out var unit, out var end))
            return Finish(start, end, value, unit, default, isNegative, bound, count, isBothWays);
        if (!WrittenNumber.TryRead(_text, at, out var number))
            return false;
        if (number.IsTooLong)
        {
            Refusal = "A number has more than 19 significant digits.";
            return false;
        }

        var unitAt = SkipBlanks(number.End);
        if (TryUnit(number, unitAt, out var match, out var finish, out value))
        {
            end = Current(finish, match.Unit, ref match);
            if (bound == 0 && !isBothWays && RangeEnd(end, match, out var second, out var secondMatch, out var isSecondNegative, out var secondEnd))
                return Range(start, secondEnd, value, isNegative, second, isSecondNegative, secondMatch with { Current = Merge(match.Current, secondMatch.Current) }, count);
            return Finish(start, end, value, match.Unit, match.Current, isNegative, bound, count, isBothWays);
        }

        if (bound == 0 && !isBothWays)
        {
            if (RangeOfBareNumbers(start, number, isNegative, count) || (count == 1 && (NumberAround(start, number, isNegative) || Listed(start, number, isNegative))))
                return true;
        }

        return Bare(start, number, isNegative, bound, count, isBothWays);
    }

    private readonly int Bound(ref int at)
    {
        if (at >= _text.Length)
            return 0;
        var bound = _text[at] switch { '≤' or '<' => -1, '≥' or '>' => 1, _ => 0 };
        if (bound != 0)
            at = SkipBlanks(at + (at + 1 < _text.Length && _text[at + 1] == '=' ? 2 : 1));
        return bound;
    }

    // 2x15A, 2 × 15 A; a package or a length is no count.
    private readonly int Repetition(ref int at)
    {
        var i = at;
        var count = 0;
        for (; i < _text.Length && i - at < 4 && char.IsAsciiDigit(_text[i]); i++)
            count = (count * 10) + _text[i] - '0';
        if (i == at || count == 0)
            return 1;
        i = SkipBlanks(i);
        if (i >= _text.Length || _text[i] is not ('x' or 'X'))
            return 1;
        i = SkipBlanks(i + 1);
        if (i >= _text.Length || !(char.IsAsciiDigit(_text[i]) || _text[i] is '.' or 'R' || WrittenNumber.TryRead(_text, i, out _)))
            return 1;
        if (WrittenNumber.TryRead(_text, i, out var number) && SkipBlanks(number.End) is var unitAt)
        {
            // 16 x 25 mm and 2 x 3 x 4 are sizes.
            if (unitAt < _text.Length && _text[unitAt] is 'x' or 'X')
                return 1;
            if (UnitScanner.TryMatch(_text[unitAt..], unitAt == number.End, out var match) && match.Unit is Unit.Metre)
                return 1;
        }

        at = i;
        return count;
    }

    private readonly bool Sign(ref int at)
    {
        if (at >= _text.Length || _text[at] is not ('-' or '+'))
            return false;
        var isNegative = _text[at] == '-';
        at = SkipBlanks(at + 1);
        return isNegative;
    }

    // R47, n47, p33, u47, K68: the letter stands before all digits.
    private readonly bool Leading(int at, out DecimalNumber value, out Unit unit, out int end)
    {
        (value, unit, end) = (default, default, at);
        if (at + 1 >= _text.Length || !char.IsAsciiDigit(_text[at + 1]) || (at > 0 && char.IsLetterOrDigit(_text[at - 1])) || !BarePrefix(_text[at], isInfix: true, isLeading: true, out var power, out var known))
            return false;
        var i = at + 1;
        var digits = 0UL;
        for (; i < _text.Length && char.IsAsciiDigit(_text[i]) && i - at < 10; i++)
            digits = (digits * 10) + (ulong)(_text[i] - '0');
        end = i;
        (value, unit) = (new DecimalNumber(digits, power - (i - at - 1)), known);
        return EndsToken(i) && (unit is not Unit.Ohm || IsOhmHere(_text[at]));
    }

    private readonly bool EndsToken(int at) => at >= _text.Length || IsSeparator(_text[at]) || _text[at] is '±' or '+' || (_text[at] == '-' && at + 1 < _text.Length);

    // On capacitors and coils R is the decimal mark of another unit until their value is known.
    private readonly bool IsOhmHere(char letter) => letter is not ('R' or 'r') || _kind is not (PartKind.Capacitor or PartKind.Inductor) || HasMain();

    // What a prefix without unit means for the kind of part; known only to the sheet of that kind.
    private readonly bool BarePrefix(char letter, bool isInfix, bool isLeading, out int power, out Unit unit)
    {
        unit = Unit.Ohm;
        power = 0;
        var main = HasMain() && _assumed is null ? null : MainUnit;
        if (letter is 'R' or 'r')
            return main is null or Unit.Ohm || _kind is not PartKind.NotSaid;
        if (!UnitScanner.TryPrefix(letter, out power) || letter == 'c')
            return false;
        switch (main)
        {
            case Unit.Ohm:
                return letter is 'm' or 'k' or 'K' or 'M' or 'G' or 'T' or 'µ' or 'u' && !(isLeading && letter == 'T');
            case Unit.Farad or Unit.Henry:
                unit = main.Value;
                return power < 0 && (char.IsLower(letter) || letter == 'µ' || !isInfix) || (letter == 'M' && !isLeading);
            case Unit.Ampere or Unit.Hertz when _kind is PartKind.Fuse or PartKind.Crystal || _assumed is not null:
                unit = main.Value;
                return !isLeading && letter is 'm' or 'k' or 'K' or 'M' or 'µ' or 'u' && (main is not Unit.Hertz || power > 0);
            case null when _assumed is null:
                if (letter is 'k' or 'K' or 'M' or 'G' && !isLeading)
                    return letter != 'G' || isInfix;
                unit = Unit.Farad;
                return letter is 'p' or 'n' or 'µ' or 'u' || (letter == 'm' && isInfix && !isLeading);
            default:
                return false;
        }
    }

    // The unit behind a number, also where it stands at the decimal mark: 4k7, 5V1, 4n7F.
    private bool TryUnit(in WrittenNumber number, int unitAt, out UnitMatch match, out int end, out DecimalNumber value)
    {
        var isGlued = unitAt == number.End;
        value = number.Value;
        end = unitAt;
        match = default;
        if (unitAt >= _text.Length)
            return false;
        var rest = _text[unitAt..];
        var isUnit = UnitScanner.TryMatch(rest, isGlued, out match) && IsUsable(number, unitAt, isGlued, match)
            && !(isGlued && number.IsWhole && match is { Unit: Unit.Metre, Length: 1 } && rest.Length > 1 && char.IsAsciiDigit(rest[1]));
        var isPrefix = !isUnit && isGlued && BarePrefix(rest[0], isInfix: rest.Length > 1 && char.IsAsciiDigit(rest[1]), isLeading: false, out _, out _);
        if (!isUnit && !isPrefix && isGlued && number.IsWhole && rest[0] == 'E' && MainUnit is Unit.Ohm && (rest.Length == 1 || IsSeparator(rest[1])))
        {
            (match, end) = (new UnitMatch(Unit.Ohm, 0, 1), unitAt + 1);
            return true;
        }

        // E with digits behind it: the old ohm only where ohms are meant and no unit follows.
        if (number.IsOldOhm && !isUnit)
            return false;
        if (isUnit)
        {
            end = unitAt + match.Length;
            if (isGlued && number.IsWhole && match.Length == 1 && match.Unit is Unit.Volt or Unit.Ampere or Unit.Ohm or Unit.Watt && Infix(end, out var decimals, out var places, out var infixEnd))
            {
                value = Joined(value, decimals, places);
                end = infixEnd;
            }
            else if (isGlued && match is { Unit: Unit.Metre, Length: 1 })
            {
                match = BareMetre(match);
            }

            value = Marked(number, value, match).Shift(Prefixed(ref match));
            return true;
        }

        if (!isPrefix || !BarePrefix(rest[0], rest.Length > 1 && char.IsAsciiDigit(rest[1]), isLeading: false, out var power, out var unit))
            return false;
        end = unitAt + 1;
        if (number.IsWhole && Infix(end, out var after, out var count, out var behind, allowsUnit: true))
        {
            value = Joined(value, after, count);
            end = behind;
            if (end < _text.Length && UnitScanner.TryMatch(_text[end..], isGlued: true, out var own) && own.Shift == 0 && own.Unit is Unit.Ohm or Unit.Farad or Unit.Henry or Unit.Hertz)
            {
                (unit, end) = (own.Unit, end + own.Length);
                match = new UnitMatch(unit, power, end - unitAt);
                value = value.Shift(power);
                return true;
            }
        }

        if (!EndsToken(end))
            return false;
        match = new UnitMatch(unit, power, end - unitAt, Doubt: rest[0] == 'M' && unit is Unit.Farad or Unit.Henry or Unit.Ampere ? PrefixDoubt.MilliOrMega : PrefixDoubt.None);
        if (_kind is PartKind.NotSaid && _assumed is null && rest[0] is 'µ' or 'u' or 'm')
            match = match with { Unit = Choose(rest[0]) };
        value = Marked(number, value, match).Shift(Prefixed(ref match));
        return true;
    }

    private Unit Choose(char letter)
    {
        Doubts |= ScanDoubts.BareUnit;
        BareUnits = letter == 'm' ? 3 : 2;
        return _choices.BareUnit switch { 0 => Unit.Farad, 1 => Unit.Henry, _ => Unit.Ohm };
    }

    // m directly behind a number is a metre, unless the part's value is in ohm, farad or henry: 3m on a resistor is 3 mΩ.
    private readonly UnitMatch BareMetre(in UnitMatch metre)
    {
        if (MainUnit is not (Unit.Ohm or Unit.Farad or Unit.Henry or Unit.Ampere) || (HasMain() && _assumed is null) || (MainUnit is Unit.Ampere && _kind is not PartKind.Fuse))
            return metre;
        return new UnitMatch(MainUnit.Value, -3, 1);
    }

    private int Prefixed(ref UnitMatch match)
    {
        if (match.Doubt is PrefixDoubt.None)
            return match.Shift;
        Doubts |= ScanDoubts.Prefix;
        return _choices.Prefix == 0 ? -3 : 6;
    }

    private DecimalNumber Marked(in WrittenNumber number, DecimalNumber value, in UnitMatch match)
    {
        // Nobody groups the thousands of a frequency that has a prefix: 32.768 kHz, 16.000 MHz.
        if (!number.IsMarkInDoubt || (match.Unit is Unit.Hertz && match.Shift > 0))
            return value;
        Doubts |= ScanDoubts.Mark;
        return _choices.Mark == 0 ? value : value.Shift(3);
    }

    private readonly bool IsUsable(in WrittenNumber number, int unitAt, bool isGlued, in UnitMatch match)
    {
        var letter = _text[unitAt];
        if (letter is 'R' or 'r' && !IsOhmHere(letter))
            return false;
        // 0.5C may be the rate of a battery, 105C is a temperature.
        if (letter == 'C' && match.Length == 1 && isGlued && number.Value.ToDouble() < 20)
            return false;
        var end = unitAt + match.Length;
        // V/ms, °C/W: a unit over another one is no unit of ours.
        return !(end + 1 < _text.Length && _text[end] == '/' && char.IsLetter(_text[end + 1]) && UnitScanner.TryMatch(_text[(end + 1)..], isGlued: true, out var below) && below.Length > 0 && (end + 1 + below.Length >= _text.Length || !char.IsAsciiDigit(_text[end + 1 + below.Length])));
    }

    private readonly bool Infix(int at, out ulong digits, out int places, out int end, bool allowsUnit = false)
    {
        (digits, places, end) = (0, 0, at);
        while (end < _text.Length && char.IsAsciiDigit(_text[end]) && places < 9)
        {
            digits = (digits * 10) + (ulong)(_text[end++] - '0');
            places++;
        }

        if (places == 0)
            return false;
        // 5V2A and 5V2.4A are two quantities, 5V1% a value and its tolerance.
        return end >= _text.Length || !(char.IsLetterOrDigit(_text[end]) || _text[end] is '%' or '~' or 'Ω' || (_text[end] is '.' or ',' && end + 1 < _text.Length && char.IsAsciiDigit(_text[end + 1]))) || (allowsUnit && UnitScanner.TryMatch(_text[end..], isGlued: true, out var unit) && unit.Shift == 0 && unit.Unit is Unit.Ohm or Unit.Farad or Unit.Henry or Unit.Hertz);
    }

    private static DecimalNumber Joined(DecimalNumber whole, ulong decimals, int places)
    {
        var scale = 1UL;
        for (var i = 0; i < places; i++)
            scale *= 10;
        return whole.Digits < 1_000_000_000 ? new DecimalNumber((whole.Digits * scale) + decimals, -places) : whole;
    }

    // 230V~, 5V⎓, 5V=3A, 12 V DC.
    private readonly int Current(int at, Unit unit, ref UnitMatch match)
    {
        if (unit is not (Unit.Volt or Unit.Ampere or Unit.Watt) || at >= _text.Length)
            return at;
        var next = SkipBlanks(at);
        if (next >= _text.Length)
            return at;
        var kind = _text[next] switch
        {
            '~' when next + 1 >= _text.Length || !IsSameUnitBehind(next + 1, unit) => CurrentKind.Alternating,
            '=' => CurrentKind.Direct,
            'A' or 'a' when next + 1 < _text.Length && _text[next + 1] is 'C' or 'c' && UnitScanner.IsEnd(_text, next + 2) => CurrentKind.Alternating,
            'D' or 'd' when next + 1 < _text.Length && _text[next + 1] is 'C' or 'c' && UnitScanner.IsEnd(_text, next + 2) => CurrentKind.Direct,
            _ => CurrentKind.NotSaid,
        };
        if (kind is CurrentKind.NotSaid)
            return at;
        match = match with { Current = kind };
        return next + (_text[next] is '~' or '=' ? 1 : 2);
    }

    private readonly bool IsSameUnitBehind(int at, Unit unit)
    {
        at = SkipBlanks(at);
        _ = Sign(ref at);
        return WrittenNumber.TryRead(_text, at, out var number) && SkipBlanks(number.End) is var unitAt && UnitScanner.TryMatch(_text[unitAt..], unitAt == number.End, out var match) && match.Unit == unit;
    }

    private static CurrentKind Merge(CurrentKind first, CurrentKind second) => second is CurrentKind.NotSaid ? first : second;

    // The sign between the two ends of a range, or 0. A dash with a blank only before it is a minus sign.
    private readonly int RangeMark(int at)
    {
        var next = SkipBlanks(at);
        if (next >= _text.Length)
            return 0;
        var rest = _text[next..];
        if (rest[0] is '…' or '~' or '÷')
            return next + 1;
        if (rest.StartsWith("..."))
            return next + 3;
        if (rest.StartsWith(".."))
            return next + 2;
        if (next > at && (rest.StartsWith("to ") || rest.StartsWith("TO ")))
            return next + 3;
        if (next > at && rest.StartsWith("bis "))
            return next + 4;
        return rest[0] == '-' && (next == at || (rest.Length > 1 && rest[1] == ' ')) ? next + 1 : 0;
    }

    private bool RangeEnd(int at, in UnitMatch first, out DecimalNumber value, out UnitMatch match, out bool isNegative, out int end)
    {
        (value, match, isNegative, end) = (default, default, false, at);
        var next = RangeMark(at);
        if (next == 0)
            return false;
        next = SkipBlanks(next);
        var doubts = Doubts;
        isNegative = Sign(ref next);
        if (!WrittenNumber.TryRead(_text, next, out var number) || number.IsTooLong || !TryUnit(number, SkipBlanks(number.End), out match, out end, out value) || match.Unit != first.Unit)
        {
            Doubts = doubts;
            return false;
        }

        end = Current(end, match.Unit, ref match);
        return true;
    }

    private bool RangeOfBareNumbers(int start, in WrittenNumber first, bool isNegative, int count)
    {
        var next = RangeMark(first.End);
        if (next == 0)
            return false;
        next = SkipBlanks(next);
        var isSecondNegative = Sign(ref next);
        if (!WrittenNumber.TryRead(_text, next, out var second) || second.IsTooLong || !TryUnit(second, SkipBlanks(second.End), out var match, out var end, out var value))
            return false;
        end = Current(end, match.Unit, ref match);
        var shift = match.Doubt is PrefixDoubt.None ? match.Shift : Prefixed(ref match);
        return Range(start, end, Marked(first, first.Value, match).Shift(shift), isNegative, value, isSecondNegative, match, count);
    }

    private bool Range(int start, int end, DecimalNumber first, bool isFirstNegative, DecimalNumber second, bool isSecondNegative, in UnitMatch match, int count)
    {
        var low = isFirstNegative ? -first.ToDouble() : first.ToDouble();
        var high = isSecondNegative ? -second.ToDouble() : second.ToDouble();
        _at = end;
        if (!IsPossible(first, match.Unit, low < 0, low) || !IsPossible(second, match.Unit, high < 0, high))
            return true;
        if (low > high)
        {
            Refusal = "A range runs from high to low; write the lower end first.";
            return true;
        }

        Add(Quantities.Quantity.Range(low, high, match.Unit) with { Current = match.Current, Count = count }, default, start, end);
        return true;
    }

    // 5 ± 0.25 V.
    private bool NumberAround(int start, in WrittenNumber number, bool isNegative)
    {
        var at = SkipBlanks(number.End);
        if (at >= _text.Length || !(_text[at] == '±' || _text[at..].StartsWith("+/-")))
            return false;
        at = SkipBlanks(at + (_text[at] == '±' ? 1 : 3));
        if (!WrittenNumber.TryRead(_text, at, out var around) || !TryUnit(around, SkipBlanks(around.End), out var match, out var end, out var distance) || match.Unit is Unit.Ratio)
            return false;
        end = Current(end, match.Unit, ref match);
        var shift = match.Doubt is PrefixDoubt.None ? match.Shift : Prefixed(ref match);
        if (!Finish(start, end, Marked(number, number.Value, match).Shift(shift), match.Unit, match.Current, isNegative, 0, 1, isBothWays: false) || Refusal is not null)
            return Refusal is not null;
        Apply(Count - 1, distance, distance, isAbsolute: true, at);
        _found[Math.Max(0, Count - 1)] = _found[Math.Max(0, Count - 1)] with { Start = start, Length = end - start };
        return true;
    }

    // 50/60 Hz, 5/9/12 V, 60 x 40 x 20 mm: several values of one unit; 1/4 W: a fraction.
    private bool Listed(int start, in WrittenNumber first, bool isNegative)
    {
        const int Most = 8;
        var at = SkipBlanks(first.End);
        if (isNegative || at >= _text.Length || _text[at] is not ('/' or 'x' or 'X'))
            return false;
        var sign = _text[at];
        Span<DecimalNumber> values = stackalloc DecimalNumber[Most];
        Span<(int Start, int End)> places = stackalloc (int, int)[Most];
        (values[0], places[0]) = (first.Value, (start, first.End));
        var isDoubtful = first.IsMarkInDoubt;
        var isWhole = first.IsWhole;
        for (var count = 1; count < Most; count++)
        {
            if (at >= _text.Length || _text[at] != sign || !WrittenNumber.TryRead(_text, SkipBlanks(at + 1), out var next) || next.IsTooLong)
                return false;
            (values[count], places[count]) = (next.Value, (SkipBlanks(at + 1), next.End));
            (isDoubtful, isWhole) = (isDoubtful || next.IsMarkInDoubt, isWhole && next.IsWhole);
            at = SkipBlanks(next.End);
            if (!TryUnit(next, at, out var match, out var end, out var last))
                continue;
            if (sign != '/' && match.Unit is not Unit.Metre)
                return false;
            end = Current(end, match.Unit, ref match);
            if (sign == '/' && count == 1 && isWhole && match.Unit is Unit.Watt or Unit.Ampere && Fraction(values[0].Digits, values[1].Digits) is { } fraction)
                return Finish(start, end, fraction.Shift(match.Shift), match.Unit, match.Current, isNegative: false, 0, 1, isBothWays: false);
            if (Count + count >= MaxQuantities)
            {
                Refusal = TooMany;
                return true;
            }

            var shift = match.Doubt is PrefixDoubt.None ? match.Shift : Prefixed(ref match);
            for (var i = 0; i < count; i++)
                if (!Finish(places[i].Start, places[i].End, (isDoubtful && _choices.Mark == 1 ? values[i].Shift(3) : values[i]).Shift(shift), match.Unit, match.Current, isNegative: false, 0, 1, isBothWays: false))
                    return false;
            Doubts |= isDoubtful ? ScanDoubts.Mark : ScanDoubts.None;
            return Finish(places[count].Start, end, last, match.Unit, match.Current, isNegative: false, 0, 1, isBothWays: false);
        }

        return false;
    }

    private static DecimalNumber? Fraction(ulong above, ulong below) =>
        above is > 0 and < 100 && above < below && below is 2 or 4 or 5 or 8 or 10 or 16 or 20 or 32 or 40 or 64 ? new DecimalNumber(above * 1_000_000 / below, -6) : null;

    // Digits without unit: a code or a value of the kind, or nothing.
    private bool Bare(int start, in WrittenNumber number, bool isNegative, int bound, int count, bool isBothWays)
    {
        HasBareNumber = true;
        if (number.End < _text.Length && !IsSeparator(_text[number.End]) && _text[number.End] is not '±')
            return false;
        if (_assumed is { } assumed && !(number.IsOldOhm && assumed is Unit.Ohm))
        {
            var plain = new UnitMatch(assumed, 0, 0);
            return Finish(start, number.End, Marked(number, number.Value, plain), assumed, default, isNegative, bound, count, isBothWays);
        }

        if (MainUnit is not { } unit || bound != 0 || count != 1 || isBothWays || isNegative || HasMain() || !_choices.TakesCodes)
            return false;
        if (number.IsOldOhm)
        {
            if (unit is not Unit.Ohm)
                return false;
            var (asOhm, asNumber) = (number.OldOhm, number.Value);
            // 0E1 can only be a tenth of an ohm.
            if (asNumber.Digits != 0)
                Doubts |= ScanDoubts.OldOhm;
            return Finish(start, number.End, _choices.OldOhm == 0 ? asOhm : asNumber, unit, default, isNegative: false, 0, 1, isBothWays: false);
        }

        var token = _text[start..number.End];
        if (number.IsWhole && !token.ContainsAny(' ', '\'') && _kind is PartKind.Resistor or PartKind.Thermistor or PartKind.Capacitor or PartKind.Inductor)
        {
            var isAlone = token.Length == _text.Trim().Length;
            if (!isAlone && IsPackage(token))
                return false;
            if (Code(token, isAlone))
                return true;
        }

        if (unit is Unit.Henry or Unit.Hertz || (unit is Unit.Farad && number.IsWhole))
            return false;
        var match = new UnitMatch(unit, unit is Unit.Farad ? -6 : 0, 0);
        return Finish(start, number.End, Marked(number, number.Value, match).Shift(match.Shift), unit, default, isNegative: false, 0, 1, isBothWays: false);
    }

    private static bool IsPackage(ReadOnlySpan<char> token) => token is "01005" or "0201" or "0402" or "0603" or "0805" or "1206" or "1210" or "1812" or "2010" or "2220" or "2512" or "1608" or "2012" or "3216";

    private static bool MustBePositive(Unit unit) => unit is Unit.Ohm or Unit.Farad or Unit.Henry or Unit.Hertz or Unit.Metre or Unit.Second or Unit.Kilogram;

    private bool IsPossible(DecimalNumber written, Unit unit, bool isNegative, double value)
    {
        if (!double.IsFinite(value))
            Refusal = "A number is too large to be a quantity.";
        else if (value == 0 && written.Digits != 0)
            Refusal = "A number is too small to be a quantity.";
        else if (isNegative && MustBePositive(unit))
            Refusal = $"A negative quantity in {unit.Code()} cannot be.";
        else if (unit is Unit.DegreeCelsius && value < -273.15)
            Refusal = "A temperature is below absolute zero.";
        return Refusal is null;
    }

    private bool Finish(int start, int end, DecimalNumber written, Unit unit, CurrentKind current, bool isNegative, int bound, int count, bool isBothWays)
    {
        _at = end;
        var value = isNegative ? -written.ToDouble() : written.ToDouble();
        if (!IsPossible(written, unit, value < 0, value))
            return true;
        if (isBothWays && (MustBePositive(unit) || unit is Unit.Ratio))
        {
            // A tolerance whose value stands elsewhere.
            _at = start;
            return false;
        }

        var quantity = isBothWays ? Quantities.Quantity.Range(-Math.Abs(value), Math.Abs(value), unit)
            : bound < 0 ? Quantities.Quantity.AtMost(value, unit)
            : bound > 0 ? Quantities.Quantity.AtLeast(value, unit)
            : Quantities.Quantity.Exactly(value, unit);
        Add(quantity with { Current = current, Count = count }, written, start, end);
        return true;
    }

    private const string TooMany = "There are more than 32 quantities in one text.";

    private void Add(Quantity quantity, DecimalNumber written, int start, int end)
    {
        if (Count >= _found.Length)
        {
            Refusal = TooMany;
            return;
        }

        if (_pending is not CurrentKind.NotSaid && quantity.Unit is Unit.Volt or Unit.Ampere or Unit.Watt)
            quantity = quantity with { Current = quantity.Current is CurrentKind.NotSaid ? _pending : quantity.Current };
        _pending = CurrentKind.NotSaid;
        _written[Count] = written;
        _found[Count++] = new FoundQuantity(quantity, start, end - start);
    }

    private void Word()
    {
        var start = _at;
        var end = TokenEnd(start);
        // A sign for "about" is left over by itself.
        if (end == start || _text[start] is '~' or '≈')
            end = start + 1;
        var word = _text[start..end];
        if (CurrentWord(word) is var (kind, length) && kind is not CurrentKind.NotSaid)
        {
            var next = SkipBlanks(start + length);
            if (next < _text.Length && (char.IsAsciiDigit(_text[next]) || _text[next] is '-' or '±'))
            {
                (_pending, _at) = (kind, next);
                var before = Count;
                if (Quantity() && Count > before && _found[before].Quantity.Current == kind)
                {
                    _found[before] = _found[before] with { Start = start, Length = _found[before].Start + _found[before].Length - start };
                    return;
                }

                (_pending, _at, Count) = (CurrentKind.NotSaid, start, before);
            }
        }

        if (Refusal is null && !_choices.IsProse && !HasMain() && (MayBeCode(word) && Code(word, mayBeEia96: word.Length == _text.Trim().Length) || Bands(start)))
            return;
        _at = end;
        AddUnread(start, end);
    }

    private readonly bool MayBeCode(ReadOnlySpan<char> word) =>
        _assumed is null && word.Length is >= 2 and <= LetterNumberCode.MaxLength && word.ContainsAnyInRange('0', '9') && word.IndexOfAnyExceptInRange('0', '9') >= 0
        && !IsExponent(word) && _kind is PartKind.NotSaid or PartKind.Resistor or PartKind.Thermistor or PartKind.Capacitor or PartKind.Inductor;

    // 1E5 may be an exponent: it is no silent 1.5 Ω.
    private static bool IsExponent(ReadOnlySpan<char> word) => word.IndexOfAnyExceptInRange('0', '9') is > 0 and var at && word[at] == 'E' && word[(at + 1)..].IndexOfAnyExceptInRange('0', '9') < 0;

    private bool Bands(int start)
    {
        if (_kind is not (PartKind.Resistor or PartKind.NotSaid) || _assumed is not null || !char.IsLetter(_text[start]))
            return false;
        var (at, end, count) = (start, start, 0);
        while (at < _text.Length && count < 6)
        {
            var wordEnd = at;
            while (wordEnd < _text.Length && char.IsAsciiLetter(_text[wordEnd]))
                wordEnd++;
            if (!ColourBands.IsColour(_text[at..wordEnd]))
                break;
            (end, count, at) = (wordEnd, count + 1, wordEnd);
            while (at < _text.Length && _text[at] is ' ' or '|' or '-' or ',' or '/' or ';')
                at++;
        }

        if (count < 3 || ColourBands.Decode(_text[start..end].ToString()) is not [var reading])
            return false;
        (_at, CodeNote) = (end, reading.Scheme.Word());
        Add(reading.Quantity, default, start, end);
        return true;
    }

    private static (CurrentKind Kind, int Length) CurrentWord(ReadOnlySpan<char> word) =>
        word.Length < 2 || (word.Length > 2 && char.IsLetter(word[2])) || word[1] is not ('C' or 'c') ? default
        : word[0] is 'A' or 'a' ? (CurrentKind.Alternating, 2)
        : word[0] is 'D' or 'd' ? (CurrentKind.Direct, 2)
        : default;

    private void AddUnread(int start, int end)
    {
        if (UnreadCount > 0 && _unread[UnreadCount - 1].End is var last && (last == start || (last == start - 1 && _text[last] is '=' or ':' or '/')))
            _unread[UnreadCount - 1].End = end;
        else if (UnreadCount < _unread.Length)
            _unread[UnreadCount++] = (start, end);
        else
            // More pieces than are kept apart: the last one grows over the rest.
            _unread[UnreadCount - 1].End = end;
    }
}
