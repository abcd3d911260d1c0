namespace Catalogue.Data.Queue;

/// <summary>A piece of long work, waiting in the database so that any node may take it.</summary>
public sealed class Job
{
    /// <summary>Its running number; the order of the queue.</summary>
    public long Id { get; init; }

    /// <summary>What is to be done, such as <c>make_renditions</c>.</summary>
    public required string Kind { get; init; }

    /// <summary>What it is to be done to, such as a SHA-256. One open job of a kind and subject exists.</summary>
    public required string Subject { get; init; }

    /// <summary>How often it was begun.</summary>
    public int Attempts { get; set; }

    /// <summary>Not to be begun before.</summary>
    public required DateTimeOffset NotBefore { get; set; }

    /// <summary>Until when a worker holds it, or null. A worker that dies loses it then.</summary>
    public DateTimeOffset? LeasedUntil { get; set; }

    /// <summary>How many parts of it are done; for work that can count them.</summary>
    public int PartsDone { get; set; }

    /// <summary>How many parts it has, or 0 when it cannot count them.</summary>
    public int PartsTotal { get; set; }

    /// <summary>When it was done, or null.</summary>
    public DateTimeOffset? DoneAt { get; set; }

    /// <summary>Why it was given up, or null.</summary>
    public string? Failure { get; set; }
}
