using Catalogue.Data.Accounts;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Web.Accounts;

/// <summary>Opens accounts and hands out their first sign-in.</summary>
/// <param name="scopes">Makes a scope for each step; the account library keeps its state in one.</param>
/// <param name="signIns">One-time links.</param>
public sealed class OpenAccount(IServiceScopeFactory scopes, OneTimeSignIns signIns)
{
    private const string FirstName = "administrator";

    /// <summary>What came of it.</summary>
    public abstract record Outcome
    {
        private Outcome()
        {
        }

        /// <summary>The account stands, with a fresh one-time code.</summary>
        public sealed record Opened(string Name, string Role, string Code, bool IsNew) : Outcome;

        /// <summary>It could not be opened.</summary>
        public sealed record Refused(string Reason) : Outcome;
    }

    /// <summary>Sees to it that the three roles exist.</summary>
    public async Task PrepareRolesAsync(CancellationToken cancellationToken = default)
    {
        await using var scope = scopes.CreateAsyncScope();
        var roles = scope.ServiceProvider.GetRequiredService<RoleManager<IdentityRole<Guid>>>();
        foreach (var role in Roles.All)
        {
            cancellationToken.ThrowIfCancellationRequested();
            if (!await roles.RoleExistsAsync(role))
                await roles.CreateAsync(new IdentityRole<Guid>(role) { Id = Guid.CreateVersion7() });
        }
    }

    /// <summary>Opens an account or gives an existing one another role, and makes a one-time code for it.</summary>
    public async Task<Outcome> RunAsync(string name, string? displayName, string role, CancellationToken cancellationToken = default)
    {
        await PrepareRolesAsync(cancellationToken);
        await using var scope = scopes.CreateAsyncScope();
        var accounts = scope.ServiceProvider.GetRequiredService<UserManager<Account>>();
        var clean = (name ?? "").Trim();
        var account = await accounts.FindByNameAsync(clean);
        var isNew = account is null;
        if (account is null)
        {
            account = new Account { Id = Guid.CreateVersion7(), UserName = clean, DisplayName = string.IsNullOrWhiteSpace(displayName) ? clean : displayName.Trim() };
            var created = await accounts.CreateAsync(account);
            if (!created.Succeeded)
                return new Outcome.Refused(string.Join(" ", created.Errors.Select(error => error.Description)));
        }

        var others = (await accounts.GetRolesAsync(account)).Where(held => held != role).ToList();
        if (others.Count > 0)
            await accounts.RemoveFromRolesAsync(account, others);
        if (!await accounts.IsInRoleAsync(account, role))
            await accounts.AddToRoleAsync(account, role);
        // Open pages of the account notice the change by its stamp.
        await accounts.UpdateSecurityStampAsync(account);
        return new Outcome.Opened(clean, role, await signIns.CreateAsync(account.Id, cancellationToken), isNew);
    }

    /// <summary>A one-time code for the first administrator, or null once anybody has a password.</summary>
    public async Task<string?> FirstAdministratorAsync(CancellationToken cancellationToken = default)
    {
        await using (var scope = scopes.CreateAsyncScope())
        {
            var accounts = scope.ServiceProvider.GetRequiredService<UserManager<Account>>();
            if (await accounts.Users.AnyAsync(account => account.PasswordHash != null, cancellationToken))
                return null;
        }

        return await RunAsync(FirstName, "Administrator", Roles.Administrator, cancellationToken) is Outcome.Opened opened ? opened.Code : null;
    }
}
