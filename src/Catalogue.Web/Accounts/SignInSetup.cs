using Catalogue.Data.Accounts;
using Catalogue.Domain.Publishing;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;

namespace Catalogue.Web.Accounts;

/// <summary>How people (by cookie) and scripts (by token) are known.</summary>
internal static class SignInSetup
{
    // Picks the scheme by what the request brings.
    private const string Either = "cookie or token";

    public static void AddCatalogueSignIn(this IServiceCollection services)
    {
        services.AddCatalogueAccounts().AddSignInManager().AddDefaultTokenProviders().AddClaimsPrincipalFactory<AccountClaims>();
        services.AddHttpContextAccessor();
        services.AddAuthentication(options =>
            {
                options.DefaultScheme = Either;
                options.DefaultSignInScheme = IdentityConstants.ApplicationScheme;
            })
            .AddPolicyScheme(Either, null, options => options.ForwardDefaultSelector = context =>
                context.Request.Headers.Authorization.Count > 0 || context.Request.Path.StartsWithSegments("/api") ? TokenAuthentication.SchemeName : IdentityConstants.ApplicationScheme)
            .AddScheme<AuthenticationSchemeOptions, TokenAuthentication>(TokenAuthentication.SchemeName, null)
            .AddCookie(IdentityConstants.ApplicationScheme, options =>
            {
                options.Cookie.Name = "catalogue-sign-in";
                options.Cookie.HttpOnly = true;
                options.Cookie.SameSite = SameSiteMode.Lax;
                options.LoginPath = Addresses.SignIn;
                options.AccessDeniedPath = "/account/denied";
                options.ReturnUrlParameter = "then";
                options.ExpireTimeSpan = TimeSpan.FromDays(14);
                options.Events = new CookieAuthenticationEvents
                {
                    OnValidatePrincipal = SecurityStampValidator.ValidatePrincipalAsync,
                    // Relative, so that no host that somebody made up stands in it.
                    OnRedirectToLogin = context => RedirectHere(context),
                    OnRedirectToAccessDenied = context => RedirectHere(context),
                };
            });
        services.Configure<SecurityStampValidatorOptions>(options => options.ValidationInterval = TimeSpan.FromMinutes(2));
        services.AddAuthorization(Policies.Configure);
        services.AddCascadingAuthenticationState();
    }

    private static Task RedirectHere(RedirectContext<CookieAuthenticationOptions> context)
    {
        context.Response.Redirect(new Uri(context.RedirectUri).PathAndQuery);
        return Task.CompletedTask;
    }

    /// <summary>True for an address within this site, such as one the sign-in may return to.</summary>
    public static bool IsLocal(string? address) =>
        address is ['/', ..] && !address.StartsWith("//", StringComparison.Ordinal) && !address.StartsWith("/\\", StringComparison.Ordinal) && address.All(c => c is > ' ' and < (char)0x7F);

    /// <summary>Signs an account in with its roles and name.</summary>
    public static Task SignInAsync(this SignInManager<Account> manager, Account account) => manager.SignInAsync(account, isPersistent: true);
}
