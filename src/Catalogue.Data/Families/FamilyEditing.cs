using Catalogue.Data.Accounts;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Families;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Catalogue.Data.Families;

/// <summary>
/// The one door to what is known of part families. A change runs under the lock under which families are opened, in one transaction with the audit
/// entry that tells of it. A change that writes in drafts holds their teardowns too, and takes them first, as every edit of a draft does.
/// </summary>
/// <param name="contexts">Makes the context of each change.</param>
/// <param name="clock">Tells the time.</param>
public sealed class FamilyEditing(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    /// <summary>A change under way.</summary>
    /// <param name="Context">The context it is made in.</param>
    /// <param name="Now">When.</param>
    /// <param name="Held">The teardowns that nobody else edits or publishes meanwhile.</param>
    internal sealed record Change(CatalogueContext Context, DateTimeOffset Now, IReadOnlySet<TeardownId> Held)
    {
        /// <summary>A family and those that were merged into it: their names, marks, makers and ratings show as its own.</summary>
        public IQueryable<FamilyId> Members(PartFamily family) => Context.Families.MembersOf(family.Id).Select(row => row.Id);

        /// <summary>The family at an address, or null.</summary>
        public Task<PartFamily?> FindAsync(string? slug, CancellationToken cancellationToken) =>
            Context.Families.SingleOrDefaultAsync(row => row.Slug == slug, cancellationToken);
    }

    /// <summary>Runs a change.</summary>
    /// <param name="who">Who makes it.</param>
    /// <param name="action">What it is, for the audit, such as <c>merge families</c>.</param>
    /// <param name="change">The change. It may add to the context without saving; unless it is done, all of it is rolled back.</param>
    /// <param name="recordOf">The record it was done to.</param>
    /// <param name="cancellationToken">Cancels the change as a whole.</param>
    /// <param name="reach">Finds the teardowns whose drafts it may write in; null where it writes in none.</param>
    internal async Task<ChangeOutcome<T>> EditAsync<T>(
        Editor who,
        string action,
        Func<Change, CancellationToken, Task<ChangeOutcome<T>>> change,
        Func<T, Guid> recordOf,
        CancellationToken cancellationToken,
        Func<CatalogueContext, CancellationToken, Task<IReadOnlySet<TeardownId>>>? reach = null)
    {
        ArgumentNullException.ThrowIfNull(who);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        try
        {
            var held = reach is null ? new HashSet<TeardownId>() : await reach(context, cancellationToken);
            if (held.Count > 0)
            {
                var ids = held.Select(id => id.Value).ToArray();
                await context.Database.ExecuteSqlAsync($"select 1 from teardowns where id = any({ids}) order by id for update", cancellationToken);
            }

            await LinkFamilies.LockAsync(context, cancellationToken);
            var outcome = await change(new Change(context, clock.GetUtcNow(), held), cancellationToken);
            if (outcome is not ChangeOutcome<T>.Done done)
                return outcome;
            context.AuditEntries.Add(new AuditEntry { At = clock.GetUtcNow(), Who = who.Name, Action = action, RecordId = recordOf(done.Value) });
            await context.SaveChangesAsync(cancellationToken);
            await transaction.CommitAsync(cancellationToken);
            return outcome;
        }
        catch (DbUpdateConcurrencyException)
        {
            return new ChangeOutcome<T>.Stale("Somebody else saved this family first. Read it again, compare, and save once more.");
        }
        catch (DbUpdateException exception) when (exception.InnerException is PostgresException { SqlState: PostgresErrorCodes.UniqueViolation })
        {
            return new ChangeOutcome<T>.Refused(null, "The same already exists.");
        }
    }

    /// <summary>Runs a change of one family that is not merged into another.</summary>
    internal async Task<ChangeOutcome<T>> EditAsync<T>(
        string slug,
        Editor who,
        string action,
        Func<Change, PartFamily, CancellationToken, Task<ChangeOutcome<T>>> change,
        CancellationToken cancellationToken,
        Func<CatalogueContext, CancellationToken, Task<IReadOnlySet<TeardownId>>>? reach = null)
    {
        var outcome = await EditAsync<(T Value, Guid Family)>(
            who,
            action,
            async (edit, cancel) =>
            {
                if (await edit.FindAsync(slug, cancel) is not { } family)
                    return new ChangeOutcome<(T, Guid)>.NotFound(Missing(slug));
                if (family.MergedIntoId is { } target)
                {
                    var name = await edit.Context.Families.Where(row => row.Id == target).Select(row => row.Slug).SingleAsync(cancel);
                    return new ChangeOutcome<(T, Guid)>.Refused(null, $"“{slug}” was merged into “{name}”; change that one, or undo the merge first.");
                }

                var made = await change(edit, family, cancel);
                return made is ChangeOutcome<T>.Done done ? new ChangeOutcome<(T, Guid)>.Done((done.Value, family.Id.Value)) : made.As<(T, Guid)>();
            },
            done => done.Family,
            cancellationToken,
            reach);
        return outcome is ChangeOutcome<(T Value, Guid Family)>.Done { Value.Value: var value } ? new ChangeOutcome<T>.Done(value) : outcome.As<T>();
    }

    /// <summary>Why there is no family at an address.</summary>
    internal static string Missing(string? slug) => $"There is no part family “{slug}”; GET families lists them.";
}
