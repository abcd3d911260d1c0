using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Teardowns;

/// <summary>Boards of drafts.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class BoardChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    : RecordChanges<Board, BoardId, BoardForm>(contexts, drafts)
{
    /// <inheritdoc />
    public override string Noun => "board";

    /// <summary>Adds one to the draft of a teardown.</summary>
    public Task<ChangeOutcome<BoardId>> AddAsync(TeardownId teardown, BoardForm form, Editor who, CancellationToken cancellationToken = default) =>
        AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => new Board
            {
                RevisionId = draft.Revision.Id,
                Id = BoardId.New(),
                Position = await NextPositionAsync(draft.Context.Boards.Where(row => row.RevisionId == draft.Revision.Id), row => row.Position, cancel),
                Name = "",
            },
            row => row.Id,
            cancellationToken);

    /// <inheritdoc />
    protected override Task<BoardForm> ReadAsync(Draft draft, Board record, CancellationToken cancellationToken) => Task.FromResult(new BoardForm
    {
        Name = record.Name,
        ParentId = record.ParentId?.Value,
        Topology = record.Topology,
        Note = record.Note,
    });

    /// <inheritdoc />
    protected override Task<Refusal?> WriteAsync(Draft draft, Board record, BoardForm form, CancellationToken cancellationToken) => Task.FromResult(Write(record, form));

    private static Refusal? Write(Board record, BoardForm form)
    {
        var check = new FormCheck();
        var name = check.Need(form.Name, "name", Board.MaxNameLength);
        var topology = check.List(form.Topology, "topology", 20, 60);
        var note = check.May(form.Note, "note", 2000);
        if (check.Refusal is { } refusal)
            return refusal;
        if (form.ParentId == record.Id.Value)
            return new Refusal("parent_id", "A board does not sit on itself.");
        record.Name = name;
        record.ParentId = form.ParentId is { } parent ? BoardId.From(parent) : null;
        record.Topology = topology;
        record.Note = note;
        return null;
    }
}
