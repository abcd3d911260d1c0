using Catalogue.Data.Families;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Families;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Components;

/// <summary>Components of drafts.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class ComponentChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    : RecordChanges<BoardComponent, ComponentId, ComponentForm>(contexts, drafts)
{
    /// <inheritdoc />
    public override string Noun => "component";

    /// <summary>Adds one at the end of a board's list.</summary>
    public async Task<ChangeOutcome<ComponentId>> AddAsync(BoardId board, ComponentForm form, Editor who, CancellationToken cancellationToken = default)
    {
        if (await FindTeardown.OfAsync<Board, BoardId>(Contexts, board, cancellationToken) is not { } teardown)
            return new ChangeOutcome<ComponentId>.NotFound($"There is no board {board}.");
        return await AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => await draft.Context.Boards.AnyAsync(row => row.RevisionId == draft.Revision.Id && row.Id == board, cancel)
                ? new BoardComponent
                {
                    RevisionId = draft.Revision.Id,
                    Id = ComponentId.New(),
                    BoardId = board,
                    Position = await NextPositionAsync(draft.Context.Components.Where(row => row.RevisionId == draft.Revision.Id && row.BoardId == board), row => row.Position, cancel),
                }
                : null,
            row => row.Id,
            cancellationToken);
    }

    /// <inheritdoc />
    protected override async Task<ComponentForm> ReadAsync(Draft draft, BoardComponent record, CancellationToken cancellationToken) => new()
    {
        Role = record.Role,
        FunctionClass = record.FunctionClass,
        Designators = record.Designators,
        MarkingAsRead = record.MarkingAsRead,
        PartNumber = record.PartNumber,
        Value = record.Value,
        Package = record.Package,
        Maker = record.MakerAsRead,
        Description = record.Description,
        Quantity = record.Quantity,
        Parallel = record.ParallelCount,
        Series = record.SeriesCount,
        IsFitted = record.IsFitted,
        Family = record.FamilyId is { } family ? await draft.Context.Families.Where(row => row.Id == family).Select(row => row.Slug).SingleAsync(cancellationToken) : null,
        FamilyEvidence = record.FamilyEvidence,
        RailId = record.RailId?.Value,
        CircuitPosition = record.CircuitPosition,
        Note = record.Note,
    };

    /// <inheritdoc />
    protected override async Task<Refusal?> WriteAsync(Draft draft, BoardComponent record, ComponentForm form, CancellationToken cancellationToken)
    {
        var check = new FormCheck();
        var role = check.May(form.Role, "role", 120);
        var designators = check.May(form.Designators, "designators", BoardComponent.MaxTextLength);
        var marking = check.May(form.MarkingAsRead, "marking_as_read", BoardComponent.MaxMarkingLength);
        var partNumber = check.May(form.PartNumber, "part_number", BoardComponent.MaxMarkingLength);
        var value = check.May(form.Value, "value", BoardComponent.MaxTextLength);
        var package = check.May(form.Package, "package", 200);
        var maker = check.May(form.Maker, "maker", 200);
        var description = check.May(form.Description, "description", BoardComponent.MaxTextLength);
        var note = check.May(form.Note, "note", BoardComponent.MaxTextLength);
        if (check.Refusal is { } refusal)
            return refusal;
        if (draft.Context.Entry(record).State is EntityState.Detached
            && await draft.Context.Components.CountAsync(row => row.RevisionId == draft.Revision.Id, cancellationToken) >= BoardComponent.MaxInTeardown)
            return new Refusal(null, $"A teardown holds at most {BoardComponent.MaxInTeardown} components.");
        if (form.Quantity is < 0 or > 100_000)
            return new Refusal("quantity", $"quantity is 0 to 100000; it was {form.Quantity}.");
        if (form.Parallel is < 1 or > 1000)
            return new Refusal("parallel", $"parallel is 1 to 1000; it was {form.Parallel}.");
        if (form.Series is < 1 or > 1000)
            return new Refusal("series", $"series is 1 to 1000; it was {form.Series}.");
        if (await FamilyAsync(draft, record, form, partNumber, cancellationToken) is not { Refusal: null } family)
            return new Refusal("family", $"There is no part family “{form.Family}”; GET families lists their slugs.");

        record.Role = role;
        record.FunctionClass = form.FunctionClass;
        record.Designators = designators;
        record.DesignatorList = designators is null ? [] : [.. DesignatorList.Read(designators, form.Quantity).Names];
        record.MarkingAsRead = marking;
        record.PartNumber = partNumber;
        record.Value = value;
        record.Package = package;
        record.MakerAsRead = maker;
        record.Description = description;
        record.Quantity = form.Quantity;
        record.ParallelCount = form.Parallel;
        record.SeriesCount = form.Series;
        record.IsFitted = form.IsFitted;
        record.FamilyId = family.Id;
        record.FamilyEvidence = family.Evidence;
        record.RailId = form.RailId is { } rail ? RailId.From(rail) : null;
        record.CircuitPosition = form.CircuitPosition;
        record.Note = note;
        return null;
    }

    // A family that is named wins; else a part number that was not there before leads to its family. Taking the family away leaves the number.
    private static async Task<(FamilyId? Id, Evidence? Evidence, Refusal? Refusal)> FamilyAsync(
        Draft draft, BoardComponent record, ComponentForm form, string? partNumber, CancellationToken cancellationToken)
    {
        if (PlainText.Clean(form.Family) is { } slug)
        {
            var found = await draft.Context.Families.Where(row => row.Slug == slug).Select(row => new { Id = row.MergedIntoId ?? row.Id }).SingleOrDefaultAsync(cancellationToken);
            if (found is null)
                return (null, null, new Refusal("family", slug));
            var unchanged = record.FamilyId == found.Id;
            if (!unchanged || partNumber == record.PartNumber || PartNumber.From(partNumber) is null)
                return (found.Id, form.FamilyEvidence ?? (unchanged ? record.FamilyEvidence : null) ?? Evidence.Inferred, null);
        }

        if (partNumber != record.PartNumber && PartNumber.From(partNumber) is { } number)
        {
            var linked = await LinkFamilies.RunAsync(draft.Context, [number], cancellationToken);
            return linked.TryGetValue(number.MatchKey, out var id) ? (id, form.FamilyEvidence ?? Evidence.ReadOnPart, null) : (null, null, null);
        }

        return (null, null, null);
    }
}
