using System.Security.Claims;
using Catalogue.Data.Accounts;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace Catalogue.Web.Accounts;

/// <summary>Puts the display name into the sign-in, so that no page has to ask the database who is there.</summary>
/// <param name="accounts">The accounts.</param>
/// <param name="roles">The roles.</param>
/// <param name="options">The account library's options.</param>
internal sealed class AccountClaims(UserManager<Account> accounts, RoleManager<IdentityRole<Guid>> roles, IOptions<IdentityOptions> options)
    : UserClaimsPrincipalFactory<Account, IdentityRole<Guid>>(accounts, roles, options)
{
    /// <summary>The claim of the display name.</summary>
    public const string DisplayName = "display_name";

    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(Account user)
    {
        var identity = await base.GenerateClaimsAsync(user);
        identity.AddClaim(new Claim(DisplayName, user.DisplayName));
        return identity;
    }
}
