namespace Catalogue.Domain.Families;

/// <summary>How two families stand to each other.</summary>
public enum FamilyRelationKind
{
    /// <summary>One can take the other's place.</summary>
    SecondSource,

    /// <summary>Their names are easily taken for each other; they are different parts.</summary>
    LookAlike,

    /// <summary>They were compared and have nothing to do with each other.</summary>
    Unrelated,
}
