namespace Catalogue.Domain.Families;

/// <summary>What kind of name of a family it is.</summary>
public enum FamilyNameKind
{
    /// <summary>The base number.</summary>
    BaseNumber,

    /// <summary>A number for ordering: base number with packing, finish or grade.</summary>
    OrderingVariant,

    /// <summary>A number it had before, or another spelling.</summary>
    OtherNumber,

    /// <summary>A short code printed where the number has no room. Several makers may use one code for different parts.</summary>
    TopMark,
}
