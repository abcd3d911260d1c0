using Catalogue.Data.Families;
using Catalogue.Domain.Families;
using Catalogue.Web.Accounts;

namespace Catalogue.Web.Api;

/// <summary>The families beside one, as far as the caller may see them.</summary>
internal static class FamilyNeighboursEndpoint
{
    /// <summary>The neighbours of a family; each list holds at most twenty.</summary>
    /// <param name="SecondSources">What could take its place, as far as class, package and ratings say: a screening, no promise.</param>
    /// <param name="LookAlikes">Whose number is easily mistaken for its number.</param>
    /// <param name="Versions">Whose number differs by an ending: kin, never joined.</param>
    public sealed record NeighboursAnswer(IReadOnlyList<NeighbourItem> SecondSources, IReadOnlyList<NeighbourItem> LookAlikes, IReadOnlyList<NeighbourItem> Versions);

    /// <summary>A neighbour.</summary>
    /// <param name="Family">Its address.</param>
    /// <param name="Name">Its base number.</param>
    /// <param name="Reasons">Why it stands here, and what is not known; in words.</param>
    /// <param name="Relation">What a reviewer said of the pair, or null.</param>
    public sealed record NeighbourItem(string Family, string Name, IReadOnlyList<string> Reasons, FamilyRelationKind? Relation);

    public static void MapFamilyNeighbours(this RouteGroupBuilder api) =>
        api.MapGet("families/{slug}/neighbours", RunAsync)
            .AllowAnonymous()
            .WithTags("catalogue")
            .WithSummary("The families beside a part family: second sources, look-alikes and versions, each with its reasons.")
            .WithDescription("Second sources are a screening by function class, package and ratings: what is not known is said among the reasons and never counted as covered. A reviewer's word goes before what is computed: unrelated hides a family, second_source confirms it, look_alike keeps it among the look-alikes.")
            .Produces<NeighboursAnswer>()
            .ProducesProblem(StatusCodes.Status404NotFound);

    private static async Task<IResult> RunAsync(string slug, HttpContext http, FamilyNeighboursQuery query, CancellationToken cancel) =>
        await query.RunAsync(slug, http.User.SeesDrafts(), cancel) switch
        {
            FamilyNeighboursQuery.Answer.Found found => TypedResults.Ok(new NeighboursAnswer(Items(found.SecondSources), Items(found.LookAlikes), Items(found.Versions))),
            FamilyNeighboursQuery.Answer.Moved moved => TypedResults.Redirect($"{ApiEndpoints.Prefix}/families/{moved.Slug}/neighbours", permanent: true),
            _ => ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no part family “{slug}”; GET {ApiEndpoints.Prefix}/families lists them."),
        };

    private static IReadOnlyList<NeighbourItem> Items(IReadOnlyList<FamilyNeighboursQuery.Row> rows) =>
        [.. rows.Select(row => new NeighbourItem(row.Slug, row.Neighbour.Family.Name, row.Neighbour.Reasons, row.Neighbour.Relation?.Kind))];
}
