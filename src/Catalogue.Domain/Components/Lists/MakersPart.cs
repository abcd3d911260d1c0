namespace Catalogue.Domain.Components.Lists;

/// <summary>A maker and its part number, as a list offers them beside the first choice. At least one of the two is given.</summary>
/// <param name="Maker">The maker as written, or null.</param>
/// <param name="PartNumber">The part number as written, or null.</param>
public sealed record MakersPart(string? Maker, string? PartNumber);
