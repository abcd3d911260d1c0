using Catalogue.Data.Teardowns;
using Catalogue.Domain.Families;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>
/// Declares one family to be another, and takes that back. Nothing is moved: the family that goes keeps its names, ratings and components, its address leads
/// to the other, and everything that asks over teardowns counts them there. So undoing it restores every link.
/// </summary>
/// <param name="editing">The door to families.</param>
public sealed class MergeFamilies(FamilyEditing editing)
{
    /// <summary>Merges the family at one address into that at another.</summary>
    public Task<ChangeOutcome<FamilyMergeId>> RunAsync(string slug, string? into, string? note, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<FamilyMergeId>(
            slug,
            who,
            "merge families",
            async (edit, family, cancel) =>
            {
                ArgumentNullException.ThrowIfNull(who);
                var check = new FormCheck();
                var why = check.May(note, "note", FamilyRelation.MaxNoteLength);
                if (check.Refusal is { } refusal)
                    return new ChangeOutcome<FamilyMergeId>.Refused(refusal.Field, refusal.Reason);
                if (await edit.FindAsync(into, cancel) is not { } target)
                    return new ChangeOutcome<FamilyMergeId>.Refused("into", FamilyEditing.Missing(into));
                if (target.Id == family.Id)
                    return new ChangeOutcome<FamilyMergeId>.Refused("into", "A family cannot be merged into itself.");
                if (target.MergedIntoId is { } further)
                {
                    var name = await edit.Context.Families.Where(row => row.Id == further).Select(row => row.Slug).SingleAsync(cancel);
                    return new ChangeOutcome<FamilyMergeId>.Refused("into", $"“{into}” was merged into “{name}” itself; merge into that one.");
                }

                // Redirects stay one step long: what had gone into this family is led on.
                var followers = await edit.Context.Families.Where(row => row.MergedIntoId == family.Id).OrderBy(row => row.Id).ToListAsync(cancel);
                foreach (var follower in followers)
                    follower.MergedIntoId = target.Id;
                family.MergedIntoId = target.Id;
                var merge = new FamilyMerge
                {
                    Id = FamilyMergeId.New(),
                    FromId = family.Id,
                    IntoId = target.Id,
                    Followers = [.. followers.Select(follower => follower.Id)],
                    Note = why,
                    At = edit.Now,
                    Who = who.Name,
                };
                edit.Context.FamilyMerges.Add(merge);
                return new ChangeOutcome<FamilyMergeId>.Done(merge.Id);
            },
            cancellationToken);

    /// <summary>Takes a merge back. Refused while a later merge of the target stands on it: that one is undone first.</summary>
    public Task<ChangeOutcome<FamilyMergeId>> UndoAsync(FamilyMergeId id, Editor who, CancellationToken cancellationToken = default) =>
        editing.EditAsync<FamilyMergeId>(
            who,
            "undo merge of families",
            async (edit, cancel) =>
            {
                ArgumentNullException.ThrowIfNull(who);
                if (await edit.Context.FamilyMerges.SingleOrDefaultAsync(row => row.Id == id, cancel) is not { } merge)
                    return new ChangeOutcome<FamilyMergeId>.NotFound($"There is no merge {id}.");
                if (merge.UndoneAt is not null)
                    return new ChangeOutcome<FamilyMergeId>.Refused(null, $"This merge was undone by {merge.UndoneBy} already.");
                var family = await edit.Context.Families.SingleAsync(row => row.Id == merge.FromId, cancel);
                if (family.MergedIntoId != merge.IntoId)
                {
                    var later = await edit.Context.FamilyMerges.Where(row => row.FromId == merge.IntoId && row.UndoneAt == null).OrderByDescending(row => row.At).Select(row => row.IntoId).FirstAsync(cancel);
                    var name = await edit.Context.Families.Where(row => row.Id == later).Select(row => row.Slug).SingleAsync(cancel);
                    return new ChangeOutcome<FamilyMergeId>.Refused(null, $"The family it went into was merged into “{name}” since; undo that merge first.");
                }

                family.MergedIntoId = null;
                foreach (var follower in await edit.Context.Families.Where(row => merge.Followers.Contains(row.Id) && row.MergedIntoId == merge.IntoId).ToListAsync(cancel))
                    follower.MergedIntoId = family.Id;
                merge.UndoneAt = edit.Now;
                merge.UndoneBy = who.Name;
                return new ChangeOutcome<FamilyMergeId>.Done(id);
            },
            saved => saved.Value,
            cancellationToken);
}
