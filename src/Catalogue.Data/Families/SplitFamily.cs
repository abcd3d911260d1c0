using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Teardowns;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>
/// Declares some parts of a family to be of another, and takes that back. A draft's components are linked anew; published ones keep the link they were
/// published with, and the new one stands beside it (<see cref="FamilyMove"/>).
/// </summary>
/// <param name="editing">The door to families.</param>
public sealed class SplitFamily(FamilyEditing editing)
{
    private sealed record Part(RevisionId RevisionId, ComponentId ComponentId, FamilyId Before, bool IsDraft);

    /// <summary>Splits.</summary>
    public Task<ChangeOutcome<FamilySplitId>> RunAsync(string slug, SplitForm form, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<FamilySplitId>(
            slug,
            who,
            "split family",
            async (edit, family, cancel) =>
            {
                ArgumentNullException.ThrowIfNull(form);
                ArgumentNullException.ThrowIfNull(who);
                var check = new FormCheck();
                var into = check.Need(form.Into, "into", PartFamily.MaxNameLength);
                var note = check.May(form.Note, "note", FamilyRelation.MaxNoteLength);
                var texts = check.List(form.Texts, "texts", 50, BoardComponent.MaxMarkingLength);
                if (check.Refusal is { } refusal)
                    return new ChangeOutcome<FamilySplitId>.Refused(refusal.Field, refusal.Reason);
                if (PartNumber.From(into) is not { } number || !LinkFamilies.IsIdentifying(number))
                    return new ChangeOutcome<FamilySplitId>.Refused("into", $"“{into}” is no part number: it needs a digit, and at most two blanks.");
                var context = edit.Context;
                var members = await context.Families.Where(row => row.Id == family.Id || row.MergedIntoId == family.Id).Select(row => row.Id).ToListAsync(cancel);

                // A name that goes along must not lead back before the other family is looked for.
                var keys = form.Aliases.Select(name => PartNumber.From(name)?.MatchKey).OfType<string>().ToList();
                var aliases = await context.FamilyAliases.Where(row => members.Contains(row.FamilyId) && keys.Contains(row.MatchKey)).ToListAsync(cancel);
                var existed = await context.Families.AnyAsync(row => row.MatchKey == number.MatchKey, cancel) || await context.FamilyAliases.AnyAsync(row => row.MatchKey == number.MatchKey, cancel);
                if (aliases.Exists(row => row.MatchKey == number.MatchKey))
                    return new ChangeOutcome<FamilySplitId>.Refused("aliases", $"“{into}” becomes a family of its own; it cannot be one of its other names. Take the name away first.");
                var target = (await LinkFamilies.RunAsync(context, [number], cancel))[number.MatchKey];
                if (members.Contains(target))
                    return new ChangeOutcome<FamilySplitId>.Refused("into", $"“{into}” is this family.");

                var parts = await PartsAsync(context, members, form.Components, texts, cancel);
                var chosen = form.TopMarks.Select(TopMarkId.From).ToList();
                var marks = await context.TopMarks.Where(row => members.Contains(row.FamilyId) && chosen.Contains(row.Id)).ToListAsync(cancel);
                if (parts.Count + aliases.Count + marks.Count == 0)
                    return new ChangeOutcome<FamilySplitId>.Refused("components", $"Nothing of “{slug}” was chosen: no component, text, name or top mark of the form belongs to it.");
                var split = new FamilySplit
                {
                    Id = FamilySplitId.New(),
                    FromId = family.Id,
                    ToId = target,
                    Aliases = [.. aliases.Select(row => row.MatchKey)],
                    TopMarks = [.. marks.Select(row => row.Id)],
                    MadeFamily = !existed,
                    Note = note,
                    At = edit.Now,
                    Who = who.Name,
                };
                context.FamilySplits.Add(split);
                context.FamilySplitParts.AddRange(parts.Select(part => new FamilySplitPart { SplitId = split.Id, RevisionId = part.RevisionId, ComponentId = part.ComponentId, BeforeId = part.Before }));
                aliases.ForEach(row => row.FamilyId = target);
                marks.ForEach(row => row.FamilyId = target);
                foreach (var part in parts)
                    await LinkAsync(context, part, target, cancel);
                return new ChangeOutcome<FamilySplitId>.Done(split.Id);
            },
            cancellationToken);

    /// <summary>Takes a split back: every component, name and top mark that still is where the split put it goes back to where it was.</summary>
    public Task<ChangeOutcome<FamilySplitId>> UndoAsync(FamilySplitId id, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<FamilySplitId>(
            who,
            "undo split of family",
            async (edit, cancel) =>
            {
                ArgumentNullException.ThrowIfNull(who);
                var context = edit.Context;
                if (await context.FamilySplits.SingleOrDefaultAsync(row => row.Id == id, cancel) is not { } split)
                    return new ChangeOutcome<FamilySplitId>.NotFound($"There is no split {id}.");
                if (split.UndoneAt is not null)
                    return new ChangeOutcome<FamilySplitId>.Refused(null, $"This split was undone by {split.UndoneBy} already.");
                if (await context.FamilySplits.AnyAsync(row => row.FromId == split.ToId && row.UndoneAt == null && row.At > split.At, cancel))
                    return new ChangeOutcome<FamilySplitId>.Refused(null, "The family that it made was split again since; undo that split first.");

                var moved = await context.FamilySplitParts.Where(row => row.SplitId == id).ToListAsync(cancel);
                var links = await LinksAsync(context, split.ToId, cancel);
                foreach (var part in moved.Where(part => links.ContainsKey((part.RevisionId, part.ComponentId))))
                    await LinkAsync(context, new Part(part.RevisionId, part.ComponentId, split.ToId, links[(part.RevisionId, part.ComponentId)]), part.BeforeId, cancel);
                foreach (var alias in await context.FamilyAliases.Where(row => row.FamilyId == split.ToId && split.Aliases.Contains(row.MatchKey)).ToListAsync(cancel))
                    alias.FamilyId = split.FromId;
                foreach (var mark in await context.TopMarks.Where(row => row.FamilyId == split.ToId && split.TopMarks.Contains(row.Id)).ToListAsync(cancel))
                    mark.FamilyId = split.FromId;
                split.UndoneAt = edit.Now;
                split.UndoneBy = who.Name;
                return new ChangeOutcome<FamilySplitId>.Done(id);
            },
            saved => saved.Value,
            cancellationToken);

    // A published row keeps its own link; going back to that one needs no row beside it.
    private static async Task LinkAsync(CatalogueContext context, Part part, FamilyId target, CancellationToken cancellationToken)
    {
        if (part.IsDraft)
        {
            await context.Components.Where(row => row.RevisionId == part.RevisionId && row.Id == part.ComponentId).ExecuteUpdateAsync(set => set.SetProperty(row => row.FamilyId, target), cancellationToken);
            return;
        }

        var published = await context.Components.Where(row => row.RevisionId == part.RevisionId && row.Id == part.ComponentId).Select(row => row.FamilyId).SingleAsync(cancellationToken);
        var beside = await context.FamilyMoves.SingleOrDefaultAsync(row => row.RevisionId == part.RevisionId && row.ComponentId == part.ComponentId, cancellationToken);
        if (published == target)
        {
            if (beside is not null)
                context.Remove(beside);
        }
        else if (beside is not null)
        {
            beside.FamilyId = target;
        }
        else
        {
            context.FamilyMoves.Add(new FamilyMove { RevisionId = part.RevisionId, ComponentId = part.ComponentId, FamilyId = target });
        }
    }

    private static async Task<List<Part>> PartsAsync(
        CatalogueContext context, List<FamilyId> members, IReadOnlyList<Guid> ids, IReadOnlyList<string> texts, CancellationToken cancellationToken)
    {
        var chosen = ids.Select(ComponentId.From).ToHashSet();
        var wanted = texts.ToHashSet(StringComparer.OrdinalIgnoreCase);
        var linked = await context.FamilyLinks
            .Where(row => members.Contains(row.LinkedFamilyId))
            .Join(context.Components, row => new { row.RevisionId, Id = row.ComponentId }, row => new { row.RevisionId, row.Id }, (link, component) => new { Link = link, component.MarkingAsRead, component.PartNumber })
            .Join(context.Revisions, row => row.Link.RevisionId, row => row.Id, (row, revision) => new { row.Link, row.MarkingAsRead, row.PartNumber, revision.State })
            .ToListAsync(cancellationToken);
        return
        [
            .. linked
                .Where(row => chosen.Contains(row.Link.ComponentId) || (row.MarkingAsRead is { } marking && wanted.Contains(marking.Trim())) || (row.PartNumber is { } number && wanted.Contains(number.Trim())))
                .Select(row => new Part(row.Link.RevisionId, row.Link.ComponentId, row.Link.LinkedFamilyId, row.State is RevisionState.Draft or RevisionState.InReview)),
        ];
    }

    private static async Task<Dictionary<(RevisionId, ComponentId), bool>> LinksAsync(CatalogueContext context, FamilyId family, CancellationToken cancellationToken) =>
        (await context.FamilyLinks
            .Where(row => row.LinkedFamilyId == family)
            .Join(context.Revisions, row => row.RevisionId, row => row.Id, (link, revision) => new { link.RevisionId, link.ComponentId, revision.State })
            .ToListAsync(cancellationToken))
        .ToDictionary(row => (row.RevisionId, row.ComponentId), row => row.State is RevisionState.Draft or RevisionState.InReview);
}
