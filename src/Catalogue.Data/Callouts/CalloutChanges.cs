using Catalogue.Data.Teardowns;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Callouts;

/// <summary>Callouts of drafts.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class CalloutChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    : RecordChanges<Callout, CalloutId, CalloutForm>(contexts, drafts)
{
    /// <summary>The highest number a callout may have.</summary>
    public const int MaxNumber = 9999;

    /// <inheritdoc />
    public override string Noun => "callout";

    /// <summary>Adds one to a photo.</summary>
    public async Task<ChangeOutcome<CalloutId>> AddAsync(PhotoId photo, CalloutForm form, Editor who, CancellationToken cancellationToken = default)
    {
        if (await FindTeardown.OfAsync<Photo, PhotoId>(Contexts, photo, cancellationToken) is not { } teardown)
            return new ChangeOutcome<CalloutId>.NotFound($"There is no photo {photo}.");
        return await AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => await draft.Context.Photos.AnyAsync(row => row.RevisionId == draft.Revision.Id && row.Id == photo, cancel)
                ? new Callout
                {
                    RevisionId = draft.Revision.Id,
                    Id = CalloutId.New(),
                    PhotoId = photo,
                    Number = 0,
                    X = 0,
                    Y = 0,
                }
                : null,
            row => row.Id,
            cancellationToken);
    }

    /// <summary>The number a callout carries in the draft or, without one, in the published revision; null when it is gone.</summary>
    public async Task<int?> NumberOfAsync(CalloutId id, CancellationToken cancellationToken = default)
    {
        await using var context = await Contexts.CreateDbContextAsync(cancellationToken);
        var numbers = await context.Callouts.AsNoTracking()
            .Where(row => row.Id == id)
            .Join(context.Revisions, row => row.RevisionId, revision => revision.Id, (row, revision) => new { row.Number, Revision = revision.Number })
            .OrderByDescending(row => row.Revision)
            .Take(1)
            .ToListAsync(cancellationToken);
        return numbers.Count > 0 ? numbers[0].Number : null;
    }

    /// <inheritdoc />
    protected override Task<CalloutForm> ReadAsync(Draft draft, Callout record, CancellationToken cancellationToken) => Task.FromResult(new CalloutForm
    {
        Shape = record.Shape,
        X = record.X,
        Y = record.Y,
        Width = record.Width,
        Height = record.Height,
        Corners = record.Corners,
        Number = record.Number,
        ComponentId = record.ComponentId?.Value,
        BoardId = record.BoardId?.Value,
        PortId = record.PortId?.Value,
    });

    /// <inheritdoc />
    protected override async Task<Refusal?> WriteAsync(Draft draft, Callout record, CalloutForm form, CancellationToken cancellationToken)
    {
        if (Geometry(record, form) is { } refusal)
            return refusal;
        if (form.Number is < 1 or > MaxNumber)
            return new Refusal("number", $"number is 1 to {MaxNumber}; it was {form.Number}.");
        if (new[] { form.ComponentId, form.BoardId, form.PortId }.Count(target => target is not null) > 1)
            return new Refusal("component_id", "A callout points at one thing: a component, a board or a port.");
        var target = form.ComponentId is { } component ? ComponentId.From(component) : (ComponentId?)null;
        record.Number = form.Number ?? await NumberAsync(draft, record, target, cancellationToken);
        record.ComponentId = target;
        record.BoardId = form.BoardId is { } board ? BoardId.From(board) : null;
        record.PortId = form.PortId is { } port ? PortId.From(port) : null;
        return null;
    }

    private static Refusal? Geometry(Callout record, CalloutForm form)
    {
        var corners = form.Corners ?? [];
        if (form.Shape is CalloutShape.Polygon)
        {
            if (corners.Count % 2 != 0 || corners.Count / 2 is < 3 or > Callout.MaxCorners)
                return new Refusal("corners", $"A polygon has 3 to {Callout.MaxCorners} corners, given as x, y, x, y and so on.");
            if (corners.Any(value => !IsFraction(value)))
                return new Refusal("corners", "Each coordinate is a fraction of the upright picture, 0 to 1.");
            (record.X, record.Y, record.Width, record.Height) = (corners[0], corners[1], null, null);
        }
        else
        {
            if (form.X is not { } x || form.Y is not { } y || !IsFraction(x) || !IsFraction(y))
                return new Refusal("x", "x and y are fractions of the upright picture, 0 to 1, from its upper left corner.");
            var isBox = form.Shape is CalloutShape.Box;
            if (isBox && !(form.Width is { } width && form.Height is { } height && width > 0 && height > 0 && x + width <= 1.000001 && y + height <= 1.000001))
                return new Refusal("width", "A box has a width and a height above 0 and lies within the picture.");
            (record.X, record.Y, record.Width, record.Height) = (x, y, isBox ? form.Width : null, isBox ? form.Height : null);
        }

        record.Shape = form.Shape;
        record.Corners = form.Shape is CalloutShape.Polygon ? [.. corners] : [];
        return null;
    }

    private static bool IsFraction(double value) => value is >= 0 and <= 1;

    // One component keeps one number on all its photos; numbers are counted for each board.
    private static async Task<int> NumberAsync(Draft draft, Callout record, ComponentId? component, CancellationToken cancellationToken)
    {
        var revision = draft.Revision.Id;
        var board = await draft.Context.Photos.Where(row => row.RevisionId == revision && row.Id == record.PhotoId).Select(row => row.BoardId).SingleAsync(cancellationToken);
        var onBoard = draft.Context.Callouts
            .Where(row => row.RevisionId == revision && row.Id != record.Id)
            .Join(draft.Context.Photos.Where(row => row.RevisionId == revision && row.BoardId == board), row => row.PhotoId, photo => photo.Id, (row, _) => row);
        if (component is { } id && await onBoard.Where(row => row.ComponentId == id).Select(row => (int?)row.Number).FirstOrDefaultAsync(cancellationToken) is { } own)
            return own;
        return (await onBoard.MaxAsync(row => (int?)row.Number, cancellationToken) ?? 0) + 1;
    }
}
