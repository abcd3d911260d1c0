namespace Catalogue.Domain.Packages;

/// <summary>How two readings of a package stand to each other.</summary>
public enum PackageAgreementKind
{
    /// <summary>One package, as far as both say.</summary>
    Same,

    /// <summary>They may be one package: one of them says less, such as a shape without its pin count.</summary>
    Compatible,

    /// <summary>Two packages that people mistake for each other: it speaks against one part, weakly.</summary>
    EasilyMistaken,

    /// <summary>Two packages: it speaks against one part.</summary>
    Different,

    /// <summary>At least one of them is unknown: it speaks neither for nor against.</summary>
    NotKnown,
}
