namespace Catalogue.Domain.Makers;

/// <summary>Who makes a product or a part. A brand is a maker too.</summary>
public sealed class Maker
{
    /// <summary>Longest name.</summary>
    public const int MaxNameLength = 120;

    /// <summary>Its id.</summary>
    public required MakerId Id { get; init; }

    /// <summary>The name as first written.</summary>
    public required string Name { get; set; }

    /// <summary>What two spellings of one name share: <see cref="MakerName.Key"/>; unique.</summary>
    public required string NameKey { get; set; }

    /// <summary>Its address; unique.</summary>
    public required string Slug { get; init; }

    /// <summary>Changes with every save of the row.</summary>
    public uint Version { get; init; }
}
