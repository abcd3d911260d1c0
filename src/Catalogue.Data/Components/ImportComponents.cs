using Catalogue.Data.Components.Lists;
using Catalogue.Data.Families;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Components.Lists;
using Catalogue.Domain.Families;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Components;

/// <summary>Brings a component list into a board: all rows that can be read, or none. The same list again changes nothing.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
/// <param name="clock">Tells the time.</param>
public sealed class ImportComponents(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts, TimeProvider clock)
{
    /// <summary>What an import did, or would do.</summary>
    /// <param name="List">The list as it was read.</param>
    /// <param name="Warnings">What a person should know; those of the reading come first.</param>
    /// <param name="Plan">What becomes of each row.</param>
    /// <param name="Families">The families that part numbers lead to, by match key; those that are opened have no address yet in a dry run.</param>
    public sealed record Report(ComponentListReading.Read List, IReadOnlyList<string> Warnings, ListPlan Plan, IReadOnlyDictionary<string, ListFamily> Families)
    {
        /// <summary>Part lines of the file: the imported and the rejected ones.</summary>
        public int Rows => List.Rows.Count + List.Rejected.Count;

        /// <summary>How many are taken over: added, updated, or there already.</summary>
        public int Imported => Plan.Rows.Count;

        /// <summary>How many of the imported lead to a part family.</summary>
        public int Resolved => Plan.Rows.Count(row => FamilyOf(row) is not null);

        /// <summary>How many rows are treated so.</summary>
        public int Count(PlannedRowAction action) => Plan.Rows.Count(row => row.Action == action);

        /// <summary>The family that a row's part number leads to, or null.</summary>
        public ListFamily? FamilyOf(PlannedRow row)
        {
            ArgumentNullException.ThrowIfNull(row);
            return PartNumber.From(row.Row.PartNumber) is { } number ? Families.GetValueOrDefault(number.MatchKey) : null;
        }
    }

    /// <summary>A family that a list leads to.</summary>
    /// <param name="Slug">Its address, or null while it is not opened.</param>
    /// <param name="Name">Its base number.</param>
    public sealed record ListFamily(string? Slug, string Name);

    /// <summary>Reads the list and brings its rows into the board, or tells what that would do.</summary>
    /// <param name="board">The board.</param>
    /// <param name="content">The file.</param>
    /// <param name="fileName">Its name; it is named as the source of ratings.</param>
    /// <param name="dryRun">True to tell what would happen and change nothing.</param>
    /// <param name="who">Who imports.</param>
    /// <param name="options">What a person decided about the list; null to find everything out. What was said of columns is remembered for the layout.</param>
    /// <param name="cancellationToken">Cancels the import as a whole.</param>
    public async Task<ChangeOutcome<Report>> RunAsync(
        BoardId board,
        ReadOnlyMemory<byte> content,
        string? fileName,
        bool dryRun,
        Editor who,
        ComponentListOptions? options = null,
        CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(who);
        if (await FindTeardown.OfAsync<Board, BoardId>(contexts, board, cancellationToken) is not { } teardown)
            return new ChangeOutcome<Report>.NotFound($"There is no board {board}.");
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var (list, refused, remembered) = await ReadAsync(context, content, fileName, options ?? new(), cancellationToken);
        if (list is null)
            return new ChangeOutcome<Report>.Refused("file", refused!);

        var numbers = list.Rows.Select(row => PartNumber.From(row.PartNumber)).OfType<PartNumber>().Where(LinkFamilies.IsIdentifying).DistinctBy(number => number.MatchKey).ToList();
        IReadOnlyList<string> warnings = [.. remembered is null ? [] : new[] { ListLayouts.Say(remembered) }, .. list.Warnings, .. NotIdentifying(list.Rows)];
        var latest = await LatestAsync(context, teardown, cancellationToken);
        if (latest is null)
            return new ChangeOutcome<Report>.NotFound("The teardown was withdrawn; nothing in it can be edited.");
        // An import that changes nothing opens no draft of what is published.
        if (dryRun || latest.State is RevisionState.Published)
        {
            var plan = await PlanAsync(context, latest.Id, board, list, cancellationToken);
            if (plan is not ChangeOutcome<ListPlan>.Done { Value: var would })
                return plan.As<Report>();
            if (dryRun || would.Rows.All(row => row.Action is PlannedRowAction.Same))
                return await DoneAsync(new ChangeOutcome<Report>.Done(new Report(list, warnings, would, await FamiliesAsync(context, numbers, await LinkFamilies.FindAsync(context, numbers, cancellationToken), cancellationToken))));
        }

        return await DoneAsync(await drafts.EditAsync<Report>(
            teardown,
            who,
            "import components",
            async (draft, cancel) =>
            {
                var plan = await PlanAsync(draft.Context, draft.Revision.Id, board, list, cancel);
                if (plan is not ChangeOutcome<ListPlan>.Done { Value: var done })
                    return plan.As<Report>();
                var families = await LinkFamilies.RunAsync(draft.Context, numbers, cancel);
                await WriteAsync(draft, done, families, SourceOf(fileName), cancel);
                return new ChangeOutcome<Report>.Done(new Report(list, warnings, done, await FamiliesAsync(draft.Context, numbers, families, cancel)));
            },
            cancellationToken));

        // What was said of the columns is of the layout, not of this teardown.
        async Task<ChangeOutcome<Report>> DoneAsync(ChangeOutcome<Report> outcome)
        {
            if (!dryRun && outcome is ChangeOutcome<Report>.Done && options?.Columns is { } said)
                await ListLayouts.KeepAsync(context, list.Columns, said, who.Name, clock.GetUtcNow(), cancellationToken);
            return outcome;
        }
    }

    // What was said of the columns this time goes before what is remembered.
    private static async Task<(ComponentListReading.Read? List, string? Refusal, ListLayout? Remembered)> ReadAsync(
        CatalogueContext context, ReadOnlyMemory<byte> content, string? fileName, ComponentListOptions options, CancellationToken cancellationToken)
    {
        var reading = ComponentListFile.Read(content, fileName, options);
        var layout = options.Columns is null && reading is ComponentListReading.Read found ? await ListLayouts.FindAsync(context, found.Columns, cancellationToken) : null;
        if (layout is not null)
            reading = ComponentListFile.Read(content, fileName, options with { Columns = layout.Meanings });
        return reading switch
        {
            ComponentListReading.Read read => (read, null, layout),
            ComponentListReading.Refused refused => (null, refused.Reason, null),
            _ => throw new InvalidOperationException("A list is read or refused."),
        };
    }

    // The revision that an import goes into, or that its draft is copied from.
    private static Task<Revision?> LatestAsync(CatalogueContext context, TeardownId teardown, CancellationToken cancellationToken) =>
        context.Revisions.AsNoTracking()
            .Where(row => row.TeardownId == teardown && row.State != RevisionState.Superseded && row.State != RevisionState.Withdrawn)
            .OrderByDescending(row => row.Number)
            .FirstOrDefaultAsync(cancellationToken);

    private static async Task<ChangeOutcome<ListPlan>> PlanAsync(CatalogueContext context, RevisionId revision, BoardId board, ComponentListReading.Read list, CancellationToken cancellationToken)
    {
        if (!await context.Boards.AnyAsync(row => row.RevisionId == revision && row.Id == board, cancellationToken))
            return new ChangeOutcome<ListPlan>.NotFound($"Board {board} was removed from the draft.");
        var there = await context.Components.AsNoTracking().Where(row => row.RevisionId == revision && row.BoardId == board).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancellationToken);
        var ids = context.Components.Where(row => row.RevisionId == revision && row.BoardId == board).Select(row => row.Id);
        var ratings = await context.Ratings.AsNoTracking().Where(row => row.RevisionId == revision && ids.Contains(row.ComponentId)).OrderBy(row => row.Id).ToListAsync(cancellationToken);
        var plan = ListPlan.Of(revision, board, list.Rows, there, ratings.ToLookup(rating => rating.ComponentId));
        var all = await context.Components.CountAsync(row => row.RevisionId == revision, cancellationToken);
        var added = plan.Rows.Count(row => row.Action is PlannedRowAction.Add);
        return all + added > BoardComponent.MaxInTeardown
            ? new ChangeOutcome<ListPlan>.Refused("file", $"A teardown holds at most {BoardComponent.MaxInTeardown} components; {all} are there and the list adds {added}.")
            : new ChangeOutcome<ListPlan>.Done(plan);
    }

    private static async Task WriteAsync(Draft draft, ListPlan plan, IReadOnlyDictionary<string, FamilyId> families, string source, CancellationToken cancellationToken)
    {
        var context = draft.Context;
        var changed = plan.Rows.Where(row => row.Action is not PlannedRowAction.Same).ToList();
        foreach (var row in changed.Where(row => row.HasNewPartNumber))
            Link(row.Component, families);
        var added = changed.Where(row => row.Action is PlannedRowAction.Add).ToList();
        await context.WriteAsync([.. added.Select(row => row.Component)], cancellationToken);
        await context.WriteAsync([.. added.SelectMany(row => row.Ratings.Select(rating => rating.Now!.Of(row.Component, source)))], cancellationToken);
        foreach (var row in changed.Where(row => row.Action is PlannedRowAction.Update))
        {
            context.Components.Update(row.Component);
            foreach (var rating in row.Ratings)
                Write(context, row.Component, rating, source);
        }

        if (added.Count > 0)
            draft.MoveFigures();
    }

    private static void Write(CatalogueContext context, BoardComponent component, PlannedRating rating, string source)
    {
        switch (rating)
        {
            case { Action: PlannedRatingAction.Add, Now: { } now }:
                context.Ratings.Add(now.Of(component, source));
                break;
            case { Action: PlannedRatingAction.Update, Now: { } now, There: { } there }:
                context.Ratings.Attach(there);
                (there.Low, there.Nominal, there.High, there.Source) = (now.Value.Low, now.Value.Nominal, now.Value.High, source);
                break;
            case { Action: PlannedRatingAction.Remove, There: { } there }:
                context.Ratings.Remove(there);
                break;
        }
    }

    // A family that a person found otherwise than from the list's number stays.
    private static void Link(BoardComponent component, IReadOnlyDictionary<string, FamilyId> families)
    {
        if (component.FamilyId is not null && component.FamilyEvidence is not Evidence.Inferred)
            return;
        FamilyId? family = PartNumber.From(component.PartNumber) is { } number && families.TryGetValue(number.MatchKey, out var id) ? id : null;
        component.FamilyId = family;
        component.FamilyEvidence = family is null ? null : Evidence.Inferred;
    }

    private static async Task<IReadOnlyDictionary<string, ListFamily>> FamiliesAsync(
        CatalogueContext context, IReadOnlyList<PartNumber> numbers, IReadOnlyDictionary<string, FamilyId> ids, CancellationToken cancellationToken)
    {
        var wanted = ids.Values.Distinct().ToList();
        var names = await context.Families.AsNoTracking().Where(row => wanted.Contains(row.Id)).ToDictionaryAsync(row => row.Id, row => new ListFamily(row.Slug, row.Name), cancellationToken);
        return numbers.ToDictionary(number => number.MatchKey, number => ids.TryGetValue(number.MatchKey, out var id) ? names[id] : new ListFamily(null, number.MatchKey), StringComparer.Ordinal);
    }

    private static string SourceOf(string? fileName) => fileName is null ? "component list" : $"component list {WellFormedText.Shorten(fileName, 200)}";

    private static IEnumerable<string> NotIdentifying(IReadOnlyList<ListRow> rows)
    {
        foreach (var row in rows)
            if (PartNumber.From(row.PartNumber) is { } number && !LinkFamilies.IsIdentifying(number))
                yield return $"{row.Place}: “{number.AsWritten}” reads like a description, not like a part number; it is kept and linked to no part family.";
    }
}
