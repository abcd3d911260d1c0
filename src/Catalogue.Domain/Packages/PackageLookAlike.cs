namespace Catalogue.Domain.Packages;

/// <summary>Two outlines that fit similar pads or look alike in a picture, and are not the same package.</summary>
/// <param name="One">Canonical name of the one.</param>
/// <param name="Other">Canonical name of the other.</param>
/// <param name="Difference">What tells them apart, in words.</param>
public sealed record PackageLookAlike(string One, string Other, string Difference);
