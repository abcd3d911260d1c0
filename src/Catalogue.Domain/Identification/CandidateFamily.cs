using Catalogue.Domain.Components;
using Catalogue.Domain.Families;

namespace Catalogue.Domain.Identification;

/// <summary>What is known of a family that a marking may belong to. Of what was seen, the unit in question and its kin are left out.</summary>
public sealed record CandidateFamily
{
    /// <summary>The family.</summary>
    public required FamilyId Id { get; init; }

    /// <summary>Its names that came near the marking, at least one.</summary>
    public required IReadOnlyList<FamilyName> Names { get; init; }

    /// <summary>Its function class, or null where not decided.</summary>
    public FunctionClass? FunctionClass { get; init; }

    /// <summary>The outlines it is known in, by canonical name; empty where not known.</summary>
    public IReadOnlyList<string> Packages { get; init; } = [];

    /// <summary>The keys (<see cref="Makers.MakerName.Key"/>) of its makers' names; empty where not known.</summary>
    public IReadOnlyList<string> Makers { get; init; } = [];

    /// <summary>In how many other designs it was seen.</summary>
    public int SeenInDesigns { get; init; }

    /// <summary>In how many other designs it was seen on one board with a family of the board in question.</summary>
    public int SeenBeside { get; init; }
}
