using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Accounts;

/// <summary>Links that sign a person in once.</summary>
/// <param name="contexts">Makes the context of each step.</param>
/// <param name="clock">Tells the time.</param>
public sealed class OneTimeSignIns(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    /// <summary>Makes a code for an account; codes made for it earlier and not used stop working.</summary>
    public async Task<string> CreateAsync(Guid account, CancellationToken cancellationToken = default)
    {
        var code = Secrets.New();
        var now = clock.GetUtcNow();
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.OneTimeSignIns.Where(row => row.AccountId == account && row.UsedAt == null).ExecuteDeleteAsync(cancellationToken);
        context.OneTimeSignIns.Add(new OneTimeSignIn { CodeHash = Secrets.Hash(code), AccountId = account, ExpiresAt = now + OneTimeSignIn.Lifetime });
        await context.SaveChangesAsync(cancellationToken);
        return code;
    }

    /// <summary>The account a code would sign in, or null where the code is unknown, used or too old.</summary>
    public async Task<Guid?> PeekAsync(string code, CancellationToken cancellationToken = default)
    {
        var hash = Secrets.Hash(code);
        var now = clock.GetUtcNow();
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var found = await context.OneTimeSignIns.AsNoTracking().SingleOrDefaultAsync(row => row.CodeHash == hash && row.UsedAt == null && row.ExpiresAt > now, cancellationToken);
        return found?.AccountId;
    }

    /// <summary>Uses a code up; true for exactly one caller.</summary>
    public async Task<bool> UseAsync(string code, CancellationToken cancellationToken = default)
    {
        var hash = Secrets.Hash(code);
        var now = clock.GetUtcNow();
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.OneTimeSignIns
            .Where(row => row.CodeHash == hash && row.UsedAt == null && row.ExpiresAt > now)
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.UsedAt, now), cancellationToken) == 1;
    }
}
