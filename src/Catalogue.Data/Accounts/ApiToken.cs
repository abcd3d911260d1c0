namespace Catalogue.Data.Accounts;

/// <summary>A bearer token of a script. Only its hash is kept.</summary>
public sealed class ApiToken
{
    /// <summary>Its id.</summary>
    public required Guid Id { get; init; }

    /// <summary>What it was made for; printed beside what it did.</summary>
    public required string Name { get; init; }

    /// <summary>SHA-256 of the token, lower-case hex; unique.</summary>
    public required string TokenHash { get; init; }

    /// <summary>What it may do.</summary>
    public required TokenScope Scope { get; init; }

    /// <summary>When it was made.</summary>
    public required DateTimeOffset CreatedAt { get; init; }

    /// <summary>When it was taken back, or null.</summary>
    public DateTimeOffset? RevokedAt { get; set; }
}
