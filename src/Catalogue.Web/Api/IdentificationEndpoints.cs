using System.ComponentModel;
using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Quantities;
using Catalogue.Web.Accounts;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Api;

/// <summary>Which family a recorded component may belong to, and saying so.</summary>
internal static class IdentificationEndpoints
{
    /// <summary>A family that a component may belong to, and what taking it would bring.</summary>
    public sealed record ComponentCandidateJson : DecodeMarkingEndpoint.CandidateJson
    {
        /// <summary>Ratings that may be taken over.</summary>
        [Description("Ratings known for the family that the component has none of; identify takes them over with take_ratings.")]
        public required IReadOnlyList<RatingJson> Ratings { get; init; }

        /// <summary>What that would change.</summary>
        [Description("The figures of the draft that the family's class and these ratings would change.")]
        public required IReadOnlyList<FigureChangeJson> WouldChange { get; init; }
    }

    /// <summary>A rating known for a family.</summary>
    public sealed record RatingJson(RatingKind Kind, double Low, double Nominal, double High, Unit Unit, string? Condition, Evidence Evidence, string Source);

    /// <summary>A figure that would come out differently.</summary>
    public sealed record FigureChangeJson(
        [property: Description("The figure's code, such as fuse_headroom.")] string Rule,
        [property: Description("The component it is about, or null.")] Guid? Component,
        [property: Description("The rail it is about, or null.")] Guid? Rail,
        [property: Description("What that is called.")] string Subject,
        [property: Description("The verdict now; unknown where an input is missing, null where the figure does not apply.")] Verdict? From,
        [property: Description("The verdict then; null where the figure would not apply any more.")] Verdict? To,
        [property: Description("The value now, or null where it cannot be computed.")] double? NominalFrom,
        [property: Description("The value then, or null where it could not be computed.")] double? NominalTo,
        Unit Unit,
        [property: Description("True where the figure cannot be computed now and could be then.")] bool BecomesComputable);

    /// <summary>The candidates of a component.</summary>
    public sealed record ComponentCandidates(
        [property: Description("What was looked for: the marking as read, or the part number; null where nothing was read.")] string? Text,
        [property: Description("The likeliest families first, at most 20; empty where none comes near.")] IReadOnlyList<ComponentCandidateJson> Candidates,
        [property: Description("The slug of the one that may be taken: probable enough, read exactly, and no other near it. Else null.")] string? Take,
        [property: Description("The component's function class, or what its role was understood as, or null.")] FunctionClass? FunctionClass,
        [property: Description("What is odd about the text.")] IReadOnlyList<string> Warnings);

    /// <summary>Which family a component is of.</summary>
    public sealed record IdentifyJson(
        [property: Description("The slug of the family.")] string? Family,
        [property: Description("How it is known; where left out, decoded if a top mark of the family was read, else inferred.")] Evidence? Evidence,
        [property: Description("True to take over the ratings known for the family that the component has none of.")] bool? TakeRatings);

    /// <summary>What was said of a component.</summary>
    public sealed record IdentifiedJson(Guid Component, string Family, Evidence FamilyEvidence, FunctionClass? FunctionClass, IReadOnlyList<RatingJson> Ratings);

    public static void MapIdentification(this RouteGroupBuilder api)
    {
        api.MapGet("components/{id:guid}/candidates", CandidatesAsync)
            .RequireAuthorization(Policies.AnyToken)
            .WithTags("families")
            .WithSummary("The families that a component may belong to, and which figures each would change.")
            .WithDescription("As decode/marking, with all that is recorded of the component; its own unit and its kin do not count as seen. Nothing is stored.")
            .Produces<ComponentCandidates>();
        api.MapPost("components/{id:guid}/identify", IdentifyAsync)
            .RequireAuthorization(Policies.WriteToken)
            .WithTags("families")
            .WithSummary("Says of which family a component is, in the draft; the marking stays as read.")
            .Produces<IdentifiedJson>()
            .ProducesProblem(StatusCodes.Status404NotFound)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> CandidatesAsync(Guid id, ComponentCandidatesQuery query, CancellationToken cancel)
    {
        if (await query.RunAsync(ComponentId.From(id), cancel) is not { } answer)
            return ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no component {id}.");
        var take = MarkingCandidates.ToTake([.. answer.Offers.Select(offer => offer.Found.Candidate)]) is null ? null : answer.Offers[0].Found.Slug;
        return TypedResults.Ok(new ComponentCandidates(
            answer.Question?.Marking, [.. answer.Offers.Select(Json)], take, answer.Question?.FunctionClass, answer.Question is { } question ? MarkingRemarks.Of(question.Marking) : ["Neither a letter nor a digit was read on this component."]));
    }

    private static async Task<IResult> IdentifyAsync(Guid id, [FromBody] IdentifyJson body, HttpContext http, IdentifyComponent identify, CancellationToken cancel) =>
        (await identify.RunAsync(ComponentId.From(id), new IdentifyComponent.Request(body.Family, body.Evidence, body.TakeRatings ?? false), http.User.ToEditor(), cancel))
            .ToResult(done => TypedResults.Ok(new IdentifiedJson(done.Id.Value, done.Family, done.Evidence, done.FunctionClass, [.. done.Ratings.Select(Json)])));

    private static ComponentCandidateJson Json(ComponentCandidatesQuery.Offer offer) => new()
    {
        Family = offer.Found.Slug,
        Name = offer.Found.Name,
        Score = Math.Round(offer.Found.Candidate.Score, 4),
        Similarity = Math.Round(offer.Found.Candidate.Similarity, 4),
        IsTied = offer.Found.Candidate.IsTied,
        Reasons = offer.Found.Candidate.Reasons,
        Ratings = [.. offer.Ratings.Select(Json)],
        WouldChange =
        [
            .. offer.WouldChange.Select(change => new FigureChangeJson(
                change.Rule, change.Component?.Value, change.Rail?.Value, change.Subject, change.From, change.To, change.ValueFrom?.Nominal, change.ValueTo?.Nominal, change.Unit, change.BecomesComputable)),
        ],
    };

    private static RatingJson Json(KnownRating rating) =>
        new(rating.Kind, rating.Value.Low, rating.Value.Nominal, rating.Value.High, rating.Kind.Unit(), rating.Condition, rating.Evidence, rating.Source);
}
