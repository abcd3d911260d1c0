namespace Catalogue.Domain.Quantities;

/// <summary>One way in which a text may be meant.</summary>
/// <param name="Text">The reading written so that only it is meant, such as <c>1000 mAh</c>.</param>
/// <param name="Quantities">Its quantities in written order, at least one.</param>
/// <param name="Why">How the text was read to come to it, such as <c>three-digit code, picofarads</c>; empty where the text says it all.</param>
public sealed record QuantityAlternative(string Text, IReadOnlyList<FoundQuantity> Quantities, string Why);
