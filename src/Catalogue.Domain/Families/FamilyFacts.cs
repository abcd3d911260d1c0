using Catalogue.Domain.Components;
using Catalogue.Domain.Packages;

namespace Catalogue.Domain.Families;

/// <summary>What is known of a family that is compared with others, as far as the asker may see it.</summary>
public sealed record FamilyFacts
{
    /// <summary>The family.</summary>
    public required FamilyId Id { get; init; }

    /// <summary>Its base number as first written.</summary>
    public required string Name { get; init; }

    /// <summary>Its other numbers (<see cref="FamilyAlias"/>); codes that are shared are not among them.</summary>
    public IReadOnlyList<string> OtherNames { get; init; } = [];

    /// <summary>Its function class, or null where neither decided nor recorded with its parts.</summary>
    public FunctionClass? FunctionClass { get; init; }

    /// <summary>The packages it is known in; empty where not known.</summary>
    public IReadOnlyList<PackageReading> Packages { get; init; } = [];

    /// <summary>Its ratings (<see cref="StatedRating.Choose"/>); empty where not known.</summary>
    public IReadOnlyList<StatedRating> Ratings { get; init; } = [];

    /// <summary>What its parts did.</summary>
    public IReadOnlyList<SeenRole> Roles { get; init; } = [];

    /// <summary>In how many designs it was seen.</summary>
    public int Designs { get; init; }
}
