namespace Catalogue.Domain.Quantities;

/// <summary>A quantity and where it stands in its text.</summary>
/// <param name="Quantity">What was read.</param>
/// <param name="Start">Index of its first character.</param>
/// <param name="Length">How many characters it takes, its tolerance left out unless that stands directly behind it.</param>
/// <param name="ToleranceStart">Index of its tolerance as written; meaningless where the length is 0.</param>
/// <param name="ToleranceLength">Characters of its tolerance, 0 where none was written.</param>
public readonly record struct FoundQuantity(Quantity Quantity, int Start, int Length, int ToleranceStart = 0, int ToleranceLength = 0);
