using System.Collections.Frozen;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Packages;

/// <summary>A shape that is made with many pin counts and named by shape and count, such as QFN-20.</summary>
/// <param name="Name">The canonical word.</param>
/// <param name="Kind">What sort of body it is.</param>
/// <param name="LeastPins">The fewest pins.</param>
/// <param name="MostPins">The most pins.</param>
/// <param name="Step">Counts are multiples of this.</param>
/// <param name="Words">Words of the trade for the same shape; thin and very thin bodies among them.</param>
/// <param name="PadWords">Words for the same shape with an exposed pad.</param>
internal sealed record PackageShape(string Name, PackageKind Kind, int LeastPins, int MostPins, int Step, IReadOnlyList<string> Words, IReadOnlyList<string> PadWords)
{
    private static readonly PackageShape[] All =
    [
        new("SOIC", PackageKind.GullWing, 8, 32, 2, ["SO"], ["ESOIC", "HSOIC"]),
        new("SOP", PackageKind.GullWing, 4, 64, 2, [], ["ESOP", "HSOP"]),
        new("SSOP", PackageKind.GullWing, 8, 64, 2, [], ["ESSOP", "HSSOP"]),
        new("TSSOP", PackageKind.GullWing, 8, 80, 2, [], ["HTSSOP", "ETSSOP"]),
        new("MSOP", PackageKind.GullWing, 8, 16, 2, ["VSSOP", "USOP"], ["EMSOP", "HMSOP", "HVSSOP"]),
        new("QSOP", PackageKind.GullWing, 16, 28, 2, [], []),
        new("TSOP", PackageKind.GullWing, 20, 86, 2, [], []),
        new("QFN", PackageKind.Leadless, 6, 200, 1, ["VQFN", "WQFN", "UQFN", "TQFN", "XQFN", "HVQFN", "HWQFN", "MLF"], []),
        new("DFN", PackageKind.Leadless, 2, 32, 1, ["UDFN", "WDFN", "TDFN", "VDFN", "XDFN", "PDFN", "SON", "VSON", "WSON", "USON", "XSON"], []),
        new("LQFP", PackageKind.GullWingQuad, 32, 256, 4, [], ["HLQFP"]),
        new("TQFP", PackageKind.GullWingQuad, 32, 256, 4, [], ["HTQFP"]),
        new("QFP", PackageKind.GullWingQuad, 32, 304, 4, ["PQFP"], ["HQFP"]),
        new("PLCC", PackageKind.GullWingQuad, 2, 84, 2, [], []),
        new("BGA", PackageKind.GridArray, 4, 2500, 1, ["FBGA", "TFBGA", "UFBGA", "LFBGA", "VFBGA"], []),
        new("LGA", PackageKind.GridArray, 2, 2500, 1, [], []),
        new("WLCSP", PackageKind.GridArray, 2, 400, 1, ["CSP", "DSBGA"], []),
        new("DIP", PackageKind.ThroughHole, 4, 64, 2, ["PDIP", "DIL", "CDIP", "CERDIP"], []),
        new("SDIP", PackageKind.ThroughHole, 8, 64, 2, [], []),
        new("SIP", PackageKind.ThroughHole, 2, 32, 1, ["SIL"], []),
    ];

    private static readonly FrozenDictionary<string, (PackageShape Shape, bool HasPad)> ByWord = All
        .SelectMany(shape => shape.Words.Append(shape.Name).Select(word => (Word: word, Shape: shape, HasPad: false)).Concat(shape.PadWords.Select(word => (Word: word, Shape: shape, HasPad: true))))
        .ToFrozenDictionary(entry => entry.Word, entry => (entry.Shape, entry.HasPad), StringComparer.Ordinal);

    // SO alone is too short to be a name.
    private const int ShortestBareWord = 3;

    /// <summary>The outline of a shape with a count, or without one; null where the word names no shape or the shape is not made with that count.</summary>
    /// <param name="word">The word, upper case.</param>
    /// <param name="pins">The count, or null where not said.</param>
    /// <param name="isWide">True for the wide body of a small outline.</param>
    /// <param name="hasPad">True where an exposed pad is said; a leadless body has one anyway.</param>
    /// <returns>The row of the table where there is one, else an outline without synonyms.</returns>
    public static PackageOutline? Outline(string word, int? pins, bool isWide, bool hasPad)
    {
        if (!ByWord.TryGetValue(word, out var entry) || (isWide && entry.Shape.Name is not "SOIC"))
            return null;
        var (shape, isPadWord) = entry;
        if (pins is { } count ? count < shape.LeastPins || count > shape.MostPins || count % shape.Step != 0 : word.Length < ShortestBareWord)
            return null;
        var isPadded = hasPad || isPadWord;
        var name = pins is null ? shape.Name : FormattableString.Invariant($"{shape.Name}-{pins}{(isWide ? "W" : "")}{(isPadded && shape.Kind is (PackageKind.GullWing or PackageKind.GullWingQuad) ? "-EP" : "")}");
        return PackageOutlines.Find(name)
            ?? new PackageOutline(name, shape.Kind, pins, isPadded ? PackageTab.Pad : PackageTab.None, null, null, [], null, null, null, Confidence.Medium, null);
    }
}
