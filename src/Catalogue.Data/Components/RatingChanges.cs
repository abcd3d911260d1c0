using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Components;

/// <summary>Ratings of components in drafts.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class RatingChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    : RecordChanges<Rating, RatingId, RatingForm>(contexts, drafts)
{
    /// <inheritdoc />
    public override string Noun => "rating";

    /// <summary>Adds one to a component.</summary>
    public async Task<ChangeOutcome<RatingId>> AddAsync(ComponentId component, RatingForm form, Editor who, CancellationToken cancellationToken = default)
    {
        if (await FindTeardown.OfAsync<BoardComponent, ComponentId>(Contexts, component, cancellationToken) is not { } teardown)
            return new ChangeOutcome<RatingId>.NotFound($"There is no component {component}.");
        return await AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => await draft.Context.Components.AnyAsync(row => row.RevisionId == draft.Revision.Id && row.Id == component, cancel)
                ? new Rating
                {
                    RevisionId = draft.Revision.Id,
                    Id = RatingId.New(),
                    ComponentId = component,
                    Kind = RatingKind.RatedCurrent,
                    Low = 0,
                    Nominal = 0,
                    High = 0,
                }
                : null,
            row => row.Id,
            cancellationToken);
    }

    /// <inheritdoc />
    protected override Task<RatingForm> ReadAsync(Draft draft, Rating record, CancellationToken cancellationToken) => Task.FromResult(new RatingForm
    {
        Kind = record.Kind,
        // An end that equals the value is not given, so that a change of the value alone carries it along.
        Low = record.Low == record.Nominal ? null : record.Low,
        Nominal = record.Nominal,
        High = record.High == record.Nominal ? null : record.High,
        Unit = record.Kind.Unit().Code(),
        Condition = record.Condition,
        Evidence = record.Evidence,
        Source = record.Source,
    });

    /// <inheritdoc />
    protected override Task<Refusal?> WriteAsync(Draft draft, Rating record, RatingForm form, CancellationToken cancellationToken) => Task.FromResult(Write(record, form));

    private static Refusal? Write(Rating record, RatingForm form)
    {
        if (RatingReading.Of(form, out var read) is { } refusal)
            return refusal;
        record.Kind = read.Kind;
        (record.Low, record.Nominal, record.High) = (read.Value.Low, read.Value.Nominal, read.Value.High);
        record.Condition = read.Condition;
        record.Evidence = read.Evidence;
        record.Source = read.Source;
        return null;
    }
}
