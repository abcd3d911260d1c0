using Microsoft.AspNetCore.Identity;

namespace Catalogue.Data.Accounts;

/// <summary>A person who signs in.</summary>
public sealed class Account : IdentityUser<Guid>
{
    /// <summary>The name printed beside what they did.</summary>
    public required string DisplayName { get; set; }
}
