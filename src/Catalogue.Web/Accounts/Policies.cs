using System.Security.Claims;
using Catalogue.Data.Accounts;
using Catalogue.Data.Teardowns;
using Microsoft.AspNetCore.Authorization;

namespace Catalogue.Web.Accounts;

/// <summary>Who may do what. Whatever names no policy of its own needs a signed-in person.</summary>
internal static class Policies
{
    /// <summary>A script with a token that may write.</summary>
    public const string WriteToken = "write token";

    /// <summary>A script with any token.</summary>
    public const string AnyToken = "any token";

    /// <summary>A person of any role.</summary>
    public const string Staff = "staff";

    public static void Configure(AuthorizationOptions options)
    {
        options.AddPolicy(WriteToken, policy => policy.AddAuthenticationSchemes(TokenAuthentication.SchemeName).RequireAuthenticatedUser().RequireClaim(TokenAuthentication.ScopeClaim, "write"));
        options.AddPolicy(AnyToken, policy => policy.AddAuthenticationSchemes(TokenAuthentication.SchemeName).RequireAuthenticatedUser().RequireClaim(TokenAuthentication.ScopeClaim));
        options.AddPolicy(Staff, policy => policy.RequireRole([.. Roles.All]));
        options.FallbackPolicy = new AuthorizationPolicyBuilder().RequireAuthenticatedUser().RequireRole([.. Roles.All]).Build();
        options.DefaultPolicy = options.FallbackPolicy;
    }

    /// <summary>True for people and tokens that may see drafts.</summary>
    public static bool SeesDrafts(this ClaimsPrincipal user) =>
        user.HasClaim(claim => claim.Type == TokenAuthentication.ScopeClaim) || Roles.All.Any(user.IsInRole);

    /// <summary>The name that the audit writes down.</summary>
    public static Editor ToEditor(this ClaimsPrincipal user) =>
        new(user.FindFirstValue(AccountClaims.DisplayName) ?? user.Identity?.Name ?? throw new InvalidOperationException("Nobody is signed in."), IsPerson: !user.HasClaim(claim => claim.Type == TokenAuthentication.ScopeClaim));
}
