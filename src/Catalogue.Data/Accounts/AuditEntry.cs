using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Accounts;

/// <summary>Who did what, when. Never changed.</summary>
public sealed class AuditEntry
{
    /// <summary>Its running number.</summary>
    public long Id { get; init; }

    /// <summary>When.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Who: an account's name or a token's.</summary>
    public required string Who { get; init; }

    /// <summary>What was done, such as <c>add board</c>.</summary>
    public required string Action { get; init; }

    /// <summary>The teardown it was done to, or null.</summary>
    public TeardownId? TeardownId { get; init; }

    /// <summary>The record it was done to, or null.</summary>
    public Guid? RecordId { get; init; }
}
