using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Teardowns;

/// <summary>Steps of taking apart, in drafts.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class StepChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    : RecordChanges<Step, StepId, StepForm>(contexts, drafts)
{
    /// <inheritdoc />
    public override string Noun => "step";

    /// <summary>Adds one to the draft of a teardown.</summary>
    public Task<ChangeOutcome<StepId>> AddAsync(TeardownId teardown, StepForm form, Editor who, CancellationToken cancellationToken = default) =>
        AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => new Step
            {
                RevisionId = draft.Revision.Id,
                Id = StepId.New(),
                Position = await NextPositionAsync(draft.Context.Steps.Where(row => row.RevisionId == draft.Revision.Id), row => row.Position, cancel),
                Heading = "",
            },
            row => row.Id,
            cancellationToken);

    /// <inheritdoc />
    protected override Task<StepForm> ReadAsync(Draft draft, Step record, CancellationToken cancellationToken) => Task.FromResult(new StepForm
    {
        Heading = record.Heading,
        Markdown = record.Markdown,
        PhotoId = record.PhotoId?.Value,
    });

    /// <inheritdoc />
    protected override Task<Refusal?> WriteAsync(Draft draft, Step record, StepForm form, CancellationToken cancellationToken) => Task.FromResult(Write(record, form));

    private static Refusal? Write(Step record, StepForm form)
    {
        var check = new FormCheck();
        var heading = check.Need(form.Heading, "heading", 200);
        var markdown = check.May(form.Markdown, "markdown", 20_000);
        if (check.Refusal is { } refusal)
            return refusal;
        record.Heading = heading;
        record.Markdown = markdown;
        record.PhotoId = form.PhotoId is { } photo ? PhotoId.From(photo) : null;
        return null;
    }
}
