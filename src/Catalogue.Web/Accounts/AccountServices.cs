using Catalogue.Data;
using Catalogue.Data.Accounts;
using Microsoft.AspNetCore.Identity;

namespace Catalogue.Web.Accounts;

/// <summary>Registers accounts.</summary>
internal static class AccountServices
{
    /// <summary>Adds what verbs and pages need of the account library, without sign-in.</summary>
    public static IdentityBuilder AddCatalogueAccounts(this IServiceCollection services)
    {
        services.AddSingleton<OpenAccount>();
        return services
            .AddIdentityCore<Account>(options =>
            {
                options.User.AllowedUserNameCharacters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-._";
                // Length is what counts; made-up rules about signs only lead to notes on monitors.
                options.Password.RequiredLength = MinPasswordLength;
                options.Password.RequireDigit = false;
                options.Password.RequireLowercase = false;
                options.Password.RequireUppercase = false;
                options.Password.RequireNonAlphanumeric = false;
                options.Password.RequiredUniqueChars = 5;
                options.Lockout.MaxFailedAccessAttempts = 8;
                options.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(10);
            })
            .AddRoles<IdentityRole<Guid>>()
            .AddEntityFrameworkStores<CatalogueContext>();
    }

    /// <summary>The shortest password.</summary>
    public const int MinPasswordLength = 12;
}
