using System.ComponentModel;
using System.Text.Json;
using Catalogue.Data.Components;
using Catalogue.Data.Families;
using Catalogue.Data.Makers;
using Catalogue.Domain.Families;
using Catalogue.Domain.Quantities;
using Catalogue.Web.Accounts;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Options;

namespace Catalogue.Web.Api;

/// <summary>What is known of part families: changing it, merging and splitting them, and taking that back.</summary>
internal static class FamilyEndpoints
{
    /// <summary>A family that was changed.</summary>
    /// <param name="Family">Its slug.</param>
    public sealed record FamilySaved([property: Description("The slug of the family.")] string Family);

    /// <summary>Another number of a family.</summary>
    /// <param name="Name">The number as written.</param>
    /// <param name="Kind">What kind of number it is.</param>
    public sealed record AliasJson(
        [property: Description("The number as written.")] string? Name,
        [property: Description("ordering_variant or other_number; other_number where left out.")] FamilyNameKind? Kind);

    /// <summary>A maker of a family.</summary>
    /// <param name="Maker">Its name.</param>
    public sealed record MakerOfFamily([property: Description("The maker's name or an alias of it; a new one is opened.")] string? Maker);

    /// <summary>A name of a maker.</summary>
    /// <param name="Name">The name.</param>
    public sealed record MakerNameJson([property: Description("The name, at most 120 characters.")] string? Name);

    /// <summary>How two families stand to each other.</summary>
    /// <param name="Family">The other family's slug.</param>
    /// <param name="Kind">The word.</param>
    /// <param name="Note">Why.</param>
    public sealed record RelationJson(
        [property: Description("The other family's slug.")] string? Family,
        [property: Description("second_source, look_alike or unrelated.")] FamilyRelationKind? Kind,
        [property: Description("Why.")] string? Note);

    /// <summary>Where a family goes.</summary>
    /// <param name="Into">The slug of the family that it goes into.</param>
    /// <param name="Note">Why.</param>
    public sealed record MergeJson([property: Description("The slug of the family that it goes into.")] string? Into, [property: Description("Why.")] string? Note);

    /// <summary>The id of what was added or done.</summary>
    /// <param name="Id">Its id; a merge or a split is undone by it.</param>
    public sealed record Done(Guid Id);

    /// <summary>Parts of one look that no family is known for.</summary>
    public sealed record UnidentifiedJson(
        [property: Description("Names the look; resolve takes it.")] string Key,
        string Marking,
        string? Package,
        int Teardowns,
        IReadOnlyList<UnidentifiedPart> Components,
        IReadOnlyList<string> Makers,
        IReadOnlyList<string> Roles,
        IReadOnlyList<DecodeMarkingEndpoint.CandidateJson> Candidates,
        [property: Description("Why none of them was taken.")] string Why,
        [property: Description("The number that a family could be opened for; null where none was read whole.")] string? PartNumber);

    /// <summary>One of the parts.</summary>
    public sealed record UnidentifiedPart(Guid Component, string Teardown, string Name);

    /// <summary>A page of the worklist.</summary>
    public sealed record Worklist(IReadOnlyList<UnidentifiedJson> Items, int Total, [property: Description("The address of the next page, or null.")] string? Next);

    /// <summary>Which family all parts of a look are of.</summary>
    public sealed record ResolveJson(
        [property: Description("The look, as the worklist gives it.")] string? Key,
        [property: Description("The slug of the family; or give part_number.")] string? Family,
        [property: Description("How it is known; where left out, decoded if a top mark was read, else inferred; read on the part for a part_number.")] Evidence? Evidence,
        [property: Description("A whole number read on the parts; its family is opened where there is none.")] string? PartNumber);

    /// <summary>What came of it, teardown by teardown.</summary>
    public sealed record Resolved(IReadOnlyList<IdentifyParts.Line> Teardowns);

    public static void MapFamilies(this RouteGroupBuilder api)
    {
        var read = api.MapGroup("").RequireAuthorization(Policies.AnyToken).WithTags("families");
        read.MapGet("worklists/unidentified", UnidentifiedAsync)
            .WithSummary("The parts that no family is known for, grouped by look: same marking, same package.").Produces<Worklist>();
        var write = api.MapGroup("").RequireAuthorization(Policies.WriteToken).WithTags("families");
        write.MapPatch("families/{slug}", AmendAsync)
            .WithSummary("Changes the facts of a part family by a JSON merge patch (RFC 7396).")
            .WithDescription("GET families/{slug}/designs says which published pages rest on it. Published pages keep what they printed.")
            .Accepts<FamilyForm>("application/json", "application/merge-patch+json")
            .Produces<FamilySaved>();
        write.MapPost("families/{slug}/aliases", async (string slug, [FromBody] AliasJson body, HttpContext http, FamilyChanges changes, CancellationToken cancel) =>
                (await changes.AddAliasAsync(slug, body.Name, body.Kind ?? FamilyNameKind.OtherNumber, http.User.ToEditor(), cancel)).ToResult(_ => Created(slug)))
            .WithSummary("Adds another number that joins: part numbers with its match key belong to the family from then on.").Produces<FamilySaved>(StatusCodes.Status201Created);
        write.MapDelete("families/{slug}/aliases/{name}", async (string slug, string name, HttpContext http, FamilyChanges changes, CancellationToken cancel) =>
                (await changes.RemoveAliasAsync(slug, name, http.User.ToEditor(), cancel)).ToResult(_ => TypedResults.Ok(new FamilySaved(slug))))
            .WithSummary("Takes such a number away; components that it led here stay.").Produces<FamilySaved>();
        write.MapPost("families/{slug}/top_marks", async (string slug, [FromBody] TopMarkForm body, HttpContext http, FamilyChanges changes, CancellationToken cancel) =>
                (await changes.AddTopMarkAsync(slug, body, http.User.ToEditor(), cancel)).ToResult(id => Created(id.Value)))
            .WithSummary("Adds a short code that stands on the part; families may share it.").Produces<Done>(StatusCodes.Status201Created);
        write.MapDelete("families/{slug}/top_marks/{id:guid}", async (string slug, Guid id, HttpContext http, FamilyChanges changes, CancellationToken cancel) =>
                (await changes.RemoveTopMarkAsync(slug, TopMarkId.From(id), http.User.ToEditor(), cancel)).ToResult(_ => TypedResults.Ok(new FamilySaved(slug))))
            .WithSummary("Takes a top mark away.").Produces<FamilySaved>();
        write.MapPost("families/{slug}/ratings", async (string slug, [FromBody] RatingForm body, HttpContext http, FamilyChanges changes, CancellationToken cancel) =>
                (await changes.AddRatingAsync(slug, body, http.User.ToEditor(), cancel)).ToResult(id => Created(id.Value)))
            .WithSummary("Adds a typical rating; figures take the ratings of the component in hand, never these.").Produces<Done>(StatusCodes.Status201Created);
        write.MapDelete("families/{slug}/ratings/{id:guid}", async (string slug, Guid id, HttpContext http, FamilyChanges changes, CancellationToken cancel) =>
                (await changes.RemoveRatingAsync(slug, FamilyRatingId.From(id), http.User.ToEditor(), cancel)).ToResult(_ => TypedResults.Ok(new FamilySaved(slug))))
            .WithSummary("Takes a typical rating away.").Produces<FamilySaved>();
        write.MapPost("families/{slug}/makers", async (string slug, [FromBody] MakerOfFamily body, HttpContext http, FamilyChanges changes, CancellationToken cancel) =>
                (await changes.AddMakerAsync(slug, body.Maker, http.User.ToEditor(), cancel)).ToResult(id => Created(id.Value)))
            .WithSummary("Adds a maker of the family.").Produces<Done>(StatusCodes.Status201Created);
        write.MapDelete("families/{slug}/makers/{maker}", async (string slug, string maker, HttpContext http, FamilyChanges changes, CancellationToken cancel) =>
                (await changes.RemoveMakerAsync(slug, maker, http.User.ToEditor(), cancel)).ToResult(_ => TypedResults.Ok(new FamilySaved(slug))))
            .WithSummary("Takes a maker away from the family, by its slug, its name or an alias of it.").Produces<FamilySaved>();
        write.MapPost("families/{slug}/relations", async (string slug, [FromBody] RelationJson body, HttpContext http, FamilyChanges changes, CancellationToken cancel) =>
                (await changes.RelateAsync(slug, body.Family, body.Kind, body.Note, http.User.ToEditor(), cancel)).ToResult(_ => Created(slug)))
            .WithSummary("Says how two families stand to each other; the last word counts.").Produces<FamilySaved>(StatusCodes.Status201Created);
        write.MapDelete("families/{slug}/relations/{other}", async (string slug, string other, HttpContext http, FamilyChanges changes, CancellationToken cancel) =>
                (await changes.UnrelateAsync(slug, other, http.User.ToEditor(), cancel)).ToResult(_ => TypedResults.Ok(new FamilySaved(slug))))
            .WithSummary("Takes back what was said of two families.").Produces<FamilySaved>();
        write.MapPost("families/{slug}/merge", async (string slug, [FromBody] MergeJson body, HttpContext http, MergeFamilies merges, CancellationToken cancel) =>
                (await merges.RunAsync(slug, body.Into, body.Note, http.User.ToEditor(), cancel)).ToResult(id => Created(id.Value)))
            .WithSummary("Declares the family to be another one. Nothing is moved, its address leads on, and it can be undone.").Produces<Done>(StatusCodes.Status201Created);
        write.MapPost("families/{slug}/split", async (string slug, [FromBody] SplitForm body, HttpContext http, SplitFamily splits, CancellationToken cancel) =>
                (await splits.RunAsync(slug, body, http.User.ToEditor(), cancel)).ToResult(id => Created(id.Value)))
            .WithSummary("Declares some parts of the family to be of another. Published components keep the link they were published with, and it can be undone.").Produces<Done>(StatusCodes.Status201Created);
        write.MapPost("worklists/unidentified/resolve", async ([FromBody] ResolveJson body, HttpContext http, IdentifyParts identify, CancellationToken cancel) =>
                (body is { Family: null, PartNumber: { } number }
                    ? await identify.OpenAsync(body.Key ?? "", number, body.Evidence, http.User.ToEditor(), cancel)
                    : await identify.RunAsync(body.Key ?? "", body.Family, body.Evidence, http.User.ToEditor(), cancel)).ToResult(lines => TypedResults.Ok(new Resolved(lines))))
            .WithSummary("Says of which family all parts of a look are; each teardown is changed as a whole or not at all.").Produces<Resolved>();
        write.MapPatch("makers/{slug}", async (string slug, [FromBody] MakerNameJson body, HttpContext http, MakerChanges changes, CancellationToken cancel) =>
                (await changes.RenameAsync(slug, body.Name, http.User.ToEditor(), cancel)).ToResult(id => TypedResults.Ok(new Done(id.Value))))
            .WithSummary("Shows a maker under another name; the one it had stays as an alias, its address stays, and published pages keep what they printed.").Produces<Done>();
        write.MapPost("makers/{slug}/aliases", async (string slug, [FromBody] MakerNameJson body, HttpContext http, MakerChanges changes, CancellationToken cancel) =>
                (await changes.AddAliasAsync(slug, body.Name, http.User.ToEditor(), cancel)).ToResult(id => Created(id.Value)))
            .WithSummary("Adds another name of a maker: a former one, a transliteration, a logo in words.").Produces<Done>(StatusCodes.Status201Created);
        write.MapDelete("makers/{slug}/aliases/{name}", async (string slug, string name, HttpContext http, MakerChanges changes, CancellationToken cancel) =>
                (await changes.RemoveAliasAsync(slug, name, http.User.ToEditor(), cancel)).ToResult(id => TypedResults.Ok(new Done(id.Value))))
            .WithSummary("Takes another name of a maker away; what it led to stays.").Produces<Done>();
        write.MapPost("merges/{id:guid}/undo", async (Guid id, HttpContext http, MergeFamilies merges, CancellationToken cancel) =>
                (await merges.UndoAsync(FamilyMergeId.From(id), http.User.ToEditor(), cancel)).ToResult(done => TypedResults.Ok(new Done(done.Value))))
            .WithSummary("Takes a merge of families back.").Produces<Done>();
        write.MapPost("splits/{id:guid}/undo", async (Guid id, HttpContext http, SplitFamily splits, CancellationToken cancel) =>
                (await splits.UndoAsync(FamilySplitId.From(id), http.User.ToEditor(), cancel)).ToResult(done => TypedResults.Ok(new Done(done.Value))))
            .WithSummary("Takes a split of a family back.").Produces<Done>();
    }

    private static async Task<IResult> AmendAsync(
        string slug,
        [FromBody] JsonElement patch,
        [FromQuery, Description("The version that was read; when given, the change is refused if somebody saved since.")] uint? version,
        HttpContext http,
        FamilyChanges changes,
        IOptions<Microsoft.AspNetCore.Http.Json.JsonOptions> json,
        CancellationToken cancel) =>
        (await changes.AmendAsync(slug, version, form => MergePatch.Apply(form, patch, json.Value.SerializerOptions), http.User.ToEditor(), cancel)).ToResult(_ => TypedResults.Ok(new FamilySaved(slug)));

    private static async Task<IResult> UnidentifiedAsync(UnidentifiedQuery query, CancellationToken cancel, [FromQuery] int skip = 0, [FromQuery] int limit = 25)
    {
        if (skip < 0 || limit is < 1 or > UnidentifiedQuery.MaxItems)
            return ApiProblem.Of(StatusCodes.Status400BadRequest, $"skip is 0 or more, limit 1 to {UnidentifiedQuery.MaxItems}.");
        var answer = await query.RunAsync(skip, limit, cancel);
        return TypedResults.Ok(new Worklist(
            [
                .. answer.Items.Select(item => new UnidentifiedJson(
                    item.Key,
                    item.Marking,
                    item.Package,
                    item.Teardowns,
                    [.. item.Components.Select(part => new UnidentifiedPart(part.Id.Value, part.Slug, part.Name))],
                    item.Makers,
                    item.Roles,
                    [.. item.Candidates.Select(DecodeMarkingEndpoint.Json)],
                    item.Why,
                    item.Number)),
            ],
            answer.Total,
            skip + answer.Items.Count < answer.Total ? FormattableString.Invariant($"{ApiEndpoints.Prefix}/worklists/unidentified?skip={skip + answer.Items.Count}&limit={limit}") : null));
    }

    private static IResult Created(string slug) => TypedResults.Json(new FamilySaved(slug), statusCode: StatusCodes.Status201Created);

    private static IResult Created(Guid id) => TypedResults.Json(new Done(id), statusCode: StatusCodes.Status201Created);
}
