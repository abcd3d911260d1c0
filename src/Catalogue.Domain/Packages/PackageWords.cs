using System.Collections.Frozen;

namespace Catalogue.Domain.Packages;

/// <summary>Words beside the name of a package, upper case. House rule: words of the trade and of drawing programs, in the languages lists come in.</summary>
internal static class PackageWords
{
    /// <summary>What drawing programs put first by habit, before what is meant.</summary>
    public static readonly FrozenSet<string> UsualPrefixes = FrozenSet.ToFrozenSet(
        ["R", "C", "L", "D", "Q", "U", "F", "Y", "CP", "RV", "TH", "LED", "FUSE", "FB"]);

    /// <summary>What libraries put first beside those; said when it is dropped.</summary>
    public static readonly FrozenSet<string> OtherPrefixes = FrozenSet.ToFrozenSet(
        [
            "R-EU", "C-EU", "L-EU", "CPOL-EU", "R-US", "C-US", "L-US", "CPOL-US", "RES", "CAP", "IND", "DIODE", "SCHOTTKY", "ZENER", "TVS", "BEAD", "FERRITE", "NTC", "PTC", "IC", "XTAL",
            "TRANSISTOR", "MOSFET",
        ]);

    /// <summary>Words that say how a part sits or is soldered, not which package it is.</summary>
    public static readonly FrozenSet<string> Idle = FrozenSet.ToFrozenSet(
        [
            "SMD", "SMT", "CHIP", "THT", "LEADED", "HORIZONTAL", "VERTICAL", "STANDING", "LYING", "STEHEND", "LIEGEND", "BEDRAHTET", "HANDSOLDER", "HANDSOLDERING",
            "REFLOW", "WAVE", "PACKAGE", "PKG", "CASE", "FOOTPRINT", "GEHÄUSE", "BAUFORM", "PIN", "PINS", "BODY", "MM", "THERMALVIAS", "POLARIZED", "GLASS",
            "BL", "BR", "TL", "TR", "CW", "CCW", "贴片", "插件", "直插", "封装", "片式", "表贴", "チップ", "表面実装",
        ]);

    /// <summary>Words for an isolated tab.</summary>
    public static readonly FrozenSet<string> Isolated = FrozenSet.ToFrozenSet(["ISOLATED", "INSULATED", "ISOLIERT", "ISO"]);

    /// <summary>Outlines that are made with other counts of leads than their own.</summary>
    public static readonly FrozenSet<string> WithOtherCounts = FrozenSet.ToFrozenSet(
        ["TO-220", "TO-220F", "TO-247", "TO-251", "TO-252", "TO-262", "TO-263", "TO-92", "SOT-23", "SOT-89", "SOT-223"]);

    /// <summary>True for a word that libraries put first, or one that says nothing of the package.</summary>
    public static bool IsBeside(string word) => UsualPrefixes.Contains(word) || OtherPrefixes.Contains(word) || Idle.Contains(word);

    /// <summary>True for a maker's word that makes another package of the name beside it, such as PowerPAK before SO-8.</summary>
    public static bool MakesAnother(string word) => word.StartsWith("POWER", StringComparison.Ordinal) || word.EndsWith("PAK", StringComparison.Ordinal);
}
