using Catalogue.Data.Teardowns;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Products;

/// <summary>Claims of drafts.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class ClaimChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    : RecordChanges<Claim, ClaimId, ClaimForm>(contexts, drafts)
{
    /// <inheritdoc />
    public override string Noun => "claim";

    /// <summary>Adds one to the draft of a teardown.</summary>
    public Task<ChangeOutcome<ClaimId>> AddAsync(TeardownId teardown, ClaimForm form, Editor who, CancellationToken cancellationToken = default) =>
        AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => new Claim
            {
                RevisionId = draft.Revision.Id,
                Id = ClaimId.New(),
                Position = await NextPositionAsync(draft.Context.Claims.Where(row => row.RevisionId == draft.Revision.Id), row => row.Position, cancel),
                Subject = "",
                AsPrinted = "",
            },
            row => row.Id,
            cancellationToken);

    /// <inheritdoc />
    protected override Task<ClaimForm> ReadAsync(Draft draft, Claim record, CancellationToken cancellationToken) => Task.FromResult(new ClaimForm
    {
        Subject = record.Subject,
        AsPrinted = record.AsPrinted,
        Value = record.Value,
        Unit = record.Unit,
        Place = record.Place,
        PortId = record.PortId?.Value,
    });

    /// <inheritdoc />
    protected override Task<Refusal?> WriteAsync(Draft draft, Claim record, ClaimForm form, CancellationToken cancellationToken) => Task.FromResult(Write(record, form));

    private static Refusal? Write(Claim record, ClaimForm form)
    {
        var check = new FormCheck();
        var subject = check.Need(form.Subject, "subject", 120);
        var asPrinted = check.Need(form.AsPrinted, "as_printed", 400);
        if (check.Refusal is { } refusal)
            return refusal;
        if (form.Value is { } value && !double.IsFinite(value))
            return new Refusal("value", "value is a finite number.");
        if (form.Value is null != form.Unit is null)
            return new Refusal("unit", "value and unit come together: a number without a unit is no quantity.");
        record.Subject = subject;
        record.AsPrinted = asPrinted;
        record.Value = form.Value;
        record.Unit = form.Unit;
        record.Place = form.Place;
        record.PortId = form.PortId is { } port ? PortId.From(port) : null;
        return null;
    }
}
