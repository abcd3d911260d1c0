namespace Catalogue.Domain.Packages;

/// <summary>Two readings of a package held against each other, as evidence for or against one part.</summary>
/// <remarks>
/// In this order: an unknown reading decides nothing, though two texts with the same key are the same. One outline with sizes or pitches that
/// differ is two packages. One outline is the same, or compatible where a name that comes in several sizes has its size on one side only. Two
/// outlines are compatible where one leaves its pin count open and the other has the same name with a count, or a size that does not speak
/// against it; else easily mistaken or different. The order of the two does not matter. House rule.
/// </remarks>
/// <param name="Kind">How they stand to each other.</param>
/// <param name="Why">The reason in words.</param>
public sealed record PackageAgreement(PackageAgreementKind Kind, string Why)
{
    // Rounding on drawings and in names: 3.9 for 3.91, 4.9 for 5.0.
    private const double NearlySame = 0.06;

    /// <summary>Holds two readings against each other.</summary>
    public static PackageAgreement Of(PackageReading one, PackageReading other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        if (one is not PackageReading.Recognised a || other is not PackageReading.Recognised b)
        {
            return one is PackageReading.Unknown && other is PackageReading.Unknown && PackageOutlines.Key(one.AsWritten) is { Length: > 0 } key && key == PackageOutlines.Key(other.AsWritten)
                ? new(PackageAgreementKind.Same, "the same words, though no package that is known")
                : new(PackageAgreementKind.NotKnown, "a package is not known");
        }

        if (a.Outline.Name == b.Outline.Name)
            return Sizes(a, b);
        // In the order of their names, so that the words too are the same both ways.
        var (first, second) = string.CompareOrdinal(a.Outline.Name, b.Outline.Name) < 0 ? (a, b) : (b, a);
        if (IsOpen(first, second) || IsOpen(second, first))
            return Sizes(first, second) is { Kind: PackageAgreementKind.Different } different ? different : new(PackageAgreementKind.Compatible, $"{first.Outline.Name} and {second.Outline.Name}: a pin count is not said");
        return PackageOutlines.MistakenFor(first.Outline).FirstOrDefault(pair => pair.Holds(second.Outline)) is { } pair
            ? new(PackageAgreementKind.EasilyMistaken, pair.Difference)
            : new(PackageAgreementKind.Different, $"{first.Outline.Name} is not {second.Outline.Name}");
    }

    /// <summary>The best that any reading of one side and any of the other say; not known where a side has none. An unknown name beside two known ones that differ makes nothing known.</summary>
    public static PackageAgreement Best(IReadOnlyCollection<PackageReading> one, IReadOnlyCollection<PackageReading> other) => Best(from a in one from b in other select Of(a, b));

    /// <summary>The best of them, the first among equals; not known where there is none.</summary>
    public static PackageAgreement Best(IEnumerable<PackageAgreement> agreements) =>
        agreements.MinBy(agreement => agreement.Kind) ?? new(PackageAgreementKind.NotKnown, "a package is not known");

    private static bool IsOpen(PackageReading.Recognised open, PackageReading.Recognised counted) =>
        (open.Pins is null || open.ArePinsAssumed) && counted.Outline.Name.StartsWith(open.Outline.Name + "-", StringComparison.Ordinal);

    private static PackageAgreement Sizes(PackageReading.Recognised a, PackageReading.Recognised b)
    {
        if (a.Body is { } body && b.Body is { } otherBody && !body.IsNear(otherBody, NearlySame))
            return new(PackageAgreementKind.Different, "the bodies differ in size");
        if (Differ(a.PitchMm, b.PitchMm))
            return new(PackageAgreementKind.Different, "the pitches differ");
        if (Differ(a.DiameterMm, b.DiameterMm))
            return new(PackageAgreementKind.Different, "the diameters differ");
        if (a.Outline.HasSeveralSizes && (IsOneSided(a.Body, b.Body) || IsOneSided(a.DiameterMm, b.DiameterMm) || IsOneSided(a.PitchMm, b.PitchMm)))
            return new(PackageAgreementKind.Compatible, $"{a.Outline.Name} comes in several sizes, and only one is said");
        return new(PackageAgreementKind.Same, a.Outline.Name);
    }

    private static bool IsOneSided<T>(T? a, T? b)
        where T : struct => a.HasValue != b.HasValue;

    private static bool Differ(double? a, double? b) => a is { } one && b is { } other && Math.Abs(one - other) > NearlySame * Math.Max(one, other);
}
