using Catalogue.Domain.Makers;

namespace Catalogue.Domain.Families;

/// <summary>A short code printed on a part that has no room for its number. Several families, of one maker or of several, may share it.</summary>
public sealed class TopMark
{
    /// <summary>Longest code.</summary>
    public const int MaxCodeLength = 20;

    /// <summary>Its id.</summary>
    public required TopMarkId Id { get; init; }

    /// <summary>The family.</summary>
    public required FamilyId FamilyId { get; set; }

    /// <summary>The code as printed.</summary>
    public required string Code { get; init; }

    /// <summary>Whose code it is, or null where not known.</summary>
    public MakerId? MakerId { get; init; }

    /// <summary>The package it stands on, as written, or null where not known.</summary>
    public string? Package { get; init; }

    /// <summary>Where it was found, such as a datasheet's page or a sample; or null.</summary>
    public string? Source { get; init; }
}
