using System.Globalization;

namespace Catalogue.Domain.UsbPd;

/// <summary>Reads the supplies that a line states in words: <c>[2] Fixed 9V 2.6A</c>, <c>(5) 3300mV - 11000mV; 2500mA</c>, <c>PPS 3.3/11V 2.5A</c>.</summary>
internal sealed class ClaimText
{
    // A value beyond these is no supply of this world; it is left out rather than cut.
    private const int LargestMilli = 1_000_000;

    private readonly string _line;
    private readonly List<DumpToken> _tokens;
    private readonly List<ClaimedSupply> _done = [];
    private ClaimedSupply _open = new();
    private bool _inExtended;

    private ClaimText(string line, List<DumpToken> tokens) => (_line, _tokens) = (line, [.. tokens.SelectMany(Parted)]);

    /// <summary>The supplies a line states, in order; whole or not.</summary>
    public static List<ClaimedSupply> Of(string line, List<DumpToken> tokens)
    {
        var reading = new ClaimText(line, tokens);
        reading.Run();
        return reading._done;
    }

    private void Run()
    {
        (decimal Number, int End, bool HasUnit)? voltage = null;
        for (var i = 0; i < _tokens.Count; i++)
        {
            var token = _tokens[i];
            if (Index(i) is { } index)
            {
                Close();
                _open.Index = index;
                voltage = null;
                continue;
            }

            if (token is { IsWord: true } or { IsMarked: true })
                continue;
            if (!TryQuantity(i, out var value, out var unit, out var scale, out var used))
            {
                if (char.IsAsciiDigit(token.Text[0]) && TryNumber(token.Text, out var bare))
                    voltage = (bare, token.End, false);
                else
                    Name(token);
                continue;
            }

            i += used - 1;
            var end = _tokens[i].End;
            switch (unit)
            {
                case 'V':
                    // "3.3/11V": the lower end has no unit of its own. "3300mV - 5900mV": it was taken as a voltage before.
                    if (voltage is { } from && IsRangeSign(from.End, token.Start, from.HasUnit) && (int)(from.HasUnit ? from.Number : from.Number * scale) is var lowest && lowest < value)
                    {
                        if (!from.HasUnit && _open.MaxMv is not null)
                            Close();
                        (_open.MinMv, _open.MaxMv) = (lowest, value);
                    }
                    else
                    {
                        if (_open.MaxMv is not null)
                            Close();
                        (_open.MinMv, _open.MaxMv) = (value, value);
                    }

                    voltage = (value, end, true);
                    break;
                case 'A':
                    if (_open.Ma is not null)
                        Close();
                    _open.Ma = value;
                    break;
                default:
                    _open.Mw ??= value;
                    break;
            }
        }

        Close();
    }

    private bool IsRangeSign(int from, int to, bool hasUnit) => to - from is > 0 and <= 8 && _line[from..to].Trim() switch
    {
        "-" or "–" or "—" or "~" or ".." or "..." or "…" or "−" or "to" => true,
        "/" => !hasUnit,
        _ => false,
    };

    private void Close()
    {
        var (closing, named) = (_open, _open.Named);
        _open = new ClaimedSupply();
        // The second band of an adjustable supply: "9-15V 3A, 15-20V 2.25A".
        if (closing is { MinMv: Capability.SprAvs.SplitMv, MaxMv: Capability.SprAvs.HighestMv, Ma: { } ma, Index: null } && named is null or SupplyKind.SprAvs
            && _done is [.., { Named: SupplyKind.SprAvs, MaxMv: Capability.SprAvs.SplitMv } first])
        {
            (first.MaxMv, first.MaTo20V) = (Capability.SprAvs.HighestMv, ma);
            return;
        }

        if (closing.Index is not null || closing.MaxMv is not null || closing.Ma is not null)
            _done.Add(closing);
    }

    private void Name(DumpToken token)
    {
        foreach (var part in token.Parts())
        {
            switch (part)
            {
                case "epr":
                    _inExtended = true;
                    break;
                case "spr":
                    _inExtended = false;
                    break;
                case "fixed":
                    Kind(SupplyKind.Fixed);
                    break;
                case "pps" or "programmable":
                    Kind(SupplyKind.SprPps);
                    break;
                case "battery" or "batt":
                    Kind(SupplyKind.Battery);
                    break;
                case "variable" or "var":
                    Kind(SupplyKind.Variable);
                    break;
                case "avs" or "adjustable":
                    Kind(_inExtended ? SupplyKind.EprAvs : SupplyKind.SprAvs);
                    break;
                case "limited":
                    _open.IsPowerLimited = !_line.AsSpan(token.End).StartsWith("=0");
                    break;
            }
        }

        _open.Flags |= token.Text.ToLowerInvariant() switch
        {
            "dual_role_power" or "drp" => SourceFlags.DualRolePower,
            "usb_suspend" or "suspend" or "susp" => SourceFlags.UsbSuspend,
            "unconstrained_power" or "unconstrained" or "uncon" => SourceFlags.UnconstrainedPower,
            "usb_comm" or "usbcomm" or "usb_communication" => SourceFlags.UsbComm,
            "dual_role_data" or "drd" => SourceFlags.DualRoleData,
            "unchunked_ext" or "unchunked" or "unchunk" => SourceFlags.UnchunkedExt,
            "epr_capable" or "epr_mode_capable" => SourceFlags.EprCapable,
            _ => SourceFlags.None,
        };
    }

    private void Kind(SupplyKind kind)
    {
        // A name after a whole supply belongs to it only where it has none and could bear it.
        if (_open.IsWhole && (_open.Named is not null || _open.IsRange == (kind == SupplyKind.Fixed)))
            Close();
        _open.Named = kind;
    }

    // [1], (1), #1, "PDO 1", "object 1:", "1." and "1:" at the beginning of a line, the first cell of a table's row.
    private int? Index(int i)
    {
        var token = _tokens[i];
        var before = token.Start > 0 ? _line[token.Start - 1] : '\0';
        var after = token.End < _line.Length ? _line[token.End] : '\0';
        if (token.SmallNumber is { } number && number <= CapabilityList.LongestExtended + 2)
        {
            // "APDO 5-21V": the number begins a range.
            if (after is '-' or '/' or '–' or '~' && token.End + 1 < _line.Length && char.IsAsciiDigit(_line[token.End + 1]))
                return null;
            if ((before == '[' && after == ']') || (before == '(' && after == ')') || before == '#')
                return number;
            if (i == 0 && after is '.' or ':' or ')' && (token.End + 1 == _line.Length || _line[token.End + 1] is ' ' or '\t'))
                return number;
            if (i == 0 && before is ' ' or '|' && _line.AsSpan(0, token.Start).Trim().SequenceEqual("|"))
                return number;
            if (i > 0 && IsObjectWord(_tokens[i - 1].Text) && token.Start - _tokens[i - 1].End <= 2)
                return number;
            return null;
        }

        var digits = token.Text.AsSpan().TrimStart("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ_");
        return digits.Length is 1 or 2 && digits.Length < token.Text.Length && digits.IndexOfAnyExceptInRange('0', '9') < 0
            && IsObjectWord(token.Text.AsSpan(0, token.Text.Length - digits.Length).TrimEnd('_'))
            ? int.Parse(digits, CultureInfo.InvariantCulture)
            : null;
    }

    private static bool IsObjectWord(ReadOnlySpan<char> word) =>
        word.EndsWith("pdo", StringComparison.OrdinalIgnoreCase) || word.Equals("obj", StringComparison.OrdinalIgnoreCase) || word.Equals("object", StringComparison.OrdinalIgnoreCase)
        || word.Equals("position", StringComparison.OrdinalIgnoreCase) || word.Equals("pos", StringComparison.OrdinalIgnoreCase) || word.Equals("profile", StringComparison.OrdinalIgnoreCase);

    // "5V", "5000mV", "5.00 V", "3 A". The value is in mV, mA or mW, rounded down.
    private bool TryQuantity(int i, out int milli, out char unit, out decimal scale, out int used)
    {
        (milli, unit, scale, used) = (0, '\0', 0, 1);
        var text = _tokens[i].Text;
        if (text.Length > 12 || !char.IsAsciiDigit(text[0]))
            return false;
        var digits = 1;
        while (digits < text.Length && (char.IsAsciiDigit(text[digits]) || text[digits] is '.' or ','))
            digits++;
        var symbol = text[digits..];
        if (symbol.Length == 0)
        {
            if (i + 1 >= _tokens.Count || _tokens[i + 1].Start - _tokens[i].End != 1 || _line[_tokens[i].End] is not (' ' or '\u00A0'))
                return false;
            symbol = _tokens[i + 1].Text;
            used = 2;
        }

        scale = symbol switch { "V" or "v" or "A" or "W" or "w" => 1000m, "mV" or "mv" or "MV" or "mA" or "ma" or "MA" or "mW" or "mw" or "MW" => 1m, _ => 0 };
        if (scale == 0 || !TryNumber(text[..digits], out var number) || number * scale > LargestMilli)
            return false;
        milli = (int)(number * scale);
        unit = char.ToUpperInvariant(symbol[^1]);
        return true;
    }

    // "5V3A" is two quantities with nothing between them.
    private static IEnumerable<DumpToken> Parted(DumpToken token)
    {
        var cut = token.Text.Length is >= 4 and <= 16 && char.IsAsciiDigit(token.Text[0]) ? token.Text.AsSpan().IndexOfAny('V', 'v') + 1 : 0;
        if (cut < 2 || cut >= token.Text.Length || !char.IsAsciiDigit(token.Text[cut]))
            return [token];
        return [new DumpToken(token.Text[..cut], token.Start, null, false), new DumpToken(token.Text[cut..], token.Start + cut, null, false)];
    }

    private static bool TryNumber(string text, out decimal number) =>
        decimal.TryParse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number) && number is >= 0 and <= LargestMilli;
}
