using System.Security.Claims;
using System.Text.Encodings.Web;
using Catalogue.Data.Accounts;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace Catalogue.Web.Accounts;

/// <summary>Signs a script in by its bearer token.</summary>
/// <param name="options">The scheme's options.</param>
/// <param name="logger">Makes the scheme's log.</param>
/// <param name="encoder">Encodes addresses.</param>
/// <param name="tokens">The tokens.</param>
internal sealed class TokenAuthentication(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, Tokens tokens)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    /// <summary>The scheme's name.</summary>
    public const string SchemeName = "Bearer";

    /// <summary>The claim that says what a token may do.</summary>
    public const string ScopeClaim = "scope";

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var header = Request.Headers.Authorization.ToString();
        if (header.Length == 0)
            return AuthenticateResult.NoResult();
        if (!header.StartsWith("Bearer ", StringComparison.OrdinalIgnoreCase))
            return AuthenticateResult.Fail("The Authorization header names another scheme than Bearer.");
        if (await tokens.FindAsync(header["Bearer ".Length..].Trim(), Context.RequestAborted) is not { } token)
            return AuthenticateResult.Fail("The token is unknown or was taken back.");
        var identity = new ClaimsIdentity(
            [new Claim(ClaimTypes.Name, token.Name), new Claim(ScopeClaim, token.Scope is TokenScope.Write ? "write" : "read")], SchemeName);
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), SchemeName));
    }
}
