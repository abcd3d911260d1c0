using System.Globalization;
using System.Text.RegularExpressions;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Packs;

/// <summary>Reads the names of cells and batteries.</summary>
/// <remarks>
/// <para>
/// IEC 61960-3, 5.1: <c>N1 A1 A2 A3 N2 / N3 / N4 - N5</c> with series count, negative electrode, positive electrode, shape, diameter or thickness, width (prismatic
/// only), height, parallel count. Lengths in millimetre, rounded up; a leading <c>t</c> means tenths.
/// </para>
/// <para>
/// Trade codes, with or without the letters before them: five digits are a cylinder (diameter in mm, height in tenths), six a prismatic cell
/// (thickness in tenths, width and length in mm).
/// </para>
/// </remarks>
public static partial class CellNames
{
    private const string LettersPattern = "(?<series>[0-9]{1,3})?(?<negative>[ILil])(?<positive>[CFMNTVcfmntv])(?<shape>[RPrp])";
    private const int LongestName = 40;
    private const double Millimetre = 1e-3;
    private const double Tenth = 1e-4;
    private const double ThinnestUsual = 20 * Tenth;

    /// <summary>Reads a name.</summary>
    /// <param name="text">As printed; blanks around it and the case of its letters do not matter, but for the <c>t</c> of tenths.</param>
    public static Reckoning<CellName> Read(string? text)
    {
        var name = text?.Trim() ?? "";
        if (name.Length is 0 or > LongestName)
            return new Reckoning<CellName>.Refused("cell_name", name.Length == 0 ? "no name was given" : "the name is longer than any designation");
        if (Designation().Match(name) is { Success: true } standard)
            return Standard(standard);
        if (TradeCode().Match(name) is { Success: true } trade)
            return Trade(trade);
        return new Reckoning<CellName>.Refused(
            "cell_name", "the name is neither a designation such as INR19/66 or 2ICP20/34/70 nor a trade code of five or six digits such as 18650");
    }

    private static Reckoning<CellName> Standard(Match match)
    {
        var (negative, positive, shape) = Letters(match);
        var lengths = match.Groups["length"].Captures.Select(capture => Length(capture.Value)).ToArray();
        var needed = shape is CellShape.Cylindrical ? 2 : 3;
        if (lengths.Length != needed)
            return new Reckoning<CellName>.Refused(
                "cell_name", shape is CellShape.Cylindrical ? "a cylindrical cell has a diameter and a height" : "a prismatic cell has a thickness, a width and a height");
        var (series, parallel) = (Count(match, "series"), Count(match, "parallel"));
        if (lengths.Any(length => length == 0) || series == 0 || parallel == 0)
            return new Reckoning<CellName>.Refused("cell_name", "no count and no length of a designation is zero");
        var warnings = new List<string>();
        if (match.Groups["length"].Captures.Any(capture => capture.Value[0] == 't'))
            warnings.Add("The letter t is read as tenths of a millimetre.");
        if (positive is PositiveElectrode.Iron)
            warnings.Add("F for an iron-based positive electrode is later use.");
        return new Reckoning<CellName>.Done(new CellName(
            series,
            negative,
            positive,
            shape,
            lengths[0],
            needed == 3 ? lengths[1] : null,
            lengths[^1],
            null,
            parallel ?? 1,
            warnings.Count > 0 ? Confidence.Medium : Confidence.High,
            warnings));
    }

    private static Reckoning<CellName> Trade(Match match)
    {
        var digits = match.Groups["digits"].Value;
        var letters = match.Groups["negative"].Success ? Letters(match) : default((NegativeElectrode Negative, PositiveElectrode Positive, CellShape Shape)?);
        var shape = digits.Length == 5 ? CellShape.Cylindrical : CellShape.Prismatic;
        if (letters is { } said && said.Shape != shape)
            return new Reckoning<CellName>.Refused(
                "cell_name", "five digits name a cylindrical cell and six a prismatic one, but the letter before them says otherwise");
        var parts = shape is CellShape.Cylindrical
            ? (First: Digits(0, 2) * Millimetre, Width: default(double?), Height: Digits(2, 3) * Tenth)
            : (First: Digits(0, 2) * Tenth, Width: Digits(2, 2) * Millimetre, Height: Digits(4, 2) * Millimetre);
        if (parts.First == 0 || parts.Width == 0 || parts.Height == 0)
            return new Reckoning<CellName>.Refused("cell_name", "no length of a cell is zero");

        var warnings = new List<string>();
        double? otherHeight = null;
        if (shape is CellShape.Cylindrical && parts.Height < parts.First)
        {
            otherHeight = Digits(2, 3) * Millimetre;
            warnings.Add(
                $"By the rule the height is {Millimetres(parts.Height)}, less than the diameter; trade use of such a code means {Millimetres(otherHeight.Value)}. Check against a measured size.");
        }
        else if (shape is CellShape.Prismatic && parts.First < ThinnestUsual)
        {
            warnings.Add(
                $"By the rule the thickness is {Millimetres(parts.First)}; trade use of such a code may mean {Millimetres(Digits(0, 2) * Millimetre)}. Check against a measured size.");
        }

        return new Reckoning<CellName>.Done(new CellName(
            Count(match, "series"),
            letters?.Negative,
            letters?.Positive,
            shape,
            parts.First,
            parts.Width,
            parts.Height,
            otherHeight,
            1,
            warnings.Count > 0 ? Confidence.Low : shape is CellShape.Cylindrical ? Confidence.High : Confidence.Medium,
            warnings));

        int Digits(int start, int count) => int.Parse(digits.AsSpan(start, count), NumberStyles.None, CultureInfo.InvariantCulture);
    }

    private static (NegativeElectrode Negative, PositiveElectrode Positive, CellShape Shape) Letters(Match match) => (
        char.ToUpperInvariant(match.Groups["negative"].Value[0]) == 'I' ? NegativeElectrode.LithiumIon : NegativeElectrode.LithiumMetal,
        char.ToUpperInvariant(match.Groups["positive"].Value[0]) switch
        {
            'C' => PositiveElectrode.Cobalt,
            'F' => PositiveElectrode.Iron,
            'M' => PositiveElectrode.Manganese,
            'N' => PositiveElectrode.Nickel,
            'T' => PositiveElectrode.Titanium,
            _ => PositiveElectrode.Vanadium,
        },
        char.ToUpperInvariant(match.Groups["shape"].Value[0]) == 'R' ? CellShape.Cylindrical : CellShape.Prismatic);

    private static double Length(string text) => text[0] == 't'
        ? int.Parse(text.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture) * Tenth
        : int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture) * Millimetre;

    private static int? Count(Match match, string group) =>
        match.Groups[group] is { Success: true } found ? int.Parse(found.Value, NumberStyles.None, CultureInfo.InvariantCulture) : null;

    private static string Millimetres(double metres) => QuantityText.Number(metres / Millimetre) + "\u00A0mm";

    [GeneratedRegex(
        "^" + LettersPattern + "(?<length>t?[0-9]{1,4})(?:/(?<length>t?[0-9]{1,4})){1,2}(?:-(?<parallel>[0-9]{1,3}))?$", RegexOptions.CultureInvariant)]
    private static partial Regex Designation();

    [GeneratedRegex("^(?:" + LettersPattern + ")?(?<digits>[0-9]{5,6})$", RegexOptions.CultureInvariant)]
    private static partial Regex TradeCode();
}
