using System.Security.Claims;
using Catalogue.Data.Teardowns;
using Microsoft.AspNetCore.Components.Authorization;

namespace Catalogue.Lab.Accounts;

/// <summary>The person who works in this circuit.</summary>
/// <param name="authentication">Knows who is signed in; asked each time, because it may change while the circuit lives.</param>
public sealed class CurrentEditor(AuthenticationStateProvider authentication)
{
    /// <summary>The claim that holds the name to show.</summary>
    public const string DisplayNameClaim = "display_name";

    /// <summary>The name that changes are recorded under.</summary>
    /// <exception cref="UnauthorizedAccessException">Nobody is signed in any more.</exception>
    public async Task<Editor> GetAsync() => new(NameOf((await authentication.GetAuthenticationStateAsync()).User));

    /// <summary>True when that person may publish now.</summary>
    public async Task<bool> MayPublishAsync() => LabAccess.MayPublish((await authentication.GetAuthenticationStateAsync()).User);

    private static string NameOf(ClaimsPrincipal user) =>
        user.Identity is { IsAuthenticated: true } identity
            ? user.FindFirst(DisplayNameClaim)?.Value is { Length: > 0 } shown ? shown : identity.Name ?? throw new UnauthorizedAccessException("The account has no name.")
            : throw new UnauthorizedAccessException("Nobody is signed in.");
}
