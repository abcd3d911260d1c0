using System.Linq.Expressions;
using Catalogue.Domain;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Teardowns;

/// <summary>Adding, amending and removing one kind of record in drafts. Each kind says only what is its own: its form and its checks.</summary>
/// <typeparam name="TRecord">The record.</typeparam>
/// <typeparam name="TId">Its id.</typeparam>
/// <typeparam name="TForm">What a person or a script fills in.</typeparam>
/// <param name="contexts">Makes the context of look-ups outside a draft.</param>
/// <param name="drafts">The door to drafts.</param>
public abstract class RecordChanges<TRecord, TId, TForm>(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    where TRecord : class, IEditableRecord
    where TId : struct, ITypedId<TId>
    where TForm : class
{
    /// <summary>Makes the context of look-ups outside a draft.</summary>
    protected IDbContextFactory<CatalogueContext> Contexts => contexts;

    /// <summary>What the record is called in messages and in the audit.</summary>
    public abstract string Noun { get; }

    /// <summary>Changes a record.</summary>
    /// <param name="id">The record; the same through all revisions.</param>
    /// <param name="expectedVersion">The version the editor saw, or null to save whatever it is by now.</param>
    /// <param name="amend">Makes the new form of the present one, or refuses.</param>
    /// <param name="who">Who makes the change.</param>
    /// <param name="cancellationToken">Cancels the change as a whole.</param>
    public async Task<ChangeOutcome<TId>> AmendAsync(
        TId id, uint? expectedVersion, Func<TForm, ChangeOutcome<TForm>> amend, Editor who, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(amend);
        if (await FindTeardown.OfAsync<TRecord, TId>(contexts, id, cancellationToken) is not { } teardown)
            return Missing(id);
        return await drafts.EditAsync<TId>(
            teardown,
            who,
            $"amend {Noun}",
            async (draft, cancel) =>
            {
                if (await FindAsync(draft, id, expectedVersion, cancel) is not { } record)
                    return Missing(id);
                if (record.Stale)
                    return new ChangeOutcome<TId>.Stale($"Somebody else saved this {Noun} first. Read it again, compare, and save once more.");
                var amended = amend(await ReadAsync(draft, record.Record, cancel));
                if (amended is not ChangeOutcome<TForm>.Done { Value: var form })
                    return amended.As<TId>();
                if (await WriteAsync(draft, record.Record, form, cancel) is { } refusal)
                    return new ChangeOutcome<TId>.Refused(refusal.Field, refusal.Reason);
                return new ChangeOutcome<TId>.Done(id);
            },
            saved => saved.Value,
            cancellationToken);
    }

    /// <summary>Takes a record out of the draft; published revisions keep it.</summary>
    public async Task<ChangeOutcome<TId>> RemoveAsync(TId id, uint? expectedVersion, Editor who, CancellationToken cancellationToken = default)
    {
        if (await FindTeardown.OfAsync<TRecord, TId>(contexts, id, cancellationToken) is not { } teardown)
            return Missing(id);
        return await drafts.EditAsync<TId>(
            teardown,
            who,
            $"remove {Noun}",
            async (draft, cancel) =>
            {
                if (await FindAsync(draft, id, expectedVersion, cancel) is not { } record)
                    return Missing(id);
                if (record.Stale)
                    return new ChangeOutcome<TId>.Stale($"Somebody else saved this {Noun} first. Read it again before removing it.");
                draft.Context.Remove(record.Record);
                return new ChangeOutcome<TId>.Done(id);
            },
            saved => saved.Value,
            cancellationToken);
    }

    /// <summary>Adds a record to the draft of a teardown.</summary>
    protected Task<ChangeOutcome<TId>> AddAsync(
        TeardownId teardown, TForm form, Editor who, Func<Draft, CancellationToken, Task<TRecord?>> make, Func<TRecord, TId> idOf, CancellationToken cancellationToken) =>
        drafts.EditAsync<TId>(
            teardown,
            who,
            $"add {Noun}",
            async (draft, cancel) =>
            {
                if (await make(draft, cancel) is not { } record)
                    return new ChangeOutcome<TId>.NotFound($"What the {Noun} was to be added to is not in the draft.");
                if (await WriteAsync(draft, record, form, cancel) is { } refusal)
                    return new ChangeOutcome<TId>.Refused(refusal.Field, refusal.Reason);
                draft.Context.Add(record);
                return new ChangeOutcome<TId>.Done(idOf(record));
            },
            saved => saved.Value,
            cancellationToken);

    /// <summary>The form that shows a record as it stands.</summary>
    protected abstract Task<TForm> ReadAsync(Draft draft, TRecord record, CancellationToken cancellationToken);

    /// <summary>Checks a form and writes it into a record, or says why it cannot be.</summary>
    protected abstract Task<Refusal?> WriteAsync(Draft draft, TRecord record, TForm form, CancellationToken cancellationToken);

    /// <summary>The next free place in a list of the draft.</summary>
    protected static async Task<int> NextPositionAsync<TOther>(IQueryable<TOther> list, Expression<Func<TOther, int?>> position, CancellationToken cancellationToken) =>
        (await list.MaxAsync(position, cancellationToken) ?? -1) + 1;

    private async Task<(TRecord Record, bool Stale)?> FindAsync(Draft draft, TId id, uint? expectedVersion, CancellationToken cancellationToken)
    {
        if (await draft.Context.Set<TRecord>().Where(row => row.RevisionId == draft.Revision.Id).Where(FindTeardown.HasId<TRecord, TId>(id)).SingleOrDefaultAsync(cancellationToken) is not { } record)
            return null;
        if (expectedVersion is not { } expected)
            return (record, false);
        if (record.Version == expected)
            return (record, false);

        // The editor may have seen the published row: a copy of it that nobody has touched since is what was seen, whatever its own version.
        var seen = await draft.Context.Set<TRecord>().AsNoTracking()
            .Where(row => draft.Context.Revisions.Any(revision => revision.Id == row.RevisionId && revision.TeardownId == draft.Teardown.Id && revision.State == RevisionState.Published))
            .Where(FindTeardown.HasId<TRecord, TId>(id))
            .SingleOrDefaultAsync(cancellationToken);
        return (record, seen is null || seen.Version != expected || !await IsStillAsync(draft, record, seen, cancellationToken));
    }

    /// <summary>True when a row of the draft says what the published row says.</summary>
    protected virtual Task<bool> IsStillAsync(Draft draft, TRecord record, TRecord published, CancellationToken cancellationToken) =>
        Task.FromResult(Untouched.Is(draft.Context, record, published));

    private ChangeOutcome<TId> Missing(TId id) => new ChangeOutcome<TId>.NotFound($"There is no {Noun} {id.Value} in a draft or published teardown.");
}
