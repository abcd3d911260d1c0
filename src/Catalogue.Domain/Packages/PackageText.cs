using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Catalogue.Domain.Families;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Packages;

/// <summary>Reads what people and programs that draw boards write where a package is meant, such as <c>sot 23-5</c> or <c>R_0603_1608Metric</c>.</summary>
/// <remarks>
/// <para>
/// The text is folded (compatibility form, upper case, dashes, multiplication signs) and split at blanks, <c>_ / ( ) [ ] ; +</c> and commas that
/// are not decimal. The longest run of pieces that is a name, a shape with a count, or a size code of a chip is the package; sizes beside it are
/// taken as written. Two names of different packages are not chosen between. House rule: what is unknown stays as written and makes no name.
/// </para>
/// <para>
/// A bare four-digit code of a chip is the inch code; 0402 and 0603 are metric codes too, which is said unless a library's name, where the
/// inch code is the custom, or a second code settles it. Source: <see cref="PackageOutlines"/>; IPC-7351 for names such as <c>RESC1608X55N</c>.
/// </para>
/// </remarks>
public static partial class PackageText
{
    /// <summary>Longest text that is read; a longer one is kept as written.</summary>
    public const int MaxLength = PackageOutlines.MaxNameLength;

    // No name has more pieces or characters.
    private const int LongestRun = 5;
    private const int LongestName = 40;
    private const double LargestMm = 200;
    private const double MmInMil = 0.0254;
    private const double NarrowestWideBodyMm = 5;
    private const double NearlySame = 0.15;

    /// <summary>Reads the name of a package.</summary>
    /// <param name="text">Any text, or null.</param>
    /// <returns>The package, or the text as written with the reason why it names none.</returns>
    public static PackageReading Read(string? text)
    {
        if (string.IsNullOrEmpty(text))
            return new PackageReading.Unknown("", "nothing is written");
        if (text.Length > MaxLength)
            return new PackageReading.Unknown(text, $"longer than {MaxLength} characters, kept as written");
        return PlaceholderText.IsPlaceholder(text) ? new PackageReading.Unknown(text, "names no package") : new Reader(text).Result();
    }

    private sealed class Reader
    {
        private readonly string _text;
        private readonly List<string> _warnings = [];
        private readonly List<string> _unread = [];
        private readonly List<Name> _names = [];
        private readonly List<ChipCode> _codes = [];
        private bool _isLibraryName;
        private bool _isMetric;
        private bool _isInch;
        private bool _hasPad;
        private bool _isIsolated;
        private int? _count;
        private PackageSize? _body;
        private PackageSize? _pad;
        private double? _pitch;
        private double? _diameter;
        private double? _height;
        private double? _length;
        private double? _width;
        private double? _bare;

        public Reader(string text)
        {
            _text = text;
            OddBlanks();
            var folded = Fold(text);
            if (folded.LastIndexOf(':') is >= 0 and var colon && colon + 1 < folded.Length)
            {
                folded = folded[(colon + 1)..];
                PrefixDropped();
            }

            Take(Separators().Split(folded).Where(piece => piece.Length > 0).ToList());
        }

        private enum CodeSystem
        {
            NotSaid,
            Inch,
            Metric,
        }

        public PackageReading Result()
        {
            if (_names.Count == 0 && _codes.Count == 0)
                return Unknown(PackageReading.Unknown.NotKnown);
            var chip = _codes.Count == 0 ? null : Chip();
            if (_codes.Count > 0 && chip is null)
                return Unknown($"{string.Join(" and ", _codes.Select(code => code.Digits).Distinct())} do not name one size, kept as written");
            var found = Named();
            if (chip is not null)
                found.Add(new Name(chip, chip.Name));
            if (found.Select(name => name.Outline.Name).Distinct().Count() > 1)
                return Unknown($"names more than one package ({string.Join(", ", found.Select(name => name.Outline.Name).Distinct())}), kept as written");
            // SMA may be a connector, a can may be one of paint: a word alone is believed only where all beside it was understood.
            if (_unread.Count > 0 && !found[0].Outline.Name.Any(char.IsAsciiDigit) && !HasWires(found[0].Outline))
                return Unknown($"“{found[0].Spelling}” beside “{WellFormedText.Shorten(_unread[0], 40)}” need not be a package, kept as written");
            return _unread.Find(PackageWords.MakesAnother) is { } maker
                ? Unknown($"“{WellFormedText.Shorten(maker, 40)}” makes another package of {found[0].Spelling}, kept as written")
                : Recognised(found[0]);
        }

        // "Rect" with a pitch beside it is a capacitor's box.
        private bool HasWires(PackageOutline outline) => outline.Kind is PackageKind.Wired && (_pitch ?? _diameter) is not null;

        private PackageReading.Unknown Unknown(string reason) => new(_text, reason);

        private PackageReading.Recognised Recognised(Name name)
        {
            var isAssumed = name.IsFromTable && _count is null && PackageOutlines.LeavesCountOpen(name.Spelling);
            var outline = WithDetails(WithCount(name.Outline));
            Sizes(outline);
            if (isAssumed)
                Warn("pins assumed");
            if (outline.Pins is null)
                Warn("pins not said");
            if (name.Spelling.StartsWith("TSOT", StringComparison.Ordinal))
                Warn("TSOT is thinner than SOT on the same pads");
            if (_isIsolated && outline.Name != "TO-220F")
                Warn(outline.Name == "TO-220" ? "isolated: TO-220F is the package with an isolated tab" : "isolated: not part of the name");
            foreach (var piece in _unread)
                Warn($"“{WellFormedText.Shorten(piece, 40)}” was not read");
            return new PackageReading.Recognised(_text, outline)
            {
                ArePinsAssumed = isAssumed,
                Body = _body,
                PitchMm = _pitch,
                ExposedPad = _pad,
                DiameterMm = _diameter,
                HeightMm = _height,
                Alias = IsSpellingOf(outline, name.Spelling) ? outline.AlsoCalled : name.Spelling,
                Warnings = _warnings,
            };
        }

        // SOT-23-3 of SOT-23 and SOIC-16 of SOIC-16W are no other names; words for parts on wires are none at all.
        private static bool IsSpellingOf(PackageOutline outline, string spelling)
        {
            var (written, name) = (PackageOutlines.Key(spelling), PackageOutlines.Key(outline.Name));
            return outline.Kind is PackageKind.Wired or PackageKind.SmdCan || written.StartsWith(name, StringComparison.Ordinal) || name.StartsWith(written, StringComparison.Ordinal);
        }

        // Disc and box are radial too, and DIP beside PDIP-8 says nothing more: the more telling word stands.
        private List<Name> Named()
        {
            var names = _names.DistinctBy(name => name.Outline.Name).ToList();
            if (names.Count > 1)
                names.RemoveAll(name => name.Outline.Name == "radial" && names.Exists(other => other.Outline.Kind is PackageKind.Wired or PackageKind.SmdCan && other.Outline.Name is not ("radial" or "axial")));
            if (names.Count > 1)
                names.RemoveAll(name => name.Outline.Pins is null && names.Exists(other => other.Outline.Name.StartsWith(name.Outline.Name + "-", StringComparison.Ordinal)));
            return names;
        }

        // "SOT-23, 5 pins" is SOT-23-5.
        private PackageOutline WithCount(PackageOutline outline)
        {
            if (_count is not { } count || count == outline.Pins)
                return outline;
            if (Counted(outline.Name, count) is { } counted)
                return counted;
            Warn(FormattableString.Invariant($"{count} pins are said, {outline.Name} has {outline.Pins}"));
            return outline;
        }

        private PackageOutline WithDetails(PackageOutline outline)
        {
            if (outline.Kind is not (PackageKind.GullWing or PackageKind.GullWingQuad) || outline.Pins is null)
                return outline;
            var narrow = _body?.NarrowMm ?? _bare ?? Math.Min(_length ?? double.PositiveInfinity, _width ?? double.PositiveInfinity);
            var match = SmallOutline().Match(outline.Name);
            var isWide = match.Success && (match.Groups["wide"].Success || (double.IsFinite(narrow) && narrow >= NarrowestWideBodyMm));
            var word = outline.Name[..outline.Name.IndexOf('-', StringComparison.Ordinal)];
            var isPadded = _hasPad || _pad is not null || outline.Name.EndsWith("-EP", StringComparison.Ordinal);
            return PackageShape.Outline(word, outline.Pins, isWide, isPadded) ?? outline;
        }

        private void Sizes(PackageOutline outline)
        {
            if (_body is null && _length is { } length && _width is { } width)
                _body = new PackageSize(length, width);
            if (outline.Kind is PackageKind.SmdCan && _body is { } can && _diameter is null)
                (_diameter, _height, _body) = (can.LengthMm, _height ?? can.WidthMm, null);
            if (outline.Kind is PackageKind.Wired or PackageKind.SmdCan)
                _diameter ??= _bare;
            if (!outline.HasSeveralSizes && outline.Body is { } nominal && _body is { } written && !written.IsNear(nominal, NearlySame))
                Warn($"the body of {outline.Name} is {nominal} mm, {written} mm is written");
        }

        private PackageOutline? Chip()
        {
            if (_codes.Count == 1 && (_isMetric || _isInch))
                _codes[0] = _codes[0] with { System = _isMetric ? CodeSystem.Metric : CodeSystem.Inch };
            var fitting = PackageOutlines.All.Where(outline => outline.Kind is PackageKind.Chip && _codes.TrueForAll(code => code.Fits(outline))).ToList();
            var first = _codes[0];
            var chip = fitting.Find(outline => outline.Name == first.Digits) ?? fitting.FirstOrDefault();
            if (chip is null || _codes.Count > 1)
                return chip;
            if (first.IsZeroLost)
                Warn("leading zero lost in a spreadsheet");
            else if (chip.Name != first.Digits)
                Warn($"metric code: metric {first.Digits} is imperial {chip.Name}");
            else if (first.System is CodeSystem.NotSaid && !_isLibraryName && PackageOutlines.All.FirstOrDefault(outline => outline.Metric == first.Digits) is { } other)
                Warn($"imperial assumed: metric {first.Digits} is imperial {other.Name}");
            if (first is { Digits: "1005", System: CodeSystem.NotSaid })
                Warn("or 01005 with its leading zero lost");
            return chip;
        }

        private void Take(List<string> pieces)
        {
            for (var i = 0; i < pieces.Count;)
            {
                var run = Math.Min(LongestRun, pieces.Count - i);
                while (run > 0 && !IsName(string.Join(' ', pieces.GetRange(i, run))))
                    run--;
                if (run > 0)
                {
                    i += run;
                    continue;
                }

                if (!IsDetail(pieces[i]) && !PackageWords.Idle.Contains(pieces[i]))
                {
                    // DIODE-SMA: the word before the hyphen is the library's.
                    if (pieces[i].IndexOf('-', StringComparison.Ordinal) is > 0 and var hyphen && hyphen + 1 < pieces[i].Length && PackageWords.IsBeside(pieces[i][..hyphen]) && !PackageWords.OtherPrefixes.Contains(pieces[i]))
                    {
                        if (!PackageWords.Idle.Contains(pieces[i][..hyphen]))
                            PrefixDropped();
                        pieces[i] = pieces[i][(hyphen + 1)..];
                        continue;
                    }

                    if (PackageWords.UsualPrefixes.Contains(pieces[i]))
                        _isLibraryName = true;
                    else if (PackageWords.OtherPrefixes.Contains(pieces[i]))
                        PrefixDropped();
                    else
                        _unread.Add(pieces[i]);
                }

                i++;
            }
        }

        private bool IsName(string piece)
        {
            if (piece.Length > LongestName)
                return false;
            if (IsChip(piece))
                return true;
            if (!piece.All(char.IsAsciiDigit) && PackageOutlines.FindNamed(UnitAfterDigit().Replace(piece, "")) is { } entry)
            {
                _names.Add(new Name(entry.Outline, entry.Name, IsFromTable: true));
                if (SizeInName().Match(piece) is { Success: true } size)
                    SetSize(ref _body, size);
                return true;
            }

            if (Can().Match(piece) is { Success: true } can)
            {
                (_pitch, _diameter) = (Mm(can.Groups["pitch"]), Mm(can.Groups["diameter"]));
                return IsRadial();
            }

            if (Film().Match(piece) is { Success: true } film)
            {
                _pitch = Tenths(film.Groups["pitch"]);
                _body = new PackageSize(Tenths(film.Groups["first"]), Tenths(film.Groups["second"]));
                return IsRadial();
            }

            return IsShape(piece.Replace(' ', '-')) || IsCounted(piece.Replace(' ', '-'));
        }

        private bool IsRadial()
        {
            _names.Add(new Name(PackageOutlines.Find("radial")!, "radial"));
            return true;
        }

        private bool IsShape(string piece)
        {
            var match = Shape().Match(piece);
            if (!match.Success)
                match = ShapeReversed().Match(piece);
            if (!match.Success)
                return false;
            var word = match.Groups["word"].Value;
            var pins = match.Groups["pins"] is { Success: true } digits ? int.Parse(digits.Value, CultureInfo.InvariantCulture) : (int?)null;
            if (PackageShape.Outline(word, pins, match.Groups["wide"].Success, match.Groups["pad"].Success) is not { } outline)
                return false;
            _names.Add(new Name(outline, pins is null ? word : FormattableString.Invariant($"{word}-{pins}")));
            return true;
        }

        // TO-220-5, TO220-5L: a count that the table has no row for.
        private bool IsCounted(string piece)
        {
            var match = NumberedWithCount().Match(piece);
            if (!match.Success || PackageOutlines.FindNamed(match.Groups["name"].Value) is not { } entry
                || Counted(entry.Outline.Name, int.Parse(match.Groups["pins"].Value, CultureInfo.InvariantCulture)) is not { } outline)
                return false;
            _names.Add(new Name(outline, outline.Name));
            return true;
        }

        private static PackageOutline? Counted(string name, int count)
        {
            var counted = FormattableString.Invariant($"{name}-{count}");
            if (PackageOutlines.Find(counted) is { } row)
                return row;
            if (PackageShape.Outline(name, count, isWide: false, hasPad: false) is { } shape)
                return shape;
            return PackageWords.WithOtherCounts.Contains(name) && count is >= 2 and <= 9 && PackageOutlines.Find(name) is { } outline
                ? new PackageOutline(counted, outline.Kind, count, outline.Tab is PackageTab.Pin ? PackageTab.Joined : outline.Tab, null, null, [], null, null, null, Confidence.Medium, $"{name} with another count of leads")
                : null;
        }

        private bool IsChip(string piece)
        {
            var match = LandPattern().Match(piece);
            if (match.Success)
            {
                var land = new ChipCode(match.Groups["code"].Value, CodeSystem.Metric);
                if (!IsKnown(land))
                    return false;
                _codes.Add(land);
                _height = int.Parse(match.Groups["height"].Value, CultureInfo.InvariantCulture) / 100.0;
                return true;
            }

            match = CodeOfChip().Match(piece);
            if (!match.Success)
                return false;
            var (before, after) = (match.Groups["before"].Value, match.Groups["after"].Value);
            if ((before.Length > 0 && !PackageWords.IsBeside(before)) || (after.Length > 0 && !PackageWords.IsBeside(after)))
                return false;
            var digits = match.Groups["code"].Value;
            var isZeroLost = digits.Length == 3 && before.Length == 0;
            var system = match.Groups["metric"].Success ? CodeSystem.Metric : match.Groups["inch"].Success ? CodeSystem.Inch : CodeSystem.NotSaid;
            var code = new ChipCode(isZeroLost ? "0" + digits : digits, isZeroLost ? CodeSystem.Inch : system, isZeroLost);
            if (!IsKnown(code))
                return false;
            if ((before + after).Length > 0 && !PackageWords.Idle.Contains(before) && !PackageWords.Idle.Contains(after))
                PrefixDropped();
            _codes.Add(code);
            return true;
        }

        private static bool IsKnown(ChipCode code) => PackageOutlines.All.Any(outline => outline.Kind is PackageKind.Chip && code.Fits(outline));

        private bool IsDetail(string piece)
        {
            if (IsOneDetail(piece))
                return true;
            // L6.6-W6.1-P4.58-BR
            var parts = piece.Split('-', StringSplitOptions.RemoveEmptyEntries);
            return parts.Length > 1
                && Array.TrueForAll(parts, part => LetterAndDigit().IsMatch(part) || PackageWords.Idle.Contains(part))
                && Array.TrueForAll(parts, part => PackageWords.Idle.Contains(part) || IsOneDetail(part));
        }

        private bool IsOneDetail(string piece)
        {
            if (piece is "METRIC" or "METRISCH" or "公制")
                return _isMetric = true;
            if (piece is "INCH" or "IMPERIAL" or "ZOLL" or "英制")
                return _isInch = true;
            if (PackageWords.Isolated.Contains(piece))
                return _isIsolated = true;
            if (PadWord().IsMatch(piece))
                return _hasPad = true;
            if (Count().Match(piece) is { Success: true } count)
            {
                _count = int.Parse(count.Groups["pins"].Value, CultureInfo.InvariantCulture);
                return true;
            }

            if (Mil().Match(piece) is { Success: true } mil)
            {
                _bare = int.Parse(mil.Groups["mil"].Value, CultureInfo.InvariantCulture) * MmInMil;
                return true;
            }

            if (Size().Match(piece) is { Success: true } size)
            {
                if (size.Groups["pad"].Success)
                    SetSize(ref _pad, size);
                else
                    SetSize(ref _body, size);
                if (size.Groups["third"].Success)
                    _height = Mm(size.Groups["third"]);
                return true;
            }

            if (Round().Match(piece) is { Success: true } round)
            {
                _diameter = Mm(round.Groups["diameter"]);
                if (round.Groups["height"].Success)
                    _height = Mm(round.Groups["height"]);
                return true;
            }

            if (Lettered().Match(piece) is not { Success: true } lettered)
                return false;
            var value = Mm(lettered.Groups["value"]);
            switch (lettered.Groups["letter"].Value)
            {
                case "P":
                    _pitch = value;
                    break;
                case "H":
                    _height = value;
                    break;
                case "L":
                    _length = value;
                    break;
                case "W":
                    _width = value;
                    break;
                case "" when lettered.Groups["unit"].Success:
                    _bare = value;
                    break;
                case "":
                    return false;
            }

            return true;
        }

        private void SetSize(ref PackageSize? size, Match match)
        {
            if (Mm(match.Groups["first"]) is { } first && Mm(match.Groups["second"]) is { } second)
                size = new PackageSize(first, second);
        }

        private double? Mm(Group group)
        {
            if (group.ValueSpan.Contains(','))
                Warn("decimal comma");
            var value = double.Parse(group.Value.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
            if (value is > 0 and <= LargestMm)
                return value;
            Warn($"{group.Value} mm is no size of a package");
            return null;
        }

        private static double Tenths(Group digits) => int.Parse(digits.Value, CultureInfo.InvariantCulture) / 10.0;

        private void OddBlanks()
        {
            if (IsOdd(_text[0]))
                Warn($"leading U+{(int)_text[0]:X4} removed");
            if (IsOdd(_text[^1]))
                Warn($"trailing U+{(int)_text[^1]:X4} removed");

            static bool IsOdd(char character) => character is not (' ' or '\t' or '\r' or '\n') && (char.IsWhiteSpace(character) || char.IsControl(character) || char.GetUnicodeCategory(character) is UnicodeCategory.Format);
        }

        private void PrefixDropped()
        {
            _isLibraryName = true;
            Warn("library prefix dropped");
        }

        private void Warn(string warning)
        {
            if (!_warnings.Contains(warning))
                _warnings.Add(warning);
        }

        private sealed record Name(PackageOutline Outline, string Spelling, bool IsFromTable = false);

        private sealed record ChipCode(string Digits, CodeSystem System, bool IsZeroLost = false)
        {
            public bool Fits(PackageOutline chip) => (System is not CodeSystem.Metric && chip.Name == Digits) || (System is not CodeSystem.Inch && chip.Metric == Digits);
        }
    }

    private static string Fold(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var character in WellFormedText.Of(text).Normalize(NormalizationForm.FormKC).ToUpperInvariant())
        {
            var category = char.GetUnicodeCategory(character);
            if (char.IsWhiteSpace(character) || category is UnicodeCategory.Control)
                folded.Append(' ');
            else if (category is UnicodeCategory.DashPunctuation || character == '\u2212')
                folded.Append('-');
            else if (category is not UnicodeCategory.Format)
                folded.Append(character switch { '×' or '✕' or '*' => 'X', '⌀' or '∅' or 'Φ' => 'Ø', '\u039C' => 'U', '=' => ' ', _ => character });
        }

        var spaced = BetweenScripts().Replace(folded.ToString(), " ");
        spaced = BlankInSize().Replace(spaced, "X");
        spaced = BlankBeforeUnit().Replace(spaced, "");
        spaced = PitchAfter().Replace(spaced, "P${value}MM");
        return PitchBefore().Replace(spaced, "P");
    }

    private const RegexOptions Plain = RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture;

    private const string Value = "[0-9]{1,3}(?:[.,][0-9]{1,4})?";

    [GeneratedRegex(@"[ _/()\[\];+、]+|,(?![0-9])|(?<![0-9]),", Plain)]
    private static partial Regex Separators();

    [GeneratedRegex(@"(?<=[A-Z0-9])(?=[\u3040-\u9FFF])|(?<=[\u3040-\u9FFF])(?=[A-Z0-9])", Plain)]
    private static partial Regex BetweenScripts();

    [GeneratedRegex("(?<=[0-9]) *(?:MM)? *X *(?=[0-9])", Plain)]
    private static partial Regex BlankInSize();

    [GeneratedRegex("(?<=[0-9]) +(?=(?:MM|MIL)(?![A-Z]))|(?<=Ø) +", Plain)]
    private static partial Regex BlankBeforeUnit();

    [GeneratedRegex($"(?<![A-Z0-9.,])(?<value>{Value})(?:MM)?[ -]?(?:PITCH|RASTER)(?![A-Z])", Plain)]
    private static partial Regex PitchAfter();

    [GeneratedRegex("(?<![A-Z])(?:PITCH|RASTER)[ -]?(?=[0-9])", Plain)]
    private static partial Regex PitchBefore();

    [GeneratedRegex("(?<=[0-9])MM(?![A-Z])", Plain)]
    private static partial Regex UnitAfterDigit();

    [GeneratedRegex($"(?<![0-9.,])(?<first>{Value})X(?<second>{Value})(?:MM)?$", Plain)]
    private static partial Regex SizeInName();

    [GeneratedRegex($"^E(?<pitch>{Value})-(?<diameter>{Value})$", Plain)]
    private static partial Regex Can();

    [GeneratedRegex("^C(?<pitch>0[0-9]{2}|[1-4][0-9]{2})-(?<first>0[1-9][0-9]|[1-9][0-9]{2})X(?<second>0[1-9][0-9]|[1-9][0-9]{2})$", Plain)]
    private static partial Regex Film();

    [GeneratedRegex("^(?<word>[A-Z]{2,8})(?:-?(?<pins>[0-9]{1,4})(?:[LN]|(?<wide>W))?)?(?<pad>-?[0-9]?EP)?$", Plain)]
    private static partial Regex Shape();

    [GeneratedRegex("^(?<pins>[0-9]{1,4})-?(?<word>[A-Z]{2,8})$", Plain)]
    private static partial Regex ShapeReversed();

    [GeneratedRegex("^SOIC-[0-9]+(?<wide>W)?(?:-EP)?$", Plain)]
    private static partial Regex SmallOutline();

    [GeneratedRegex("^(?<name>(?:TO|SOT)-?[0-9]{2,3}[A-Z]{0,2})-(?<pins>[2-9])L?$", Plain)]
    private static partial Regex NumberedWithCount();

    [GeneratedRegex("^(?<before>[A-Z]{1,8})?-?(?<code>[0-9]{3,5})(?:-?(?:(?<metric>M|METRIC)|(?<inch>INCH|IMPERIAL)))?(?:-(?<after>[A-Z]{1,8}))?$", Plain)]
    private static partial Regex CodeOfChip();

    [GeneratedRegex("^(?:RES|CAP|IND|LED|DIO|FUS|BEA)C(?<code>[0-9]{4})X(?<height>[0-9]{2,3})[LMN]?$", Plain)]
    private static partial Regex LandPattern();

    [GeneratedRegex("^[A-Z]{1,2}[0-9]", Plain)]
    private static partial Regex LetterAndDigit();

    [GeneratedRegex("^(?:[0-9]?EP|EXP|EPAD|EXPOSED|EXPOSEDPAD|PAD)$", Plain)]
    private static partial Regex PadWord();

    [GeneratedRegex("^(?<pins>[1-9][0-9]{0,2})-?(?:PINS?|P|LEADS?|LD|POLIG)$", Plain)]
    private static partial Regex Count();

    [GeneratedRegex("^(?<mil>[1-9][0-9]{2})MIL$", Plain)]
    private static partial Regex Mil();

    [GeneratedRegex($"^(?<pad>EP)?(?<first>{Value})X(?<second>{Value})(?:X(?<third>{Value}))?(?:MM)?$", Plain)]
    private static partial Regex Size();

    [GeneratedRegex($"^(?:BD|D|Ø)(?<diameter>{Value})(?:MM)?(?:X[HL]?(?<height>{Value})(?:MM)?)?$", Plain)]
    private static partial Regex Round();

    [GeneratedRegex($"^(?<letter>LS|P|H|L|W|T|)(?:ITCH)?(?<value>{Value})(?<unit>MM)?$", Plain)]
    private static partial Regex Lettered();
}
