using System.Globalization;
using System.Text.RegularExpressions;
using Catalogue.Domain.Codes;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Components;

/// <summary>The value of a part as a component list gives it, with all that stood beside it.</summary>
/// <remarks>
/// A list holds values, not markings: a bare <c>470</c> beside a resistor is 470 Ω and is remarked upon, while a bare <c>104</c> beside a capacitor
/// might be either and is asked. Where the value cell names none, the free description is read, numbers with units only, and said so.
/// </remarks>
/// <param name="Value">The value with its tolerance; null where there is none or where it has to be asked.</param>
/// <param name="Extras">What stood beside it, its tolerance first, then quantities and words in written order, those of the description last.</param>
/// <param name="Warnings">What a person should look at, as whole remarks.</param>
/// <param name="Alternatives">The readings to ask about; empty where nothing is to be asked.</param>
/// <param name="IsFromDescription">True where the value itself was taken from the free description.</param>
public sealed partial record ComponentValue(
    Quantity? Value,
    IReadOnlyList<ValueExtra> Extras,
    IReadOnlyList<string> Warnings,
    IReadOnlyList<QuantityAlternative> Alternatives,
    bool IsFromDescription)
{
    private static readonly string[] Packages = ["01005", "0201", "0402", "0603", "0805", "1206", "1210", "1806", "1808", "1812", "2010", "2220", "2512"];

    /// <summary>Reads the value of a part.</summary>
    /// <param name="text">The value cell as written; null or empty where the list has none.</param>
    /// <param name="kind">What kind of part it is, see <see cref="PartKindOf"/>.</param>
    /// <param name="description">The free description beside it, if any.</param>
    public static ComponentValue Read(string? text, PartKind kind, string? description = null)
    {
        var reader = new Reader(kind);
        reader.Cell(text);
        reader.Description(description);
        return reader.Result();
    }

    private sealed class Reader(PartKind kind)
    {
        private readonly List<ValueExtra> _extras = [];
        private readonly List<string> _warnings = [];
        private IReadOnlyList<QuantityAlternative> _alternatives = [];
        private Quantity? _value;
        private bool _isFromDescription;

        // A fuse has ratings and no value; its designator does not choose between them.
        private Unit? MainUnit => kind is PartKind.Fuse ? null : kind.ValueUnit();

        public ComponentValue Result() => new(_value, _extras, _warnings, _alternatives, _isFromDescription);

        public void Cell(string? text)
        {
            if (string.IsNullOrWhiteSpace(text) || text.Length > QuantityParser.MaxLength || BareNumber(text))
                return;
            switch (QuantityParser.Read(text, kind))
            {
                case QuantityReading.Read read:
                    Take(text, read.Quantities, read.Unread, isFromDescription: false);
                    if (read.Alternatives.Count > 1 && kind is PartKind.Capacitor)
                        _warnings.Add($"may also be {read.Alternatives[1].Text} ({read.Alternatives[1].Why})");
                    break;
                case QuantityReading.Ambiguous ambiguous:
                    _alternatives = ambiguous.Alternatives;
                    _warnings.Add($"{string.Join(" or ", ambiguous.Alternatives.Select(alternative => alternative.Text))}: kept as written, to be asked");
                    Words(ambiguous.Unread, isFromDescription: false);
                    break;
                case QuantityReading.Refused refused when MainUnit is not null:
                    _warnings.Add(refused.Reason);
                    break;
            }
        }

        public void Description(string? text)
        {
            if (string.IsNullOrWhiteSpace(text) || text.Length > QuantityParser.MaxLength || QuantityParser.ReadProse(text, kind) is not QuantityReading.Read read)
                return;
            var hadValue = _value is not null || _alternatives.Count > 0;
            Take(text, read.Quantities, read.Unread, isFromDescription: true);
            if (!hadValue && _value is not null)
            {
                _isFromDescription = true;
                _warnings.RemoveAll(warning => warning.Contains("holds no quantity", StringComparison.Ordinal));
                _warnings.Add("value taken from the description");
            }
        }

        // 470 beside R is 470 Ω; 104 beside C is asked; 103 beside R, which nobody makes, too.
        private bool BareNumber(string text)
        {
            var match = BareDigits().Match(text);
            if (!match.Success || kind is not (PartKind.Resistor or PartKind.Thermistor or PartKind.Capacitor or PartKind.Inductor))
                return false;
            var digits = match.Groups["digits"].Value;
            var number = int.Parse(digits, CultureInfo.InvariantCulture);
            var unit = kind.ValueUnit()!.Value;
            if (unit is Unit.Ohm && (digits.Length < 3 || number == 0 || IsPreferred(number)))
            {
                _value = Quantity.Exactly(number, unit);
                _warnings.Add("no unit, taken from the reference letter");
                if (match.Groups["rest"].Value is { Length: > 0 } rest && QuantityParser.Read($"{digits} ohm {rest}", kind) is QuantityReading.Read beside)
                {
                    _value = null;
                    Take($"{digits} ohm {rest}", beside.Quantities, beside.Unread, isFromDescription: false);
                }

                return true;
            }

            var readings = PartCodes.Decode(digits, kind).ToList();
            if (readings.Count == 0)
                return false;
            var shift = unit switch { Unit.Farad => -12, Unit.Henry => -6, _ => 0 };
            if (!readings.Exists(reading => reading.Scheme is CodeScheme.Plain))
                readings.Add(CodeReading.Of(CodeScheme.Plain, new DecimalNumber((ulong)number, shift), unit, Certainty.Low, digits));
            _alternatives =
            [
                .. readings.Select(reading => new QuantityAlternative(QuantityText.Exact(reading.Quantity), [new FoundQuantity(reading.Quantity, match.Groups["digits"].Index, digits.Length)], reading.Scheme.Word())),
            ];
            _warnings.Add($"{string.Join(" or ", _alternatives.Select(alternative => $"{alternative.Text} ({alternative.Why})"))}: kept as written, to be asked");
            return true;
        }

        private static bool IsPreferred(int number)
        {
            while (number >= 1000 && number % 10 == 0)
                number /= 10;
            return number < 1000 && (PreferredValues.IsE96(number) || (number % 10 == 0 && PreferredValues.IsE24(number / 10)));
        }

        private void Take(string text, IReadOnlyList<FoundQuantity> quantities, IReadOnlyList<string> unread, bool isFromDescription)
        {
            for (var i = 0; i < quantities.Count; i++)
            {
                var found = quantities[i];
                if (found.Quantity.Unit == MainUnit)
                {
                    // A second value in the cell is a rating; one in the description repeats the first.
                    if (_value is null && _alternatives.Count == 0)
                    {
                        _value = found.Quantity;
                        Remarks(text, found);
                        if (found.ToleranceLength > 0)
                            Add(new ValueExtra("tol", Tolerance(text.Substring(found.ToleranceStart, found.ToleranceLength)), IsFromDescription: isFromDescription));
                        continue;
                    }

                    if (isFromDescription)
                    {
                        if (found.ToleranceLength > 0)
                            Add(new ValueExtra("tol", Tolerance(text.Substring(found.ToleranceStart, found.ToleranceLength)), IsFromDescription: true));
                        continue;
                    }
                }

                var condition = i + 1 < quantities.Count && IsCondition(text, quantities[i + 1]) ? quantities[++i] : (FoundQuantity?)null;
                var name = Name(found.Quantity, quantities);
                Add(new ValueExtra(name, Print(found.Quantity), found.Quantity, condition is { } at ? $"{(kind is PartKind.Transistor && at.Quantity.Unit is Unit.Volt ? "vgs=" : "")}{Print(at.Quantity)}" : null, isFromDescription));
                if (found.Quantity.Value < 0)
                    Warn("signs kept");
                if (name == "isat_or_irms")
                    Warn("which current is meant is not said");
            }

            Words(unread, isFromDescription);
        }

        private static bool IsCondition(string text, FoundQuantity found) => found.Start > 0 && text[found.Start - 1] == '@';

        private void Remarks(string text, FoundQuantity found)
        {
            var written = text.Substring(found.Start, found.Length);
            if (DecimalComma().IsMatch(written))
                Warn("decimal comma read as decimal point");
            if (LargePrefix().Match(written) is { Success: true, Groups: [_, var letter, ..] })
                Warn(letter.Value switch { "U" => "upper-case U read as micro", "P" => "upper-case P read as pico, never peta", _ => "upper-case N read as nano" });
            if (kind is PartKind.Resistor && BareMilli().IsMatch(written))
                Warn("m is milli, M is mega: ask when the part is not a shunt");
            if (BareDecimal().IsMatch(written))
                Warn("no unit, taken from the reference letter");
        }

        private void Words(IReadOnlyList<string> words, bool isFromDescription)
        {
            foreach (var word in words)
            {
                if (Dielectric.Find(word) is { } dielectric)
                    Add(new ValueExtra("dielectric", dielectric.Code, IsFromDescription: isFromDescription));
                else if (kind is PartKind.Capacitor && SafetyCapacitorMark.ClassesIn(word) is { Count: > 0 } classes)
                    Add(new ValueExtra("class", string.Join('/', classes), IsFromDescription: isFromDescription));
                else if (Packages.Contains(word, StringComparer.Ordinal))
                    Add(new ValueExtra("package", word, IsFromDescription: isFromDescription));
                else if (Array().Match(word) is { Success: true } array && Packages.Contains(array.Groups["package"].Value, StringComparer.Ordinal))
                {
                    Add(new ValueExtra("elements", array.Groups["count"].Value, IsFromDescription: isFromDescription));
                    Add(new ValueExtra("package", array.Groups["package"].Value, IsFromDescription: isFromDescription));
                    Warn("array");
                }
                else if (kind is PartKind.Thermistor && Beta().Match(word) is { Success: true } beta)
                    Add(new ValueExtra("beta", beta.Groups["kelvin"].Value + " K", IsFromDescription: isFromDescription));
                else if (kind is PartKind.Capacitor && FoundTolerance().IsMatch(word))
                    Add(new ValueExtra("tol", Tolerance(word), IsFromDescription: isFromDescription));
                else if (!isFromDescription)
                    _warnings.Add($"“{word}” was not read");
            }
        }

        private void Add(ValueExtra extra)
        {
            if (!extra.IsFromDescription || !_extras.Exists(other => other.Name == extra.Name))
                _extras.Add(extra);
        }

        private void Warn(string warning)
        {
            if (!_warnings.Contains(warning))
                _warnings.Add(warning);
        }

        private string Name(Quantity quantity, IReadOnlyList<FoundQuantity> all) => (kind, quantity.Unit) switch
        {
            (PartKind.Transistor, Unit.Volt) => "vds",
            (PartKind.Transistor, Unit.Ampere) => "id",
            (PartKind.Transistor, Unit.Ohm) => "rds_on",
            (PartKind.Diode, Unit.Volt) => all.Any(found => found.Quantity.Unit is Unit.Watt) && all.All(found => found.Quantity.Unit is not Unit.Ampere) ? "vz" : "vr",
            (PartKind.Diode, Unit.Ampere) => "if",
            (PartKind.Diode, Unit.Second) => "trr",
            (PartKind.Inductor, Unit.Ampere) => all.Any(found => found.Quantity.Unit is Unit.Ohm) ? "isat_or_irms" : "current",
            (PartKind.Inductor, Unit.Ohm) => "dcr",
            (PartKind.Crystal, Unit.Farad) => "load",
            (_, Unit.Volt) => "voltage",
            (_, Unit.Ampere) => "current",
            (_, Unit.Watt) => "power",
            _ => quantity.Unit.Code(),
        };

        private static string Print(Quantity quantity) => QuantityText.Exact(quantity).Replace('\u00A0', ' ');

        private static string Tolerance(string written)
        {
            var bare = written.Replace("±", "", StringComparison.Ordinal).Replace("+/-", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal).Replace(',', '.');
            return bare.EndsWith('%') || bare.Contains('/', StringComparison.Ordinal) ? bare : NumberThenUnit().Replace(bare, "$1 $2");
        }
    }

    [GeneratedRegex(@"^\s*(?<digits>[0-9]{1,6})(?:(?:,\s|[\s(/;])+(?<rest>\S.*?))?\s*$", RegexOptions.CultureInvariant | RegexOptions.Singleline)]
    private static partial Regex BareDigits();

    [GeneratedRegex(@"^[0-9]+,[0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex DecimalComma();

    [GeneratedRegex(@"(?<=[0-9] ?)([UPN])[FH]\b", RegexOptions.CultureInvariant)]
    private static partial Regex LargePrefix();

    [GeneratedRegex(@"^[0-9.,]+ ?m$", RegexOptions.CultureInvariant)]
    private static partial Regex BareMilli();

    [GeneratedRegex(@"^[0-9]*[.,][0-9]+$", RegexOptions.CultureInvariant)]
    private static partial Regex BareDecimal();

    [GeneratedRegex(@"^(?<count>[1-9][0-9]?)[x×](?<package>[0-9]{4,5})$", RegexOptions.CultureInvariant)]
    private static partial Regex Array();

    [GeneratedRegex(@"^[Bβ][0-9/]*=(?<kelvin>[0-9]{4})K?$", RegexOptions.CultureInvariant)]
    private static partial Regex Beta();

    [GeneratedRegex(@"^(?:±|\+/-) ?[0-9.,]+ ?pF$", RegexOptions.CultureInvariant)]
    private static partial Regex FoundTolerance();

    [GeneratedRegex(@"^([0-9.]+)(\D+)$", RegexOptions.CultureInvariant)]
    private static partial Regex NumberThenUnit();
}
