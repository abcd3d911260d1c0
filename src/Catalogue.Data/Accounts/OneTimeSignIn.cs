namespace Catalogue.Data.Accounts;

/// <summary>A link that signs a person in once, so that a first password is never sent anywhere.</summary>
public sealed class OneTimeSignIn
{
    /// <summary>How long a link works.</summary>
    public static readonly TimeSpan Lifetime = TimeSpan.FromHours(24);

    /// <summary>SHA-256 of the code in the link, lower-case hex. The code itself is not kept.</summary>
    public required string CodeHash { get; init; }

    /// <summary>Whose account.</summary>
    public required Guid AccountId { get; init; }

    /// <summary>Until when it works.</summary>
    public required DateTimeOffset ExpiresAt { get; init; }

    /// <summary>When it was used, or null.</summary>
    public DateTimeOffset? UsedAt { get; set; }
}
