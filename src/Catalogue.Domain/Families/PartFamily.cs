using Catalogue.Domain.Components;

namespace Catalogue.Domain.Families;

/// <summary>The normalised identity that many components point to. It never asserts that the silicon is the same.</summary>
public sealed class PartFamily
{
    /// <summary>Longest base number.</summary>
    public const int MaxNameLength = 120;

    /// <summary>Longest note.</summary>
    public const int MaxNoteLength = 4000;

    /// <summary>Its id.</summary>
    public required FamilyId Id { get; init; }

    /// <summary>The base number as first written.</summary>
    public required string Name { get; set; }

    /// <summary>The identity: two part numbers with the same key are one family; unique.</summary>
    public required string MatchKey { get; init; }

    /// <summary>Upper-case letters and digits only; for searching, never for identity.</summary>
    public required string SearchKey { get; init; }

    /// <summary>Its address; unique.</summary>
    public required string Slug { get; init; }

    /// <summary>Its function class, or null where not decided.</summary>
    public FunctionClass? FunctionClass { get; set; }

    /// <summary>The datasheet's address, or null.</summary>
    public string? DatasheetUrl { get; set; }

    /// <summary>The outlines it comes in, by canonical name where one is known; empty where not said.</summary>
    public string[] Packages { get; set; } = [];

    /// <summary>What a reviewer should know about it, or null.</summary>
    public string? Note { get; set; }

    /// <summary>The family it was merged into, or null.</summary>
    public FamilyId? MergedIntoId { get; set; }

    /// <summary>Changes with every save of the row.</summary>
    public uint Version { get; init; }
}
