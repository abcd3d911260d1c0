using System.Text.Json;
using Catalogue.Domain.Imports;

namespace Catalogue.Data.Imports;

/// <summary>One import as long work: what was asked for, how far it is, what came of it.</summary>
public sealed class ImportRun
{
    /// <summary>Longest reason.</summary>
    public const int MaxReasonLength = 2000;

    /// <summary>Its id; the staged file has it as its name.</summary>
    public required ImportRunId Id { get; init; }

    /// <summary>What it brings in.</summary>
    public required ImportKind Kind { get; init; }

    /// <summary>The name of the file as it came, for people only, or null.</summary>
    public string? FileName { get; init; }

    /// <summary>What was asked for, by the names that the kind knows.</summary>
    public required IReadOnlyDictionary<string, string> Options { get; init; }

    /// <summary>Where it stands.</summary>
    public required ImportState State { get; init; }

    /// <summary>How many parts of it are done.</summary>
    public int PartsDone { get; init; }

    /// <summary>How many parts it has, or 0 while that is not known.</summary>
    public int PartsTotal { get; init; }

    /// <summary>Why it was refused or failed, or why it waits to be tried again; else null.</summary>
    public string? Reason { get; init; }

    /// <summary>What came of it, in the form of its kind, or null while it has not ended.</summary>
    public JsonElement? Report { get; init; }

    /// <summary>Who asked: an account's name or a token's.</summary>
    public required string Who { get; init; }

    /// <summary>The strongest role of the person who asked, as it was then; null for a script.</summary>
    public string? Role { get; init; }

    /// <summary>When it was asked for.</summary>
    public required DateTimeOffset AskedAt { get; init; }

    /// <summary>When it was last begun, or null.</summary>
    public DateTimeOffset? BegunAt { get; init; }

    /// <summary>When it ended, or null.</summary>
    public DateTimeOffset? EndedAt { get; init; }

    /// <summary>True once nothing more will happen.</summary>
    public bool HasEnded => State is ImportState.Done or ImportState.Refused or ImportState.Failed;

    /// <summary>The person or script, as changes name them.</summary>
    public Teardowns.Editor Editor => new(Who, IsPerson: Role is not null);
}
