using Catalogue.Domain.Makers;

namespace Catalogue.Domain.Families;

/// <summary>A maker known for a family; several where the number is second-sourced.</summary>
public sealed class FamilyMaker
{
    /// <summary>The family.</summary>
    public required FamilyId FamilyId { get; init; }

    /// <summary>The maker.</summary>
    public required MakerId MakerId { get; init; }
}
