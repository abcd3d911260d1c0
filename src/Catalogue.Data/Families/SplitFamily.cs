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
    /// <summary>The most texts of one split.</summary>
    public const int MaxTexts = 50;

    private sealed record Part(RevisionId RevisionId, ComponentId ComponentId, TeardownId TeardownId, FamilyId Before, bool IsDraft);

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
                check.List(form.Texts, "texts", MaxTexts, BoardComponent.MaxMarkingLength);
                if (check.Refusal is { } refusal)
                    return new ChangeOutcome<FamilySplitId>.Refused(refusal.Field, refusal.Reason);
                if (PartNumber.From(into) is not { } number || !LinkFamilies.IsIdentifying(number))
                    return new ChangeOutcome<FamilySplitId>.Refused("into", $"“{into}” is no part number: it needs a digit, and at most two blanks.");
                var context = edit.Context;
                var members = await edit.Members(family).ToListAsync(cancel);

                // A name that goes along must not lead back before the other family is looked for.
                var keys = form.Aliases.Select(name => PartNumber.From(name)?.MatchKey).OfType<string>().ToList();
                var aliases = await context.FamilyAliases.Where(row => members.Contains(row.FamilyId) && keys.Contains(row.MatchKey)).OrderBy(row => row.MatchKey).ToListAsync(cancel);
                var own = await context.Families.SingleOrDefaultAsync(row => row.MatchKey == number.MatchKey, cancel);
                var existed = own is not null || await context.FamilyAliases.AnyAsync(row => row.MatchKey == number.MatchKey, cancel);
                if (aliases.Exists(row => row.MatchKey == number.MatchKey))
                    return new ChangeOutcome<FamilySplitId>.Refused("aliases", $"“{into}” becomes a family of its own; it cannot be one of its other names. Take the name away first.");
                if (own?.MergedIntoId == family.Id)
                    return new ChangeOutcome<FamilySplitId>.Refused("into", $"“{own.Slug}” was merged into this family; undo that merge first.");
                var target = (await LinkFamilies.RunAsync(context, [number], cancel))[number.MatchKey];
                if (members.Contains(target))
                    return new ChangeOutcome<FamilySplitId>.Refused("into", $"“{into}” is this family.");

                var parts = await PartsAsync(context, members, form, cancel);
                if (parts.Exists(part => !edit.Held.Contains(part.TeardownId)))
                    return new ChangeOutcome<FamilySplitId>.Stale("A teardown with such a part was saved at the same moment. Look at the parts again, and split once more.");
                var chosen = form.TopMarks.Select(TopMarkId.From).ToList();
                var marks = await context.TopMarks.Where(row => members.Contains(row.FamilyId) && chosen.Contains(row.Id)).OrderBy(row => row.Id).ToListAsync(cancel);
                if (parts.Count + aliases.Count + marks.Count == 0)
                    return new ChangeOutcome<FamilySplitId>.Refused("components", $"Nothing of “{slug}” was chosen: no component, text, name or top mark of the form belongs to it.");
                var split = new FamilySplit
                {
                    Id = FamilySplitId.New(),
                    FromId = family.Id,
                    ToId = target,
                    Aliases = [.. aliases.Select(row => row.MatchKey)],
                    AliasesBefore = [.. aliases.Select(row => row.FamilyId)],
                    TopMarks = [.. marks.Select(row => row.Id)],
                    TopMarksBefore = [.. marks.Select(row => row.FamilyId)],
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
            cancellationToken,
            async (context, cancel) =>
            {
                ArgumentNullException.ThrowIfNull(form);
                var members = await context.Families
                    .Where(row => context.Families.Any(named => named.Slug == slug && (row.Id == named.Id || row.MergedIntoId == named.Id)))
                    .Select(row => row.Id)
                    .ToListAsync(cancel);
                return (await PartsAsync(context, members, form, cancel)).Select(part => part.TeardownId).ToHashSet();
            });

    /// <summary>
    /// Takes a split back: every component, name and top mark that still is where the split put it goes back to where it was, in drafts that were opened since
    /// too. A family that the split made and that is left empty leads back. Refused while a later split stands on this one.
    /// </summary>
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
                if (await LaterAsync(context, split, cancel) is { } later)
                    return new ChangeOutcome<FamilySplitId>.Refused(null, $"Some of what it moved was split off to “{later}” since; undo that split first.");

                var before = (await context.FamilySplitParts.Where(row => row.SplitId == id).ToListAsync(cancel)).ToLookup(row => row.ComponentId);
                var ids = before.Select(rows => rows.Key).ToList();
                var linked = await LinkedAsync(context, context.FamilyLinks.Where(row => row.LinkedFamilyId == split.ToId && ids.Contains(row.ComponentId)), cancel);
                if (linked.Exists(row => !edit.Held.Contains(row.Part.TeardownId)))
                    return new ChangeOutcome<FamilySplitId>.Stale("A teardown with such a part was saved at the same moment. Undo once more.");
                foreach (var (part, _, _) in linked)
                {
                    // A revision that was opened since took the part along as it was.
                    var was = before[part.ComponentId].FirstOrDefault(row => row.RevisionId == part.RevisionId) ?? before[part.ComponentId].First();
                    await LinkAsync(context, part, was.BeforeId, cancel);
                }

                foreach (var alias in await context.FamilyAliases.Where(row => row.FamilyId == split.ToId && split.Aliases.Contains(row.MatchKey)).ToListAsync(cancel))
                    alias.FamilyId = split.AliasesBefore[Array.IndexOf(split.Aliases, alias.MatchKey)];
                foreach (var mark in await context.TopMarks.Where(row => row.FamilyId == split.ToId && split.TopMarks.Contains(row.Id)).ToListAsync(cancel))
                    mark.FamilyId = split.TopMarksBefore[Array.IndexOf(split.TopMarks, mark.Id)];
                split.UndoneAt = edit.Now;
                split.UndoneBy = who.Name;
                await context.SaveChangesAsync(cancel);
                if (split.MadeFamily)
                    await LeadBackAsync(edit, split, who, cancel);
                return new ChangeOutcome<FamilySplitId>.Done(id);
            },
            saved => saved.Value,
            cancellationToken,
            async (context, cancel) => (await context.FamilySplitParts
                .Where(row => row.SplitId == id)
                .Join(context.Revisions, row => row.RevisionId, row => row.Id, (_, revision) => revision.TeardownId)
                .Distinct()
                .ToListAsync(cancel)).ToHashSet());

    // The address of the family that a later split took some of the same to, or null.
    private static async Task<string?> LaterAsync(CatalogueContext context, FamilySplit split, CancellationToken cancellationToken)
    {
        var standing = await context.FamilySplits.AsNoTracking().Where(row => row.UndoneAt == null && row.At >= split.At && row.Id != split.Id).ToListAsync(cancellationToken);
        var later = standing.Where(row => row.At > split.At || row.Id.Value > split.Id.Value).ToList();
        var ids = later.ConvertAll(row => row.Id);
        var touched = await context.FamilySplitParts
            .Where(row => ids.Contains(row.SplitId) && context.FamilySplitParts.Any(own => own.SplitId == split.Id && own.ComponentId == row.ComponentId))
            .Select(row => row.SplitId)
            .Distinct()
            .ToListAsync(cancellationToken);
        return later.Where(row => touched.Contains(row.Id) || row.Aliases.Intersect(split.Aliases).Any() || row.TopMarks.Intersect(split.TopMarks).Any()).MaxBy(row => row.At) is { } last
            ? await context.Families.Where(row => row.Id == last.ToId).Select(row => row.Slug).SingleAsync(cancellationToken)
            : null;
    }

    private static async Task LeadBackAsync(FamilyEditing.Change edit, FamilySplit split, Editor who, CancellationToken cancellationToken)
    {
        var context = edit.Context;
        var made = await context.Families.SingleAsync(row => row.Id == split.ToId, cancellationToken);
        if (made.MergedIntoId is not null
            || await context.Families.AnyAsync(row => row.MergedIntoId == made.Id, cancellationToken)
            || await context.FamilyLinks.AnyAsync(row => row.LinkedFamilyId == made.Id, cancellationToken)
            || await context.FamilyAliases.AnyAsync(row => row.FamilyId == made.Id, cancellationToken)
            || await context.TopMarks.AnyAsync(row => row.FamilyId == made.Id, cancellationToken)
            || await context.FamilyRatings.AnyAsync(row => row.FamilyId == made.Id, cancellationToken))
        {
            return;
        }

        var into = await context.Families.Where(row => row.Id == split.FromId).Select(row => row.MergedIntoId ?? row.Id).SingleAsync(cancellationToken);
        made.MergedIntoId = into;
        context.FamilyMerges.Add(new FamilyMerge
        {
            Id = FamilyMergeId.New(),
            FromId = made.Id,
            IntoId = into,
            Followers = [],
            Note = "The split that made it was undone.",
            At = edit.Now,
            Who = who.Name,
        });
    }

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

    private static async Task<List<Part>> PartsAsync(CatalogueContext context, List<FamilyId> members, SplitForm form, CancellationToken cancellationToken)
    {
        var chosen = form.Components.Select(ComponentId.From).ToHashSet();
        var wanted = form.Texts.Select(text => text.Trim()).Where(text => text.Length > 0).ToHashSet(StringComparer.OrdinalIgnoreCase);
        if (chosen.Count + wanted.Count == 0)
            return [];
        var linked = await LinkedAsync(context, context.FamilyLinks.Where(row => members.Contains(row.LinkedFamilyId)), cancellationToken);
        return
        [
            .. linked
                .Where(row => chosen.Contains(row.Part.ComponentId) || (row.Marking is { } marking && wanted.Contains(marking.Trim())) || (row.PartNumber is { } number && wanted.Contains(number.Trim())))
                .Select(row => row.Part),
        ];
    }

    private static async Task<List<(Part Part, string? Marking, string? PartNumber)>> LinkedAsync(CatalogueContext context, IQueryable<FamilyLink> links, CancellationToken cancellationToken)
    {
        var rows = await links
            .Join(context.Components, row => new { row.RevisionId, Id = row.ComponentId }, row => new { row.RevisionId, row.Id }, (link, component) => new { Link = link, component.MarkingAsRead, component.PartNumber })
            .Join(context.Revisions, row => row.Link.RevisionId, row => row.Id, (row, revision) => new { row.Link, row.MarkingAsRead, row.PartNumber, revision.TeardownId, revision.State })
            .ToListAsync(cancellationToken);
        return rows.ConvertAll(row => (
            new Part(row.Link.RevisionId, row.Link.ComponentId, row.TeardownId, row.Link.LinkedFamilyId, row.State is RevisionState.Draft or RevisionState.InReview), row.MarkingAsRead, row.PartNumber));
    }
}
