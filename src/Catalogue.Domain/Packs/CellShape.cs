namespace Catalogue.Domain.Packs;

/// <summary>The shape of a cell.</summary>
public enum CellShape
{
    /// <summary>Round.</summary>
    Cylindrical,

    /// <summary>Prismatic; pouches count as such.</summary>
    Prismatic,
}
