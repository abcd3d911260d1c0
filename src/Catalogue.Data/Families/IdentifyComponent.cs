using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Text;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Families;

/// <summary>Says of which family a component is. The marking stays as read; the part takes the family's class where it has none, and on demand its ratings.</summary>
/// <param name="contexts">Makes the context of look-ups.</param>
/// <param name="drafts">The door to drafts.</param>
/// <param name="candidates">Tells how its marking leads to the family.</param>
public sealed class IdentifyComponent(IDbContextFactory<CatalogueContext> contexts, DraftEditing drafts, ComponentCandidatesQuery candidates)
{
    /// <summary>Which family, and what to take of it.</summary>
    /// <param name="Family">The family's address.</param>
    /// <param name="Evidence">How it is known; where null, decoded if a top mark of the family was read, else inferred.</param>
    /// <param name="TakesRatings">True to take over the ratings known for the family that the part has none of.</param>
    public sealed record Request(string? Family, Evidence? Evidence, bool TakesRatings);

    /// <summary>What was said.</summary>
    /// <param name="Id">The component.</param>
    /// <param name="Family">The family's address, after merges.</param>
    /// <param name="Evidence">How it is known.</param>
    /// <param name="FunctionClass">The component's class now, or null.</param>
    /// <param name="Ratings">The ratings that it took over.</param>
    public sealed record Identified(ComponentId Id, string Family, Evidence Evidence, FunctionClass? FunctionClass, IReadOnlyList<KnownRating> Ratings);

    /// <summary>Runs the change.</summary>
    /// <param name="id">The component.</param>
    /// <param name="request">Which family.</param>
    /// <param name="who">Who says so.</param>
    /// <param name="cancellationToken">Cancels the change as a whole.</param>
    public async Task<ChangeOutcome<Identified>> RunAsync(ComponentId id, Request request, Editor who, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var slug = PlainText.Clean(request.Family);
        var named = await context.Families.Where(row => row.Slug == slug).Select(row => row.MergedIntoId ?? row.Id).ToListAsync(cancellationToken);
        if (named is not [var target])
            return new ChangeOutcome<Identified>.Refused("family", FamilyEditing.Missing(request.Family));
        if (await FindTeardown.OfAsync<BoardComponent, ComponentId>(contexts, id, cancellationToken) is not { } teardown)
            return Missing(id);
        var candidate = (await candidates.RunAsync(id, cancellationToken))?.Offers.Select(offer => offer.Found.Candidate).FirstOrDefault(one => one.Family.Id == target);
        var evidence = request.Evidence ?? (candidate is { Name.Kind: FamilyNameKind.TopMark } ? Evidence.Decoded : Evidence.Inferred);
        return await drafts.EditAsync<Identified>(
            teardown,
            who,
            "identify component",
            (draft, cancel) => LinkAsync(draft, id, target, evidence, candidate?.Family.FunctionClass, request.TakesRatings, cancel),
            done => done.Id.Value,
            cancellationToken);
    }

    /// <summary>Opens the family of a number that was read on a component, or finds it, and says that the component is of it.</summary>
    /// <param name="id">The component. It takes the number as its part number where it has none.</param>
    /// <param name="number">The whole number.</param>
    /// <param name="evidence">How it is known; read on the part where null.</param>
    /// <param name="who">Who says so.</param>
    /// <param name="cancellationToken">Cancels the change as a whole.</param>
    public async Task<ChangeOutcome<Identified>> OpenAsync(ComponentId id, string? number, Evidence? evidence, Editor who, CancellationToken cancellationToken = default)
    {
        if (Read(number) is not { } read)
            return new ChangeOutcome<Identified>.Refused("part_number", NoNumber(number));
        if (await FindTeardown.OfAsync<BoardComponent, ComponentId>(contexts, id, cancellationToken) is not { } teardown)
            return Missing(id);
        return await drafts.EditAsync<Identified>(
            teardown,
            who,
            "open family for component",
            async (draft, cancel) =>
            {
                if (await draft.Context.Components.SingleOrDefaultAsync(row => row.RevisionId == draft.Revision.Id && row.Id == id, cancel) is not { } component)
                    return Missing(id);
                var family = (await LinkFamilies.RunAsync(draft.Context, [read], cancel))[read.MatchKey];
                component.PartNumber ??= PlainText.Clean(number);
                return await LinkAsync(draft, id, family, evidence ?? Evidence.ReadOnPart, null, takesRatings: false, cancel);
            },
            done => done.Id.Value,
            cancellationToken);
    }

    /// <summary>The number that a family may be opened for, or null where the text is none, or not all of it was read.</summary>
    internal static PartNumber? Read(string? text) =>
        PlainText.Clean(text) is { Length: <= PartFamily.MaxNameLength } clean && PartNumber.From(clean) is { } number && LinkFamilies.IsIdentifying(number)
        && !MarkingFold.Line(clean).Contains(MarkingFold.Unreadable, StringComparison.Ordinal)
            ? number
            : null;

    /// <summary>Why it is none.</summary>
    internal static string NoNumber(string? text) =>
        $"“{text}” is not the whole number of a part: it has a digit, every character of it was read, at most two blanks and at most {PartFamily.MaxNameLength} characters.";

    private static async Task<ChangeOutcome<Identified>> LinkAsync(
        Draft draft, ComponentId id, FamilyId target, Evidence evidence, FunctionClass? seenAs, bool takesRatings, CancellationToken cancellationToken)
    {
        var context = draft.Context;
        if (await context.Components.SingleOrDefaultAsync(row => row.RevisionId == draft.Revision.Id && row.Id == id, cancellationToken) is not { } component)
            return Missing(id);
        var family = await context.Families.AsNoTracking().SingleAsync(row => row.Id == target, cancellationToken);
        component.FamilyId = target;
        component.FamilyEvidence = evidence;
        component.FunctionClass ??= family.FunctionClass ?? seenAs;
        IReadOnlyList<KnownRating> taken = [];
        if (takesRatings && (await KnownRatings.OfAsync(context, [target], id, cancellationToken)).TryGetValue(target, out var known))
        {
            taken = KnownRating.Missing(known, await context.Ratings.AsNoTracking().Where(row => row.RevisionId == draft.Revision.Id && row.ComponentId == id).ToListAsync(cancellationToken));
            context.Ratings.AddRange(taken.Select(rating => rating.Of(component)));
        }

        return new ChangeOutcome<Identified>.Done(new Identified(id, family.Slug, evidence, component.FunctionClass, taken));
    }

    private static ChangeOutcome<Identified> Missing(ComponentId id) => new ChangeOutcome<Identified>.NotFound($"There is no component {id.Value} in a draft or published teardown.");
}
