using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Text;
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
        var check = new FormCheck();
        var condition = check.May(form.Condition, "condition", 400);
        var source = check.May(form.Source, "source", 400);
        if (check.Refusal is { } refusal)
            return refusal;
        if (form.Kind is not { } kind)
            return new Refusal("kind", $"kind is one of {string.Join(", ", SnakeCase.All<RatingKind>())}.");
        if (Read(form, kind, out var value) is { } unread)
            return unread;
        if (kind.Refuse(value) is { } reason)
            return new Refusal("nominal", reason);
        record.Kind = kind;
        (record.Low, record.Nominal, record.High) = (value.Low, value.Nominal, value.High);
        record.Condition = condition;
        record.Evidence = form.Evidence ?? Evidence.Guess;
        record.Source = source;
        return null;
    }

    private static Refusal? Read(RatingForm form, RatingKind kind, out Interval value)
    {
        value = default;
        var nominal = form.Nominal;
        // A text that came with a patch is newer than the number that stood before.
        var typed = PlainText.Clean(form.Text);
        if (typed is not null)
        {
            switch (QuantityParser.ReadOne(typed, kind.Unit()))
            {
                case QuantityReading.Refused refused:
                    return new Refusal("text", refused.Reason);
                case QuantityReading.Ambiguous ambiguous:
                    return new Refusal("text", ambiguous.Ask(typed));
                case QuantityReading.Read { Quantities: [{ Quantity: var read }] } when read.Unit != kind.Unit():
                    return new Refusal("text", $"{kind.Word()} is in {kind.Unit().Code()}; “{typed}” is in {read.Unit.Code()}.");
                case QuantityReading.Read { Quantities: [{ Quantity: var read }] } when read.ToInterval() is { } interval:
                    value = interval;
                    return null;
                default:
                    throw new InvalidOperationException("One reading has one quantity with a value.");
            }
        }

        if (nominal is not { } given)
            return new Refusal("nominal", "Give the quantity as text, such as “35 A”, or as nominal in the unit of its kind.");
        if (form.Unit is { Length: > 0 } unit && UnitSymbols.Find(unit) != kind.Unit())
            return new Refusal("unit", $"{kind.Word()} is in {kind.Unit().Code()}; the unit given was “{unit}”.");
        if (Interval.TryCreate(form.Low ?? given, given, form.High ?? given) is not { } cases)
            return new Refusal("nominal", "low, nominal and high are finite numbers in that order.");
        value = cases;
        return null;
    }
}
