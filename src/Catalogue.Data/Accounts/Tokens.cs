using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Accounts;

/// <summary>Bearer tokens of scripts.</summary>
/// <param name="contexts">Makes the context of each step.</param>
/// <param name="clock">Tells the time.</param>
public sealed class Tokens(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    /// <summary>What every token begins with, so that a stray one can be recognised.</summary>
    public const string Prefix = "cat_";

    /// <summary>Makes a token and gives it back; it cannot be shown again.</summary>
    public async Task<string> CreateAsync(string name, TokenScope scope, CancellationToken cancellationToken = default)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        var token = Prefix + Secrets.New();
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.ApiTokens.Add(new ApiToken { Id = Guid.CreateVersion7(), Name = name, TokenHash = Secrets.Hash(token), Scope = scope, CreatedAt = clock.GetUtcNow() });
        context.AuditEntries.Add(new AuditEntry { At = clock.GetUtcNow(), Who = "admin command", Action = $"create {scope.ToString().ToLowerInvariant()} token {name}" });
        await context.SaveChangesAsync(cancellationToken);
        return token;
    }

    /// <summary>The token that a caller presents, or null where it is unknown or was taken back.</summary>
    public async Task<ApiToken?> FindAsync(string token, CancellationToken cancellationToken = default)
    {
        if (!token.StartsWith(Prefix, StringComparison.Ordinal) || token.Length > 200)
            return null;
        var hash = Secrets.Hash(token);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.ApiTokens.AsNoTracking().SingleOrDefaultAsync(row => row.TokenHash == hash && row.RevokedAt == null, cancellationToken);
    }
}
