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

/// <summary>Brings a component list into a board: all rows that can be read, or none.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class ImportComponents(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
{
    /// <summary>What an import did, or would do.</summary>
    /// <param name="Rows">Part lines of the file: the imported and the rejected ones.</param>
    /// <param name="Imported">How many became components.</param>
    /// <param name="Rejected">Those that could not, each with its line and its reason.</param>
    /// <param name="Warnings">What a person should know.</param>
    /// <param name="Columns">The columns as they were understood.</param>
    /// <param name="Encoding">IANA name of the encoding; null for a workbook.</param>
    /// <param name="Delimiter">The character between fields; null for a workbook.</param>
    /// <param name="Sheets">What became of each sheet of a workbook.</param>
    /// <param name="Readings">Cells that may be read in more than one way.</param>
    /// <param name="Resolved">How many of the imported are linked to a part family.</param>
    public sealed record Report(
        int Rows,
        int Imported,
        IReadOnlyList<RejectedRow> Rejected,
        IReadOnlyList<string> Warnings,
        IReadOnlyList<ListColumn> Columns,
        string? Encoding,
        char? Delimiter,
        IReadOnlyList<ListSheet> Sheets,
        IReadOnlyList<OpenReading> Readings,
        int Resolved);

    /// <summary>Reads the list and adds its rows at the end of the board.</summary>
    /// <param name="board">The board.</param>
    /// <param name="content">The file.</param>
    /// <param name="fileName">Its name, for messages only.</param>
    /// <param name="dryRun">True to tell what would happen and change nothing.</param>
    /// <param name="who">Who imports.</param>
    /// <param name="options">What a person decided about the list; null to find everything out.</param>
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
        if (await FindTeardown.OfAsync<Board, BoardId>(contexts, board, cancellationToken) is not { } teardown)
            return new ChangeOutcome<Report>.NotFound($"There is no board {board}.");
        var reading = ComponentListFile.Read(content, fileName, options);
        if (reading is ComponentListReading.Refused refused)
            return new ChangeOutcome<Report>.Refused("file", refused.Reason);
        if (reading is not ComponentListReading.Read read)
            throw new InvalidOperationException("A list is read or refused.");

        var numbers = read.Rows.Select(row => PartNumber.From(row.PartNumber)).ToList();
        var warnings = read.Warnings.Concat(NotIdentifying(read.Rows, numbers)).ToList();
        var report = new Report(
            read.Rows.Count + read.Rejected.Count,
            read.Rows.Count,
            read.Rejected,
            warnings,
            read.Columns,
            read.Encoding,
            read.Delimiter,
            read.Sheets,
            read.Readings,
            numbers.Count(number => number is not null && LinkFamilies.IsIdentifying(number)));
        if (dryRun)
            return await RefuseAsync(teardown, board, read.Rows.Count, cancellationToken) ?? new ChangeOutcome<Report>.Done(report);

        return await drafts.EditAsync<Report>(
            teardown,
            who,
            "import components",
            async (draft, cancel) =>
            {
                var revision = draft.Revision.Id;
                if (await RefuseAsync(draft.Context, revision, board, read.Rows.Count, cancel) is { } refusal)
                    return refusal;
                var families = await LinkFamilies.RunAsync(draft.Context, numbers.OfType<PartNumber>(), cancel);
                var position = (await draft.Context.Components.Where(row => row.RevisionId == revision && row.BoardId == board).MaxAsync(row => (int?)row.Position, cancel) ?? -1) + 1;
                for (var i = 0; i < read.Rows.Count; i++)
                    draft.Context.Components.Add(Component(revision, board, position + i, read.Rows[i], numbers[i], families));
                return new ChangeOutcome<Report>.Done(report);
            },
            cancellationToken);
    }

    private async Task<ChangeOutcome<Report>?> RefuseAsync(TeardownId teardown, BoardId board, int count, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        // The revision that an import would go into, or be copied from.
        var latest = await context.Revisions.AsNoTracking()
            .Where(row => row.TeardownId == teardown && row.State != RevisionState.Superseded && row.State != RevisionState.Withdrawn)
            .OrderByDescending(row => row.Number)
            .Select(row => (RevisionId?)row.Id)
            .FirstOrDefaultAsync(cancellationToken);
        return latest is { } revision
            ? await RefuseAsync(context, revision, board, count, cancellationToken)
            : new ChangeOutcome<Report>.NotFound("The teardown was withdrawn; nothing in it can be edited.");
    }

    private static async Task<ChangeOutcome<Report>?> RefuseAsync(CatalogueContext context, RevisionId revision, BoardId board, int count, CancellationToken cancellationToken)
    {
        if (!await context.Boards.AnyAsync(row => row.RevisionId == revision && row.Id == board, cancellationToken))
            return new ChangeOutcome<Report>.NotFound($"Board {board} was removed from the draft.");
        var there = await context.Components.CountAsync(row => row.RevisionId == revision, cancellationToken);
        return there + count > BoardComponent.MaxInTeardown
            ? new ChangeOutcome<Report>.Refused("file", $"A teardown holds at most {BoardComponent.MaxInTeardown} components; {there} are there and the list has {count}.")
            : null;
    }

    private static BoardComponent Component(
        RevisionId revision, BoardId board, int position, ListRow row, PartNumber? number, IReadOnlyDictionary<string, FamilyId> families)
    {
        FamilyId? family = number is not null && families.TryGetValue(number.MatchKey, out var id) ? id : null;
        return new BoardComponent
        {
            RevisionId = revision,
            Id = ComponentId.New(),
            BoardId = board,
            Position = position,
            Role = row.Role,
            FunctionClass = DesignatorClass.Suggest(row.Designators, row.Description),
            Designators = row.DesignatorsAsWritten,
            DesignatorList = [.. row.Designators],
            PartNumber = row.PartNumber,
            Value = row.Value,
            Package = row.Package,
            MakerAsRead = row.Maker,
            Description = row.Description,
            Quantity = row.Quantity,
            IsFitted = row.Fitted,
            FamilyId = family,
            FamilyEvidence = family is null ? null : Evidence.Inferred,
            ImportedRow = [.. row.AsRead.Select(cell => new ImportedCell(cell.Header, cell.Text))],
        };
    }

    private static IEnumerable<string> NotIdentifying(IReadOnlyList<ListRow> rows, List<PartNumber?> numbers)
    {
        for (var i = 0; i < rows.Count; i++)
            if (numbers[i] is { } number && !LinkFamilies.IsIdentifying(number))
                yield return $"{rows[i].Place}: “{number.AsWritten}” reads like a description, not like a part number; it is kept and linked to no part family.";
    }
}
