using Catalogue.Data.Accounts;
using Catalogue.Data.Figures;
using Catalogue.Domain.Components;
using Catalogue.Domain.Products;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Npgsql;

namespace Catalogue.Data.Teardowns;

/// <summary>
/// The one door to a draft. A change runs under the lock of its teardown, in one transaction with the figures it moves and the audit entry
/// that tells of it; the first change to a published teardown opens its draft.
/// </summary>
/// <param name="contexts">Makes the context of each change.</param>
/// <param name="clock">Tells the time.</param>
public sealed class DraftEditing(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    /// <summary>Runs a change on the draft of a teardown.</summary>
    /// <param name="id">The teardown.</param>
    /// <param name="who">Who makes the change.</param>
    /// <param name="action">What it is, for the audit, such as <c>add board</c>.</param>
    /// <param name="change">The change. It may add to the context without saving. Unless it is done, all of it is rolled back.</param>
    /// <param name="recordOf">The record it was done to, for the audit, or null where it is not one.</param>
    /// <param name="cancellationToken">Cancels the change as a whole.</param>
    public async Task<ChangeOutcome<T>> EditAsync<T>(
        TeardownId id,
        Editor who,
        string action,
        Func<Draft, CancellationToken, Task<ChangeOutcome<T>>> change,
        Func<T, Guid>? recordOf,
        CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(who);
        ArgumentNullException.ThrowIfNull(change);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        try
        {
            await context.Database.ExecuteSqlAsync($"select 1 from teardowns where id = {id.Value} for update", cancellationToken);
            if (await context.Teardowns.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, cancellationToken) is not { } teardown)
                return new ChangeOutcome<T>.NotFound("There is no such teardown.");
            if (await FindOrOpenAsync(context, teardown, cancellationToken) is not { } draft)
                return new ChangeOutcome<T>.NotFound($"The teardown “{teardown.Slug}” was withdrawn; nothing in it can be edited.");

            var outcome = await change(draft, cancellationToken);
            if (outcome is not ChangeOutcome<T>.Done done)
                return outcome;
            if (draft.Revision.State is RevisionState.InReview)
            {
                draft.Revision.State = RevisionState.Draft;
                draft.Revision.SubmittedBy = null;
            }

            context.AuditEntries.Add(new AuditEntry { At = clock.GetUtcNow(), Who = who.Name, Action = action, TeardownId = id, RecordId = recordOf?.Invoke(done.Value) });
            var movesFigures = draft.HasMovedFigures || context.ChangeTracker.Entries().Any(MovesFigures);
            await context.SaveChangesAsync(cancellationToken);
            if (movesFigures)
                await RecomputeFigures.RunAsync(context, draft.Revision.Id, cancellationToken);
            // References between content rows are checked at commit; asked for here, a wrong one is refused like any other.
            await context.Database.ExecuteSqlAsync($"set constraints all immediate", cancellationToken);
            await transaction.CommitAsync(cancellationToken);
            return outcome;
        }
        catch (DbUpdateConcurrencyException)
        {
            return new ChangeOutcome<T>.Stale("Somebody else saved this record first. Read it again, compare, and save once more.");
        }
        catch (DbUpdateException exception) when (exception.InnerException is PostgresException postgres && Explain(postgres) is { } refusal)
        {
            return new ChangeOutcome<T>.Refused(refusal.Field, refusal.Reason);
        }
        catch (PostgresException exception) when (Explain(exception) is { } refusal)
        {
            return new ChangeOutcome<T>.Refused(refusal.Field, refusal.Reason);
        }
    }

    /// <summary>Runs a change that is not of one record.</summary>
    public Task<ChangeOutcome<T>> EditAsync<T>(
        TeardownId id, Editor who, string action, Func<Draft, CancellationToken, Task<ChangeOutcome<T>>> change, CancellationToken cancellationToken = default) =>
        EditAsync(id, who, action, change, null, cancellationToken);

    /// <summary>Sends the draft of a teardown to a second person, under the same lock as every edit of it.</summary>
    internal async Task<ChangeOutcome<TeardownId>> SubmitAsync(TeardownId id, Editor who, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(who);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await context.Database.ExecuteSqlAsync($"select 1 from teardowns where id = {id.Value} for update", cancellationToken);
        var draft = await context.Revisions.SingleOrDefaultAsync(row => row.TeardownId == id && (row.State == RevisionState.Draft || row.State == RevisionState.InReview), cancellationToken);
        if (draft is null)
            return new ChangeOutcome<TeardownId>.NotFound("There is no draft to send to review.");
        if (draft.State is RevisionState.Draft)
        {
            draft.State = RevisionState.InReview;
            draft.SubmittedBy = who.Name;
            context.AuditEntries.Add(new AuditEntry { At = clock.GetUtcNow(), Who = who.Name, Action = "send to review", TeardownId = id });
            await context.SaveChangesAsync(cancellationToken);
        }

        await transaction.CommitAsync(cancellationToken);
        return new ChangeOutcome<TeardownId>.Done(id);
    }

    private async Task<Draft?> FindOrOpenAsync(CatalogueContext context, Teardown teardown, CancellationToken cancellationToken)
    {
        var revisions = await context.Revisions.Where(row => row.TeardownId == teardown.Id).OrderByDescending(row => row.Number).ToListAsync(cancellationToken);
        if (revisions.Find(row => row.State is RevisionState.Draft or RevisionState.InReview) is { } draft)
            return new Draft(context, teardown, draft, null);
        if (revisions.Find(row => row.State is RevisionState.Published) is not { } published)
            return null;
        var opened = await OpenDraft.FromAsync(context, published, revisions[0].Number + 1, clock.GetUtcNow(), cancellationToken);
        return new Draft(context, teardown, opened, published);
    }

    // What figures are computed from; a board takes its components with it when it goes.
    private static bool MovesFigures(EntityEntry entry) =>
        entry.State is not EntityState.Unchanged
        && (entry.Entity is BoardComponent or Rating or Rail or RailQuantity or Port
            || (entry.Entity is Revision && entry.Property(nameof(Revision.CellChemistry)).IsModified) || (entry.Entity is Board && entry.State is EntityState.Deleted));

    // A reference to a row that is not in this draft, or a name that is taken: the caller's to mend. Anything else is ours.
    private static Refusal? Explain(PostgresException exception) => exception.SqlState switch
    {
        PostgresErrorCodes.ForeignKeyViolation => new Refusal(
            null, "Something that is referred to is not in this draft. Boards, components, photos, ports and rails must belong to the same teardown."),
        PostgresErrorCodes.UniqueViolation when exception.ConstraintName == "ix_rails_revision_id_name" => new Refusal("name", "A rail of this name exists in the teardown; names of rails are unique."),
        PostgresErrorCodes.UniqueViolation => new Refusal(null, "The same already exists."),
        PostgresErrorCodes.StringDataRightTruncation => new Refusal(null, "A text is longer than its field."),
        _ => null,
    };
}
