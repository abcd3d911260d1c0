using Catalogue.Data.Teardowns;
using Catalogue.Domain.Findings;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Findings;

/// <summary>Findings of drafts.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
public sealed class FindingChanges(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts)
    : RecordChanges<Finding, FindingId, FindingForm>(contexts, drafts)
{
    /// <inheritdoc />
    public override string Noun => "finding";

    /// <summary>Adds one to the draft of a teardown.</summary>
    public Task<ChangeOutcome<FindingId>> AddAsync(TeardownId teardown, FindingForm form, Editor who, CancellationToken cancellationToken = default) =>
        AddAsync(
            teardown,
            form,
            who,
            async (draft, cancel) => new Finding
            {
                RevisionId = draft.Revision.Id,
                Id = FindingId.New(),
                Position = await NextPositionAsync(draft.Context.Findings.Where(row => row.RevisionId == draft.Revision.Id), row => row.Position, cancel),
                Heading = "",
                Markdown = "",
            },
            row => row.Id,
            cancellationToken);

    /// <inheritdoc />
    protected override Task<FindingForm> ReadAsync(Draft draft, Finding record, CancellationToken cancellationToken) => Task.FromResult(new FindingForm
    {
        Heading = record.Heading,
        Markdown = record.Markdown,
        ComponentIds = record.ComponentIds,
        PhotoIds = record.PhotoIds,
        TestIds = record.TestIds,
    });

    /// <inheritdoc />
    protected override async Task<Refusal?> WriteAsync(Draft draft, Finding record, FindingForm form, CancellationToken cancellationToken)
    {
        var check = new FormCheck();
        var heading = check.Need(form.Heading, "heading", 200);
        var markdown = check.Need(form.Markdown, "markdown", 20_000);
        if (check.Refusal is { } refusal)
            return refusal;
        if (await MissingAsync(draft.Context.Components, form.ComponentIds) is { } component)
            return new Refusal("component_ids", $"{component} is no component of this draft.");
        if (await MissingAsync(draft.Context.Photos, form.PhotoIds) is { } photo)
            return new Refusal("photo_ids", $"{photo} is no photo of this draft.");
        if (await MissingAsync(draft.Context.BenchTests, form.TestIds) is { } test)
            return new Refusal("test_ids", $"{test} is no bench test of this draft.");
        record.Heading = heading;
        record.Markdown = markdown;
        record.ComponentIds = [.. form.ComponentIds ?? []];
        record.PhotoIds = [.. form.PhotoIds ?? []];
        record.TestIds = [.. form.TestIds ?? []];
        return null;

        async Task<Guid?> MissingAsync<T>(IQueryable<T> rows, IReadOnlyList<Guid>? ids)
            where T : class, IRevisionContent
        {
            if (ids is not { Count: > 0 })
                return null;
            var known = await rows.Where(row => row.RevisionId == draft.Revision.Id).Select(row => EF.Property<object>(row, "Id")).ToListAsync(cancellationToken);
            var set = known.Select(id => id.ToString()).ToHashSet(StringComparer.Ordinal);
            return ids.Where(id => !set.Contains(id.ToString("D"))).Select(id => (Guid?)id).FirstOrDefault();
        }
    }
}
