namespace Catalogue.Domain.UsbPd;

/// <summary>Where one supply can work: every voltage of its window, from no current up to <see cref="Limit"/>.</summary>
/// <param name="Position">The place of its object.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Limit">The upper edge: voltages rise, two points of one voltage are a step, points between are joined by straight lines. A fixed supply has one point.</param>
/// <param name="MayGiveLess">True for a power-limited supply whose limit is not known: the edge is then the most the word names, not what the source gives.</param>
public sealed record SupplyRegion(int Position, SupplyKind Kind, IReadOnlyList<EnvelopePoint> Limit, bool MayGiveLess);
