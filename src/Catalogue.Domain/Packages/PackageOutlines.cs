using System.Collections.Frozen;
using System.Globalization;
using System.Text;
using Catalogue.Domain.Codes;
using Catalogue.Domain.Families;
using Catalogue.Domain.Quantities;
using static Catalogue.Domain.Packages.PackageKind;
using static Catalogue.Domain.Packages.PackageTab;
using static Catalogue.Domain.Quantities.Confidence;

namespace Catalogue.Domain.Packages;

/// <summary>The table of package outlines, and which of them are easily mistaken for each other.</summary>
/// <remarks>House rule: a name that is not in it, and is no shape with a pin count, is kept as written and never becomes a row by itself.</remarks>
public static class PackageOutlines
{
    /// <summary>Longest text that is looked up; a longer one names nothing.</summary>
    public const int MaxNameLength = 200;

    /// <summary>All outlines, those of one kind together.</summary>
    public static IReadOnlyList<PackageOutline> All { get; } =
    [
        Row("TO-252", SmdPower, 2, Pin, 6.5, 6.1, "DPAK", "TO-252-2", "TO-252AA", "SC-63", High),
        Row("TO-263", SmdPower, 2, Pin, 10.2, 9.0, "D2PAK", "DDPAK|TO-263-2", "TO-263AB", "SC-83", High),
        Row("TO-263-7", SmdPower, 6, Pin, 10.2, 9.0, "D2PAK-7", "D2PAK7P", "TO-263CB", null, Medium),
        Row("TOLL", SmdPower, 8, Pad, 9.9, 11.7, "HSOF-8", "TO-LL|TO-leadless", "MO-299", null, Medium),
        Row("TO-251", ThroughHolePower, 3, Joined, 6.5, 6.1, "IPAK", "", "TO-251AA", "SC-64", High),
        Row("TO-262", ThroughHolePower, 3, Joined, 10.2, 9.0, "I2PAK", "", "TO-262AA", null, High),
        Row("TO-220", ThroughHolePower, 3, Joined, 10.2, 15, null, "", "TO-220AB", "SC-46", High),
        Row("TO-220-2", ThroughHolePower, 2, Joined, 10.2, 15, null, "", "TO-220AC", null, Medium, "the body of TO-220 on two leads, for diodes"),
        Row("TO-220F", ThroughHolePower, 3, None, 10.2, 15, null, "TO-220FP|ITO-220|TO-220 full pack|TO-220FULLPACK", null, "SC-67", Medium, "isolated tab"),
        Row("TO-247", ThroughHolePower, 3, None, 15.9, 20.8, null, "TO-247AD", "TO-247AC", null, High),
        Row("TO-247-4", ThroughHolePower, 4, None, 15.9, 20.8, null, "TO-247-4L", null, null, Medium, "separate pin for the driver's source"),
        Row("TO-3P", ThroughHolePower, 3, None, 15.6, 20, null, "TO-3PN", null, "SC-65", Medium),
        Row("TO-92", ThroughHole, 3, None, 4.6, 4.6, null, "", "TO-226AA", "SC-43", High),
        Row("SOT-23", SmdSmall, 3, None, 2.9, 1.3, null, "TO-236", "TO-236AB", null, High, "SC-59 is a slightly larger relative: kept apart"),
        Row("SC-59", SmdSmall, 3, None, 2.9, 1.6, "SOT-346", "SMT3", null, "SC-59", Medium),
        Row("SOT-23-5", SmdSmall, 5, None, 2.9, 1.6, null, "SOT-25|TSOT-23-5", "MO-178AA", "SC-74A", High, "TSOT is thinner on the same pads"),
        Row("SOT-23-6", SmdSmall, 6, None, 2.9, 1.6, null, "SOT-26|TSOT-23-6", "MO-178AB", "SC-74", High, "TSOT is thinner on the same pads"),
        Row("SOT-323", SmdSmall, 3, None, 2.0, 1.25, "SC-70", "SC-70-3|UMT3", null, "SC-70", High),
        Row("SOT-353", SmdSmall, 5, None, 2.0, 1.25, "SC-70-5", "", "MO-203AA", "SC-88A", High),
        Row("SOT-363", SmdSmall, 6, None, 2.0, 1.25, "SC-70-6", "", "MO-203AB", "SC-88", High),
        Row("SOT-143", SmdSmall, 4, None, 2.9, 1.3, null, "", "TO-253AA", null, Medium, "one lead is wider than the other three"),
        Row("SOT-343", SmdSmall, 4, None, 2.0, 1.25, null, "", null, null, Medium, "one lead is wider than the other three"),
        Row("SOT-523", SmdSmall, 3, None, 1.6, 0.8, null, "", null, null, Medium),
        Row("SOT-553", SmdSmall, 5, None, 1.6, 1.2, null, "", null, null, Medium),
        Row("SOT-563", SmdSmall, 6, None, 1.6, 1.2, null, "", null, null, Medium),
        Row("SOT-723", SmdSmall, 3, None, 1.2, 0.8, null, "", null, null, Medium),
        Row("SOT-89", SmdSmall, 3, Joined, 4.5, 2.5, null, "TO-243", "TO-243AA", "SC-62", High),
        Row("SOT-223", SmdSmall, 3, Joined, 6.5, 3.5, null, "TO-261|SOT-223-4", "TO-261AA", "SC-73", High, "some makers number the tab as a fourth pin"),
        Row("SOIC-8", GullWing, 8, None, 4.9, 3.9, null, "SO-8|SOP-8|8-SOIC|SOIC8N", "MS-012AA", null, High, "body 3.9 mm wide"),
        Row("SOIC-8-EP", GullWing, 8, Pad, 4.9, 3.9, null, "ESOP-8|HSOP-8|SO-8EP|SOP-8EP|SOP-8 exposed pad", "MS-012BA", null, Medium),
        Row("SOIC-8W", GullWing, 8, None, 5.3, 5.3, null, "SOP-8W|SO-8W|SO-8 wide|SOIC8-208mil", null, null, Medium, "the EIAJ body, 5.3 mm wide; bodies 7.5 mm wide are MS-013"),
        Row("SOIC-14", GullWing, 14, None, 8.7, 3.9, null, "SO-14|SOP-14", "MS-012AB", null, High, "body 3.9 mm wide"),
        Row("SOIC-16", GullWing, 16, None, 9.9, 3.9, null, "SO-16|SOP-16", "MS-012AC", null, High, "body 3.9 mm wide"),
        Row("SOIC-16W", GullWing, 16, None, 10.3, 7.5, null, "SO-16W|SOP-16W", "MS-013AA", null, High, "body 7.5 mm wide"),
        Row("MSOP-8", GullWing, 8, None, 3.0, 3.0, null, "VSSOP-8|uSOP-8|8-MSOP", "MO-187AA", null, High),
        Row("TSSOP-8", GullWing, 8, None, 3.0, 4.4, null, "", "MO-153AA", null, Medium),
        Row("TSSOP-16", GullWing, 16, None, 5.0, 4.4, null, "", "MO-153AB", null, High),
        Row("TSSOP-20", GullWing, 20, None, 6.5, 4.4, null, "", "MO-153AC", null, High),
        Row("SSOP-10", GullWing, 10, None, 4.9, 3.9, null, "SOP-10L", null, null, Low, "pitch 1.0 mm, body 3.9 mm wide; common on offline controllers, names vary"),
        Row("LQFP-48", GullWingQuad, 48, None, 7, 7, null, "", "MS-026BBC", null, High, "body 1.4 mm thick; TQFP is 1.0 mm"),
        Row("LQFP-64", GullWingQuad, 64, None, 10, 10, null, "", "MS-026BCD", null, High, "body 1.4 mm thick; TQFP is 1.0 mm"),
        Row("TQFP-48", GullWingQuad, 48, None, 7, 7, null, "", "MS-026ABC", null, Medium, "body 1.0 mm thick; LQFP is 1.4 mm"),
        Row("DIP-8", ThroughHole, 8, None, 9.3, 6.4, null, "PDIP-8", "MS-001BA", null, High),
        Row("SMD-4", Opto, 4, None, 4.6, 6.5, null, "DIP-4 SMD|SOP-4 opto", null, null, Low, "couplers vary in creepage: record the measured gap between the pins"),
        Row("DFN5X6", LeadlessPower, 8, None, 5, 6, "PDFN5x6", "DFN-8 5x6|PDFN-8 5x6|SON 5x6|PDFN56", "MO-240", null, Medium, "several trade names share these pads; clip-lead relatives are not the same"),
        Row("DFN3X3", LeadlessPower, 8, None, 3.3, 3.3, "PDFN3x3", "DFN3.3x3.3|PDFN3.3x3.3|PDFN33", "MO-240", null, Medium),
        Row("DFN8X8", LeadlessPower, 4, Pad, 8, 8, "PDFN8x8", "", null, null, Medium, "common for 650 V gallium nitride"),
        Row("QFN-16", Leadless, 16, Pad, 3, 3, null, "QFN16 3x3|VQFN-16", "MO-220", null, Medium),
        Row("QFN-24", Leadless, 24, Pad, 4, 4, null, "QFN24 4x4|VQFN-24", "MO-220", null, Medium),
        Row("QFN-32", Leadless, 32, Pad, 5, 5, null, "QFN32 5x5", "MO-220", null, Medium),
        Row("SMA", DiodeSmd, 2, None, 4.3, 2.6, "DO-214AC", "", "DO-214AC", null, High, "letters do not run in size order: AC is the smallest"),
        Row("SMB", DiodeSmd, 2, None, 4.3, 3.6, "DO-214AA", "", "DO-214AA", null, High, "letters do not run in size order: AC is the smallest"),
        Row("SMC", DiodeSmd, 2, None, 6.9, 5.9, "DO-214AB", "", "DO-214AB", null, High, "letters do not run in size order: AC is the smallest"),
        Row("SOD-123", DiodeSmd, 2, None, 2.7, 1.6, null, "", null, null, High),
        Row("SOD-123F", DiodeSmd, 2, None, 2.8, 1.8, "SOD-123FL", "", "DO-219AB", null, Medium, "flat leads"),
        Row("SOD-323", DiodeSmd, 2, None, 1.7, 1.25, "SC-76", "", null, "SC-76", High),
        Row("SOD-523", DiodeSmd, 2, None, 1.2, 0.8, "SC-79", "", null, "SC-79", High),
        Row("MiniMELF", DiodeSmd, 2, None, 3.5, 1.5, "SOD-80", "LL-34", "DO-213AA", null, High),
        Row("MELF", DiodeSmd, 2, None, 5.0, 2.5, null, "", "DO-213AB", null, High),
        Row("DO-41", DiodeAxial, 2, None, 4.1, 2.7, null, "", "DO-204AL", null, High),
        Row("DO-35", DiodeAxial, 2, None, 4.0, 2.0, null, "", "DO-204AH", null, High),
        Row("DO-15", DiodeAxial, 2, None, 6.0, 3.0, null, "", "DO-204AC", null, High),
        Row("DO-201AD", DiodeAxial, 2, None, 8.5, 5.0, "DO-27", "", "DO-201AD", null, Medium, "DO-27 and DO-201AD are near twins"),
        Row("MBS", Bridge, 4, None, 4.7, 3.8, null, "", "TO-269AA", null, Medium, "a trade name with loose sizes"),
        Row("ABS", Bridge, 4, None, 5.0, 4.4, null, "", null, null, Low, "a trade name with loose sizes"),
        Row("GBU", Bridge, 4, None, 22, 18, null, "", null, null, Medium, "a trade name with loose sizes"),
        Row("KBP", Bridge, 4, None, 14.5, 11, null, "", null, null, Medium, "a trade name with loose sizes"),
        Row("GBJ", Bridge, 4, None, 30, 20, null, "KBJ", null, null, Medium, "flat, with a mounting hole; a trade name with loose sizes"),
        ChipRow("01005", "0402", 0.4, 0.2, High),
        ChipRow("0201", "0603", 0.6, 0.3, High),
        ChipRow("0402", "1005", 1.0, 0.5, High),
        ChipRow("0603", "1608", 1.6, 0.8, High),
        ChipRow("0805", "2012", 2.0, 1.25, High),
        ChipRow("1206", "3216", 3.2, 1.6, High),
        ChipRow("1210", "3225", 3.2, 2.5, High),
        ChipRow("1806", "4516", 4.5, 1.6, High),
        ChipRow("1808", "4520", 4.5, 2.0, Medium),
        ChipRow("1812", "4532", 4.5, 3.2, High),
        ChipRow("2010", "5025", 5.0, 2.5, High),
        ChipRow("2220", "5750", 5.7, 5.0, High),
        ChipRow("2410", "6125", 6.1, 2.5, Medium),
        ChipRow("2512", "6332", 6.3, 3.2, High),
        .. TantalumCase.All.Select(CaseRow),
        Row("radial", Wired, 2, None, null, null, null, "radial leaded", null, null, Medium, "both wires on one side"),
        Row("axial", Wired, 2, None, null, null, null, "axial leaded", null, null, Medium, "a wire at each end"),
        Row("disc", Wired, 2, None, null, null, null, "disk", null, null, Medium),
        Row("box", Wired, 2, None, null, null, null, "rect", null, null, Medium, "film capacitors"),
        Row("snap-in", Wired, 2, None, null, null, null, "snapin", null, null, Medium, "large electrolytic capacitors; some have dummy pins"),
        Row("SMD can", SmdCan, 2, None, null, null, null, "elec|SMD electrolytic", null, null, Medium, "electrolytic capacitors on a plastic foot"),
    ];

    /// <summary>Outlines that fit similar pads or look alike in a picture without being the same; none twice.</summary>
    public static IReadOnlyList<PackageLookAlike> LookAlikes { get; } =
    [
        new("SOT-23", "SC-59", "SC-59 is slightly larger"),
        new("SOT-23", "SOT-323", "SOT-323 is two thirds of its size"),
        new("SC-59", "SOT-323", "SOT-323 is two thirds of its size"),
        new("SOT-23", "SOT-523", "SOT-523 is about half its size"),
        new("SOT-23-5", "SOT-353", "SOT-353 is two thirds of its size"),
        new("SOT-23-6", "SOT-363", "SOT-363 is two thirds of its size"),
        new("SOT-353", "SOT-553", "SOT-553 is smaller, with flat leads"),
        new("SOT-363", "SOT-563", "SOT-563 is smaller, with flat leads"),
        new("SOT-143", "SOT-343", "SOT-343 is two thirds of its size"),
        new("SOT-89", "SOT-223", "SOT-223 is larger, and its tab comes out at the far side"),
        new("TO-252", "TO-251", "the same body; TO-251 has its leads straight down"),
        new("TO-252", "TO-263", "TO-263 is half as large again"),
        new("TO-263", "TO-262", "the same body; TO-262 has its leads straight down"),
        new("TO-263", "TO-263-7", "the same body; TO-263-7 has more leads"),
        new("TO-220", "TO-262", "TO-262 has no hole in its tab"),
        new("TO-220", "TO-220F", "the tab of TO-220F is isolated"),
        new("TO-220", "TO-220-2", "TO-220-2 has two leads"),
        new("TO-247", "TO-3P", "nearly the same size; the hole and the back differ"),
        new("TO-247", "TO-247-4", "TO-247-4 has a fourth lead for the driver's source"),
        new("SOIC-8", "SOIC-8-EP", "an exposed pad below"),
        new("SOIC-8", "SOIC-8W", "SOIC-8W has a body 5.3 mm wide"),
        new("SOIC-16", "SOIC-16W", "SOIC-16W has a body 7.5 mm wide"),
        new("SOIC-8", "DFN5X6", "DFN5X6 fits similar pads and has no gull-wing leads"),
        new("SOIC-8-EP", "DFN5X6", "DFN5X6 fits similar pads and has no gull-wing leads"),
        new("MSOP-8", "TSSOP-8", "the same pitch; TSSOP-8 is wider"),
        new("LQFP-48", "TQFP-48", "the same plan; LQFP is 1.4 mm thick, TQFP 1.0 mm"),
        new("SMA", "SMB", "the same length; SMB is wider"),
        new("SMB", "SMC", "SMC is larger; the letters of DO-214 do not run in size order"),
        new("SMA", "SOD-123F", "SOD-123F is smaller, with flat leads"),
        new("SOD-123", "SOD-123F", "SOD-123F has flat leads"),
        new("SOD-323", "SOD-523", "SOD-523 is smaller"),
        new("SOD-123", "SOD-323", "SOD-323 is smaller"),
        new("MiniMELF", "MELF", "MELF is larger"),
        new("DO-41", "DO-15", "DO-15 is longer and thicker"),
        new("DO-41", "DO-35", "DO-35 is thinner, mostly of glass"),
        new("DO-15", "DO-201AD", "DO-201AD is larger"),
        new("MBS", "ABS", "bodies of loose sizes; ABS is larger"),
        new("GBU", "KBP", "bodies of loose sizes; GBU is larger"),
        new("GBU", "GBJ", "bodies of loose sizes; GBJ is larger"),
        new("SMD-4", "DIP-4", "DIP-4 goes through the board; the gap between the pins differs"),
        new("0402", "01005", "the metric code of 01005 is 0402"),
        new("0603", "0201", "the metric code of 0201 is 0603"),
        new("1808", "1812", "1812 is wider"),
        new("1806", "1808", "1808 is wider"),
        new("EIA 7343-31", "EIA 7343-43", "the same plan; 7343-43 is higher"),
        new("1206", "EIA 3216-18", "the same plan; EIA 3216-18 is a moulded tantalum"),
    ];

    private static readonly FrozenDictionary<string, (PackageOutline Outline, string Name)> Index = Indexed();
    private static readonly FrozenDictionary<string, PackageOutline> Chips = All.Where(outline => outline.Kind is Chip).ToFrozenDictionary(outline => outline.Name, StringComparer.Ordinal);
    private static readonly FrozenSet<string> OpenCounts = Index
        .Where(entry => All.Any(other => other.Name != entry.Value.Outline.Name && Index.TryGetValue(entry.Key + Digits(other.Pins), out var counted) && counted.Outline.Name == other.Name))
        .Select(entry => entry.Key)
        .ToFrozenSet(StringComparer.Ordinal);

    /// <summary>The matching key of a name: compatibility-normalised, upper case, everything that is not A to Z or 0 to 9 removed.</summary>
    /// <param name="text">Any text.</param>
    /// <returns>Empty where no letter or digit is left, or where the text is longer than <see cref="MaxNameLength"/>.</returns>
    public static string Key(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > MaxNameLength)
            return "";
        var key = new StringBuilder(text.Length);
        // µSOP is uSOP; after normalisation and upper-casing the micro sign is a capital mu.
        foreach (var character in WellFormedText.Of(text).Normalize(NormalizationForm.FormKC).ToUpperInvariant())
        {
            if (char.IsAsciiLetterUpper(character) || char.IsAsciiDigit(character))
                key.Append(character);
            else if (character == '\u039C')
                key.Append('U');
        }

        return key.ToString();
    }

    /// <summary>The outline that has this name, in whatever spelling; null where none has. Size codes of chips are taken as inch codes, exactly as written.</summary>
    /// <param name="name">A name of the trade or of a standard, without sizes beside it.</param>
    public static PackageOutline? Find(string name) => Chips.GetValueOrDefault(name) ?? FindNamed(name)?.Outline;

    /// <summary>What the outline is easily mistaken for, in the order of <see cref="LookAlikes"/>; empty where nothing is known.</summary>
    public static IEnumerable<PackageLookAlike> MistakenFor(PackageOutline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return LookAlikes.Where(pair => pair.Holds(outline));
    }

    /// <summary>The outline of a name and the spelling under which it stands in the table; never a chip.</summary>
    internal static (PackageOutline Outline, string Name)? FindNamed(string name) =>
        Key(name) is { Length: > 0 } key && Index.TryGetValue(key, out var entry) ? entry : null;

    /// <summary>True where the table holds the same name with another pin count, so that the bare name leaves the count open: SOT-23 beside SOT-23-5.</summary>
    internal static bool LeavesCountOpen(string name) => OpenCounts.Contains(Key(name));

    private static PackageOutline Row(
        string name,
        PackageKind kind,
        int leads,
        PackageTab tab,
        double? lengthMm,
        double? widthMm,
        string? alsoCalled,
        string otherNames,
        string? jedec,
        string? eiaj,
        Confidence confidence,
        string? note = null) =>
        new(name, kind, leads, tab, lengthMm is { } length && widthMm is { } width ? new PackageSize(length, width) : null, alsoCalled, otherNames.Split('|', StringSplitOptions.RemoveEmptyEntries), jedec, eiaj, null, confidence, note);

    private static PackageOutline ChipRow(string inch, string metric, double lengthMm, double widthMm, Confidence confidence) =>
        new(inch, Chip, 2, None, new PackageSize(lengthMm, widthMm), null, [], null, null, metric, confidence, null);

    private static PackageOutline CaseRow(TantalumCase entry) => new(
        $"EIA {entry.MetricSize}",
        TantalumChip,
        2,
        None,
        new PackageSize(entry.LengthMm, entry.WidthMm),
        $"case {entry.Letter}",
        [entry.MetricSize, $"{entry.Letter} case", $"tantalum {entry.Letter}", $"case {entry.Letter} {entry.MetricSize}"],
        null,
        null,
        null,
        entry.Letter == 'E' ? Medium : High,
        string.Create(CultureInfo.InvariantCulture, $"at most {entry.MaxHeightMm} mm high"));

    // An outline's own name comes before what others call it; a standard's outline that several rows share names none of them.
    private static FrozenDictionary<string, (PackageOutline Outline, string Name)> Indexed()
    {
        var index = new Dictionary<string, (PackageOutline, string)>(StringComparer.Ordinal);
        var named = All.Where(outline => outline.Kind is not Chip).ToList();
        foreach (var outline in named)
            index.Add(Key(outline.Name), (outline, outline.Name));
        foreach (var outline in named.Where(outline => IsNumbered(outline.Name)))
            index.TryAdd(Key(outline.Name) + Digits(outline.Pins), (outline, $"{outline.Name}-{Digits(outline.Pins)}"));
        foreach (var (outline, name) in named.SelectMany(outline => outline.OtherNames.Append(outline.AlsoCalled).OfType<string>().Select(name => (outline, name))))
            index.TryAdd(Key(name), (outline, name));
        foreach (var shared in named.SelectMany(outline => new[] { outline.Jedec, outline.Eiaj }.OfType<string>().Distinct().Select(name => (outline, name))).GroupBy(entry => Key(entry.name)).Where(group => group.Count() == 1))
            index.TryAdd(shared.Key, shared.Single());
        return index.ToFrozenDictionary(StringComparer.Ordinal);
    }

    // TO-220 is also TO-220-3; in SOIC-8 and SOT-23-5 the count stands already.
    private static bool IsNumbered(string name) => Array.Exists(["TO-", "SOT-", "SOD-"], prefix => name.StartsWith(prefix, StringComparison.Ordinal)) && name.Count(character => character == '-') == 1;

    private static string Digits(int? count) => count?.ToString(CultureInfo.InvariantCulture) ?? "";
}
