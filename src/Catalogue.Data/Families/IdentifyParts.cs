using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Quantities;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>Says of which family all parts of one look are. Markings stay as read; a published teardown's draft is opened, as by any edit.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
/// <param name="candidates">Tells how the marking leads to the family.</param>
public sealed class IdentifyParts(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts, MarkingCandidatesQuery candidates)
{
    /// <summary>What came of it in one teardown, which is changed as a whole or not at all.</summary>
    /// <param name="Teardown">The teardown's address.</param>
    /// <param name="Components">How many components were linked.</param>
    /// <param name="Problem">Why none were, or null.</param>
    public sealed record Line(string Teardown, int Components, string? Problem);

    /// <summary>Links all parts of a look to a family.</summary>
    /// <param name="key">The look (<see cref="UnidentifiedQuery.Item.Key"/>).</param>
    /// <param name="family">The family's address.</param>
    /// <param name="evidence">How it is known; where null, decoded if a top mark of the family was read, else inferred.</param>
    /// <param name="who">Who says so.</param>
    /// <param name="cancellationToken">Stops between teardowns; those that are done stay done.</param>
    public async Task<ChangeOutcome<IReadOnlyList<Line>>> RunAsync(string key, string? family, Evidence? evidence, Editor who, CancellationToken cancellationToken = default)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var target = await context.Families.Where(row => row.Slug == family).Select(row => context.Families.Single(known => known.Id == (row.MergedIntoId ?? row.Id))).Select(row => new Target(row.Id, row.FunctionClass)).SingleOrDefaultAsync(cancellationToken);
        if (target is null)
            return new ChangeOutcome<IReadOnlyList<Line>>.Refused("family", FamilyEditing.Missing(family));
        var parts = await UnidentifiedQuery.PartsAsync(context, key, cancellationToken);
        if (parts.Count == 0)
            return Gone();
        var known = evidence ?? ((await UnidentifiedQuery.CandidatesAsync(candidates, parts, cancellationToken)).FirstOrDefault(found => found.Candidate.Family.Id == target.Id) is { Candidate.Name.Kind: FamilyNameKind.TopMark }
            ? Evidence.Decoded
            : Evidence.Inferred);
        return await LinkAsync(key, parts, "identify parts", known, (_, _) => Task.FromResult(target), who, cancellationToken);
    }

    /// <summary>Opens the family of a number that was read on all parts of a look, or finds it, and links them to it.</summary>
    /// <param name="key">The look.</param>
    /// <param name="number">The whole number.</param>
    /// <param name="evidence">How it is known; read on the part where null.</param>
    /// <param name="who">Who says so.</param>
    /// <param name="cancellationToken">Stops between teardowns; those that are done stay done.</param>
    public async Task<ChangeOutcome<IReadOnlyList<Line>>> OpenAsync(string key, string? number, Evidence? evidence, Editor who, CancellationToken cancellationToken = default)
    {
        if (IdentifyComponent.Read(number) is not { } read)
            return new ChangeOutcome<IReadOnlyList<Line>>.Refused("part_number", IdentifyComponent.NoNumber(number));
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var parts = await UnidentifiedQuery.PartsAsync(context, key, cancellationToken);
        return parts.Count == 0
            ? Gone()
            : await LinkAsync(
                key,
                parts,
                "open family for parts",
                evidence ?? Evidence.ReadOnPart,
                async (draft, cancel) =>
                {
                    var family = (await LinkFamilies.RunAsync(draft.Context, [read], cancel))[read.MatchKey];
                    return await draft.Context.Families.Where(row => row.Id == family).Select(row => new Target(row.Id, row.FunctionClass)).SingleAsync(cancel);
                },
                who,
                cancellationToken);
    }

    private async Task<ChangeOutcome<IReadOnlyList<Line>>> LinkAsync(
        string key,
        IReadOnlyList<(BoardComponent Component, UnidentifiedQuery.Part Part)> parts,
        string action,
        Evidence evidence,
        Func<Draft, CancellationToken, Task<Target>> find,
        Editor who,
        CancellationToken cancellationToken)
    {
        var lines = new List<Line>();
        foreach (var teardown in parts.Select(row => row.Part).GroupBy(part => (part.Teardown, part.Slug)))
        {
            var ids = teardown.Select(part => part.Id).ToList();
            var outcome = await drafts.EditAsync<int>(teardown.Key.Teardown, who, action, (draft, cancel) => LinkAsync(draft, key, ids, evidence, find, cancel), null, cancellationToken);
            lines.Add(outcome is ChangeOutcome<int>.Done { Value: var linked } ? new Line(teardown.Key.Slug, linked, null) : new Line(teardown.Key.Slug, 0, Reason(outcome)));
        }

        return new ChangeOutcome<IReadOnlyList<Line>>.Done(lines);
    }

    private static async Task<ChangeOutcome<int>> LinkAsync(
        Draft draft, string key, List<ComponentId> ids, Evidence evidence, Func<Draft, CancellationToken, Task<Target>> find, CancellationToken cancellationToken)
    {
        // Somebody may have identified one of them or read it better since the list was read; their word stays.
        var components = (await draft.Context.Components.Where(row => row.RevisionId == draft.Revision.Id && ids.Contains(row.Id) && row.FamilyId == null && row.IsFitted).ToListAsync(cancellationToken))
            .FindAll(component => PartText.Of(component) is not null && UnidentifiedQuery.KeyOf(component) == key);
        // Refused, so that no draft is opened for nothing.
        if (components.Count == 0)
            return new ChangeOutcome<int>.Refused(null, "Somebody else has identified or changed them meanwhile.");
        var family = await find(draft, cancellationToken);
        foreach (var component in components)
        {
            component.FamilyId = family.Id;
            component.FamilyEvidence = evidence;
            component.FunctionClass ??= family.FunctionClass;
        }

        return new ChangeOutcome<int>.Done(components.Count);
    }

    private static ChangeOutcome<IReadOnlyList<Line>> Gone() => new ChangeOutcome<IReadOnlyList<Line>>.NotFound("No part of this look is without a family any more.");

    private static string Reason(ChangeOutcome<int> outcome) => outcome switch
    {
        ChangeOutcome<int>.Refused refused => refused.Reason,
        ChangeOutcome<int>.Stale stale => stale.Reason,
        ChangeOutcome<int>.NotFound missing => missing.Reason,
        _ => throw new InvalidOperationException("What was done has no reason."),
    };

    private sealed record Target(FamilyId Id, FunctionClass? FunctionClass);
}
