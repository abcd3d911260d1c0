namespace Catalogue.Domain.Makers;

/// <summary>Another name of a maker: an old one, another spelling, or a logo described in words.</summary>
public sealed class MakerAlias
{
    /// <summary>The maker.</summary>
    public required MakerId MakerId { get; init; }

    /// <summary>The other name as written.</summary>
    public required string Name { get; init; }

    /// <summary>Its key; unique over all aliases.</summary>
    public required string NameKey { get; init; }
}
