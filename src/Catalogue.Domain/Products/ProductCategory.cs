namespace Catalogue.Domain.Products;

/// <summary>What kind of power product it is.</summary>
public enum ProductCategory
{
    /// <summary>A wall or desktop charger.</summary>
    Charger,

    /// <summary>A power bank.</summary>
    PowerBank,

    /// <summary>A portable power station.</summary>
    PowerStation,

    /// <summary>A power adapter.</summary>
    Adapter,

    /// <summary>An inverter.</summary>
    Inverter,

    /// <summary>Anything else.</summary>
    Other,
}
