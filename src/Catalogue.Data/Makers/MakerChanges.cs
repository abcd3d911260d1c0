using Catalogue.Data.Accounts;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Families;
using Catalogue.Domain.Makers;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Makers;

/// <summary>The names of makers: the one shown, and others they had or are written with. An alias joins: whatever is read under it is of the maker.</summary>
/// <param name="contexts">Makes the context of each change.</param>
/// <param name="clock">Tells the time.</param>
public sealed class MakerChanges(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    /// <summary>The most other names of one maker.</summary>
    public const int MaxAliases = 100;

    /// <summary>Shows a maker under another name; the one it had stays as an alias. Published pages keep the name they printed.</summary>
    public Task<ChangeOutcome<MakerId>> RenameAsync(string slug, string? name, Editor who, CancellationToken cancellationToken = default) =>
        EditAsync(slug, name, who, "rename maker", async (context, maker, written, key, cancel) =>
        {
            if (key != maker.NameKey)
            {
                context.MakerAliases.RemoveRange(await context.MakerAliases.Where(row => row.MakerId == maker.Id && row.NameKey == key).ToListAsync(cancel));
                context.MakerAliases.Add(new MakerAlias { MakerId = maker.Id, Name = maker.Name, NameKey = maker.NameKey });
            }

            (maker.Name, maker.NameKey) = (written, key);
            return null;
        }, cancellationToken);

    /// <summary>Adds another name: a former one, a transliteration, a logo in words.</summary>
    public Task<ChangeOutcome<MakerId>> AddAliasAsync(string slug, string? name, Editor who, CancellationToken cancellationToken = default) =>
        EditAsync(slug, name, who, "add maker alias", async (context, maker, written, key, cancel) =>
        {
            if (key == maker.NameKey || await context.MakerAliases.AnyAsync(row => row.MakerId == maker.Id && row.NameKey == key, cancel))
                return $"“{written}” is a name of this maker already: blanks, signs and case do not count.";
            if (await context.MakerAliases.CountAsync(row => row.MakerId == maker.Id, cancel) >= MaxAliases)
                return FormattableString.Invariant($"A maker has at most {MaxAliases} other names.");
            context.MakerAliases.Add(new MakerAlias { MakerId = maker.Id, Name = written, NameKey = key });
            return null;
        }, cancellationToken);

    /// <summary>Takes another name away; what it led here stays.</summary>
    public Task<ChangeOutcome<MakerId>> RemoveAliasAsync(string slug, string name, Editor who, CancellationToken cancellationToken = default) =>
        EditAsync(slug, name, who, "remove maker alias", async (context, maker, written, key, cancel) =>
        {
            if (await context.MakerAliases.SingleOrDefaultAsync(row => row.MakerId == maker.Id && row.NameKey == key, cancel) is not { } alias)
                return $"“{written}” is no other name of this maker.";
            context.Remove(alias);
            return null;
        }, cancellationToken);

    private async Task<ChangeOutcome<MakerId>> EditAsync(
        string slug, string? name, Editor who, string action, Func<CatalogueContext, Maker, string, string, CancellationToken, Task<string?>> change, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(who);
        var check = new FormCheck();
        var written = check.Need(name, "name", Maker.MaxNameLength);
        if (check.Refusal is { } refusal)
            return new ChangeOutcome<MakerId>.Refused(refusal.Field, refusal.Reason);
        var key = MakerName.Key(written);
        if (key.Length == 0 || PlaceholderText.IsPlaceholder(written))
            return new ChangeOutcome<MakerId>.Refused("name", $"“{written}” is no name of a maker.");
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        // Names and aliases share one space of keys, over two tables: the lock keeps two writers from taking one key in each.
        await context.Database.ExecuteSqlAsync($"lock table maker_aliases in share row exclusive mode", cancellationToken);
        if (await context.Makers.SingleOrDefaultAsync(row => row.Slug == slug, cancellationToken) is not { } maker)
            return new ChangeOutcome<MakerId>.NotFound($"There is no maker “{slug}”; GET makers lists them.");
        if (await context.Makers.AnyAsync(row => row.NameKey == key && row.Id != maker.Id, cancellationToken) || await context.MakerAliases.AnyAsync(row => row.NameKey == key && row.MakerId != maker.Id, cancellationToken))
            return new ChangeOutcome<MakerId>.Refused("name", $"“{written}” is the name of another maker.");
        if (await change(context, maker, written, key, cancellationToken) is { } problem)
            return new ChangeOutcome<MakerId>.Refused("name", problem);
        context.AuditEntries.Add(new AuditEntry { At = clock.GetUtcNow(), Who = who.Name, Action = action, RecordId = maker.Id.Value });
        try
        {
            await context.SaveChangesAsync(cancellationToken);
        }
        catch (DbUpdateConcurrencyException)
        {
            return new ChangeOutcome<MakerId>.Stale("Somebody else saved this maker first. Read it again, compare, and save once more.");
        }

        await transaction.CommitAsync(cancellationToken);
        return new ChangeOutcome<MakerId>.Done(maker.Id);
    }
}
