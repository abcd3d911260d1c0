using System.ComponentModel;
using Catalogue.Data.Families;
using Catalogue.Data.Makers;
using Catalogue.Data.Products;
using Catalogue.Domain.Components;
using Catalogue.Domain.Families;
using Catalogue.Domain.Products;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Text;
using Catalogue.Web.Accounts;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Api;

/// <summary>Products, makers and part families, as far as the caller may see them.</summary>
internal static class CatalogueEndpoints
{
    /// <summary>A product in a list.</summary>
    public sealed record ProductItem(string Brand, string Name, string Model, ProductCategory Category, IReadOnlyList<string> Teardowns);

    /// <summary>A maker in a list.</summary>
    public sealed record MakerItem(string Slug, string Name, int Teardowns);

    /// <summary>A family in a list.</summary>
    public sealed record FamilyItem(string Slug, string Name, FunctionClass? FunctionClass, int Designs);

    /// <summary>A family.</summary>
    public sealed record FamilyAnswer(
        string Slug,
        string Name,
        FunctionClass? FunctionClass,
        string? DatasheetUrl,
        int Designs,
        IReadOnlyList<string> MarkingsAsRead,
        IReadOnlyList<string> MakersAsRead,
        IReadOnlyList<string> Packages,
        IReadOnlyList<string> Makers,
        IReadOnlyList<NumberItem> OtherNumbers,
        IReadOnlyList<TopMarkItem> TopMarks,
        IReadOnlyList<RatingItem> TypicalRatings,
        IReadOnlyList<RelationItem> Relations,
        IReadOnlyList<StepItem> Merges,
        IReadOnlyList<StepItem> Splits,
        [property: Description("What a reviewer should know about it; only with a token.")] string? Note,
        [property: Description("The version of the facts; PATCH takes it as ?version=.")] uint Version,
        string DesignsUrl,
        string NeighboursUrl);

    /// <summary>Another number of a family.</summary>
    public sealed record NumberItem(string Name, FamilyNameKind Kind);

    /// <summary>A short code that stands on the part; other families may share it.</summary>
    public sealed record TopMarkItem(Guid Id, string Code, string? Maker, string? Package, string? Source, IReadOnlyList<string> SharedWith);

    /// <summary>A typical rating, in the unit named.</summary>
    public sealed record RatingItem(Guid Id, RatingKind Kind, double Low, double Nominal, double High, string Unit, string? Condition, Evidence Evidence, string? Source);

    /// <summary>What was said of two families.</summary>
    public sealed record RelationItem([property: Description("The other family's slug.")] string Family, FamilyRelationKind Kind, string? Note);

    /// <summary>A merge or a split that a family took part in.</summary>
    public sealed record StepItem(
        Guid Id,
        string From,
        string Into,
        [property: Description("How many component rows a split moved, one a revision; null for a merge.")] int? Components,
        DateTimeOffset At,
        [property: Description("Who did it; only with a token.")] string? Who,
        [property: Description("Why; only with a token.")] string? Note,
        DateTimeOffset? UndoneAt);

    /// <summary>A maker.</summary>
    public sealed record MakerAnswer(string Slug, string Name, IReadOnlyList<string> OtherNames, IReadOnlyList<MakerProduct> Products, IReadOnlyList<FamilyItem> Families);

    /// <summary>A product of a maker.</summary>
    public sealed record MakerProduct(string Name, string Model, ProductCategory Category, IReadOnlyList<string> Teardowns);

    /// <summary>A component of a published design that is of a family.</summary>
    public sealed record DesignItem(
        string Teardown, string Product, ProductCategory Category, DateTimeOffset? PublishedAt, Guid Component, string Board, string? Role, string? Designators, int? Quantity, Evidence? Evidence);

    public static void MapCatalogue(this RouteGroupBuilder api)
    {
        var lists = api.MapGroup("").AllowAnonymous().WithTags("catalogue");
        lists.MapGet("products", ProductsAsync).WithSummary("Lists products by brand and name.").Produces<TeardownEndpoints.List<ProductItem>>();
        lists.MapGet("makers", MakersAsync).WithSummary("Lists makers by name.").Produces<TeardownEndpoints.List<MakerItem>>();
        lists.MapGet("makers/{slug}", MakerAsync).WithSummary("A maker with its other names, its published products and the part families it is known for.").Produces<MakerAnswer>();
        lists.MapGet("families", FamiliesAsync).WithSummary("Lists part families by base number.").Produces<TeardownEndpoints.List<FamilyItem>>();
        lists.MapGet("families/{slug}", FamilyAsync).WithSummary("A part family.").Produces<FamilyAnswer>();
        lists.MapGet("families/{slug}/designs", DesignsAsync).WithSummary("The published designs that use a part family; one item a component, newest publication first.").Produces<TeardownEndpoints.List<DesignItem>>();
    }

    private static async Task<IResult> ProductsAsync(
        HttpContext http, ProductsQuery query, CancellationToken cancel, [FromQuery] string? search = null, [FromQuery] string? category = null, [FromQuery] string? after = null, [FromQuery] int limit = 50)
    {
        if (ListQuestions.Refuse(category, after, limit) is { } refusal)
            return refusal;
        var page = await query.RunAsync(search, SnakeCase.TryParse<ProductCategory>(category), after, limit, http.User.SeesDrafts(), cancel);
        return TypedResults.Ok(new TeardownEndpoints.List<ProductItem>(
            [.. page.Items.Select(row => new ProductItem(row.Brand, row.Name, row.Model, row.Category, row.Teardowns))], ListQuestions.Next(http.Request, page.Next)));
    }

    private static async Task<IResult> MakersAsync(
        HttpContext http, MakersQuery query, CancellationToken cancel, [FromQuery] string? search = null, [FromQuery] string? after = null, [FromQuery] int limit = 50)
    {
        if (ListQuestions.Refuse(null, after, limit) is { } refusal)
            return refusal;
        var page = await query.RunAsync(search, after, limit, http.User.SeesDrafts(), cancel);
        return TypedResults.Ok(new TeardownEndpoints.List<MakerItem>([.. page.Items.Select(row => new MakerItem(row.Slug, row.Name, row.Teardowns))], ListQuestions.Next(http.Request, page.Next)));
    }

    private static async Task<IResult> MakerAsync(string slug, HttpContext http, MakerQuery query, CancellationToken cancel) =>
        await query.RunAsync(slug, http.User.SeesDrafts(), cancel) is { } maker
            ? TypedResults.Ok(new MakerAnswer(
                maker.Slug,
                maker.Name,
                maker.OtherNames,
                [.. maker.Products.Select(row => new MakerProduct(row.Name, row.Model, row.Category, row.Teardowns))],
                [.. maker.Families.Select(row => new FamilyItem(row.Slug, row.Name, row.FunctionClass, row.Designs))]))
            : ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no maker “{slug}”; GET /api/v1/makers lists them.");

    private static async Task<IResult> FamiliesAsync(
        HttpContext http, FamiliesQuery query, CancellationToken cancel, [FromQuery] string? search = null, [FromQuery] string? after = null, [FromQuery] int limit = 50)
    {
        if (ListQuestions.Refuse(null, after, limit) is { } refusal)
            return refusal;
        var page = await query.RunAsync(search, after, limit, http.User.SeesDrafts(), cancel);
        return TypedResults.Ok(new TeardownEndpoints.List<FamilyItem>(
            [.. page.Items.Select(row => new FamilyItem(row.Slug, row.Name, row.FunctionClass, row.Designs))], ListQuestions.Next(http.Request, page.Next)));
    }

    private static async Task<IResult> FamilyAsync(string slug, HttpContext http, FamilyQuery query, FamilyKnowledgeQuery knowledge, FamilyHistoryQuery histories, CancellationToken cancel) =>
        await query.RunAsync(slug, http.User.SeesDrafts(), cancel) switch
        {
            FamilyQuery.Answer.Found { Family: var family } when await knowledge.RunAsync(slug, http.User.SeesDrafts(), cancel) is { } known && await histories.RunAsync(slug, http.User.SeesDrafts(), cancel) is { } history => TypedResults.Ok(new FamilyAnswer(
                family.Slug,
                family.Name,
                family.FunctionClass,
                family.DatasheetUrl,
                family.Uses.Select(use => use.Teardown).Distinct().Count(),
                [.. family.Uses.Select(use => use.MarkingAsRead).OfType<string>().Distinct()],
                [.. family.Uses.Select(use => use.MakerAsRead).OfType<string>().Distinct()],
                known.Packages,
                [.. known.Makers.Select(maker => maker.Name)],
                [.. known.Numbers.Select(number => new NumberItem(number.Text, number.Kind))],
                [.. known.Codes.Select(code => new TopMarkItem(code.Id.Value, code.Text, code.Maker, code.Package, code.Source, [.. code.Sharers.Select(sharer => sharer.Slug)]))],
                [.. known.Ratings.Select(rating => new RatingItem(rating.Id.Value, rating.Kind, rating.Low, rating.Nominal, rating.High, rating.Kind.Unit().Code(), rating.Condition, rating.Evidence, rating.Source))],
                [.. history.Relations.Select(said => new RelationItem(said.Family, said.Kind, said.Note))],
                [.. history.Merges.Select(Json)],
                [.. history.Splits.Select(Json)],
                history.Note,
                history.Version,
                $"/api/v1/families/{family.Slug}/designs",
                $"/api/v1/families/{family.Slug}/neighbours")),
            FamilyQuery.Answer.Moved moved => TypedResults.Redirect($"/api/v1/families/{moved.Slug}", permanent: true),
            _ => NoFamily(slug),
        };

    private static async Task<IResult> DesignsAsync(string slug, HttpContext http, FamilyQuery query, CancellationToken cancel) =>
        await query.RunAsync(slug, http.User.SeesDrafts(), cancel) switch
        {
            FamilyQuery.Answer.Found { Family: var family } => TypedResults.Ok(new TeardownEndpoints.List<DesignItem>(
                [
                    .. family.Uses.Select(use => new DesignItem(
                        use.Teardown,
                        $"{use.Brand} {use.ProductName}",
                        use.Category,
                        use.PublishedAt,
                        use.Component.Value,
                        use.BoardName,
                        use.Role,
                        use.Designators,
                        use.Quantity,
                        use.Evidence)),
                ],
                null)),
            FamilyQuery.Answer.Moved moved => TypedResults.Redirect($"/api/v1/families/{moved.Slug}/designs", permanent: true),
            _ => NoFamily(slug),
        };

    private static StepItem Json(FamilyHistoryQuery.Step step) => new(step.Id, step.From, step.Into, step.Parts, step.At, step.Who, step.Note, step.UndoneAt);

    private static IResult NoFamily(string slug) => ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no part family “{slug}”; GET /api/v1/families lists them.");
}
