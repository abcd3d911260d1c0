using Catalogue.Domain.Components;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>Finds the families that a recorded component may belong to, with all that is recorded of it; its own unit and its kin do not count as seen.</summary>
/// <param name="contexts">Makes the context of each query.</param>
/// <param name="candidates">Finds candidates.</param>
public sealed class ComponentCandidatesQuery(IDbContextFactory<CatalogueContext> contexts, MarkingCandidatesQuery candidates)
{
    /// <summary>The candidates of a component of a draft, or, with no draft, of the published revision; null where there is no such component.</summary>
    public async Task<IReadOnlyList<MarkingCandidatesQuery.Found>?> RunAsync(ComponentId id, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var found = await context.Components
            .AsNoTracking()
            .Where(row => row.Id == id)
            .Join(context.Revisions, row => row.RevisionId, row => row.Id, (component, revision) => new { Component = component, revision.TeardownId, revision.Number })
            .OrderByDescending(row => row.Number)
            .FirstOrDefaultAsync(cancellationToken);
        return found is null ? null : await RunAsync(found.Component, found.TeardownId, cancellationToken);
    }

    /// <summary>The candidates of a component as it is in hand; empty where nothing was read on it.</summary>
    public async Task<IReadOnlyList<MarkingCandidatesQuery.Found>> RunAsync(BoardComponent component, TeardownId teardown, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(component);
        if ((component.MarkingAsRead ?? component.PartNumber) is not { Length: > 0 and <= MarkingReadings.MaxMarkingLength } marking)
            return [];
        return await candidates.RunAsync(
            new MarkingQuestion
            {
                Marking = marking,
                Package = component.Package,
                FunctionClass = component.FunctionClass ?? FunctionClassText.Read(component.Role),
                Maker = MakerName.Key(component.MakerAsRead) is { Length: > 0 } maker ? maker : null,
            },
            new MarkingCandidatesQuery.Place(teardown, component.BoardId),
            seesDrafts: true,
            cancellationToken);
    }
}
