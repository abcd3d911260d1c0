namespace Catalogue.Domain.Packages;

/// <summary>Two outlines that fit similar pads or look alike in a picture, and are not the same package.</summary>
/// <param name="One">Canonical name of the one.</param>
/// <param name="Other">Canonical name of the other.</param>
/// <param name="Difference">What tells them apart, in words.</param>
public sealed record PackageLookAlike(string One, string Other, string Difference)
{
    /// <summary>True where the outline is one of the two.</summary>
    public bool Holds(PackageOutline outline) => One == outline.Name || Other == outline.Name;

    /// <summary>The name of the other of the two.</summary>
    public string Beside(PackageOutline outline) => One == outline.Name ? Other : One;
}
