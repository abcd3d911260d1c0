using Catalogue.Data.Accounts;
using Catalogue.Data.Figures;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Publishing;

/// <summary>Publishes the draft of a teardown: from then on the database refuses every change to it.</summary>
/// <param name="contexts">Makes the context of each change.</param>
/// <param name="clock">Tells the time.</param>
public sealed class PublishTeardown(IDbContextFactory<CatalogueContext> contexts, TimeProvider clock)
{
    /// <summary>Longest note.</summary>
    public const int MaxNoteLength = 2000;

    /// <summary>What was published.</summary>
    /// <param name="Revision">The revision's number.</param>
    /// <param name="Slug">The teardown's address.</param>
    public sealed record Published(int Revision, string Slug);

    /// <summary>Publishes the draft. Gaps and missing photos never block it; the approval setting may.</summary>
    /// <param name="slug">The teardown.</param>
    /// <param name="note">What changed, for readers; from the second revision on it must say something.</param>
    /// <param name="who">Who publishes.</param>
    /// <param name="cancellationToken">Cancels the change as a whole.</param>
    public async Task<ChangeOutcome<Published>> RunAsync(string slug, string? note, Editor who, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(who);
        var check = new FormCheck();
        var text = check.May(note, "note", MaxNoteLength);
        if (check.Refusal is { } refusal)
            return new ChangeOutcome<Published>.Refused(refusal.Field, refusal.Reason);

        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        await context.Database.ExecuteSqlAsync($"select 1 from teardowns where slug = {slug} for update", cancellationToken);
        if (await FindTeardown.BySlugAsync(context, slug, cancellationToken) is not { } id)
            return new ChangeOutcome<Published>.NotFound($"There is no teardown “{slug}”.");
        var revisions = await context.Revisions.Where(row => row.TeardownId == id).ToListAsync(cancellationToken);
        if (revisions.Find(row => row.State is RevisionState.Draft or RevisionState.InReview) is not { } draft)
            return new ChangeOutcome<Published>.Refused(null, $"“{slug}” has no draft: nothing changed since revision {revisions.Max(row => row.Number)}.");
        if (text is null && draft.Number > 1)
            return new ChangeOutcome<Published>.Refused("note", "A correction needs a note that tells readers what changed.");
        var settings = await context.LabSettings.AsNoTracking().SingleAsync(cancellationToken);
        if (settings.RequiresApproval && !who.IsPerson)
            return new ChangeOutcome<Published>.Refused(null, "This lab publishes with a second person's approval, which a script cannot give: let a person publish it in the lab.");
        if (settings.RequiresApproval && (draft.State is not RevisionState.InReview || draft.SubmittedBy == who.Name))
            return new ChangeOutcome<Published>.Refused(
                null, "This lab publishes with a second person's approval: send the draft to review, and let somebody other than its sender publish it.");

        await RecomputeFigures.RunAsync(context, draft.Id, cancellationToken);
        if (revisions.Find(row => row.State is RevisionState.Published) is { } previous)
        {
            previous.State = RevisionState.Superseded;
            await context.SaveChangesAsync(cancellationToken);
        }

        var now = clock.GetUtcNow();
        draft.State = RevisionState.Published;
        draft.PublishedAt = now;
        await context.CurrentFigures.Where(row => row.TeardownId == id).ExecuteDeleteAsync(cancellationToken);
        var figures = await context.Figures.AsNoTracking().Where(row => row.RevisionId == draft.Id).ToListAsync(cancellationToken);
        context.CurrentFigures.AddRange(figures.Select(figure => CurrentFigure.From(id, figure)));
        context.Publications.Add(new Publication
        {
            Id = PublicationId.New(),
            TeardownId = id,
            RevisionId = draft.Id,
            Note = text ?? "",
            PublishedAt = now,
            PublishedBy = who.Name,
        });
        context.AuditEntries.Add(new AuditEntry { At = now, Who = who.Name, Action = "publish teardown", TeardownId = id });
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return new ChangeOutcome<Published>.Done(new Published(draft.Number, slug));
    }
}
