using System.ComponentModel;
using System.Text.Json;
using Catalogue.Data.Makers;
using Catalogue.Data.Publishing;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Figures;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Products;
using Catalogue.Domain.Publishing;
using Catalogue.Domain.Teardowns;
using Catalogue.Domain.Text;
using Catalogue.Web.Accounts;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Options;

namespace Catalogue.Web.Api;

/// <summary>Teardowns: opened, changed, published, read, listed.</summary>
internal static class TeardownEndpoints
{
    /// <summary>What a teardown is opened with.</summary>
    public sealed record NewTeardown
    {
        /// <summary>The product; used again where the same is known.</summary>
        [Description("The product; the same brand, name and model are used again.")]
        public required NewProduct Product { get; init; }

        /// <summary>The title of the record.</summary>
        [Description("The title of the record, 1 to 200 characters.")]
        public required string Title { get; init; }
    }

    /// <summary>The product of a new teardown.</summary>
    public sealed record NewProduct
    {
        /// <summary>The brand; opened where it is new.</summary>
        public required string Brand { get; init; }

        /// <summary>The name.</summary>
        public required string Name { get; init; }

        /// <summary>The model designation.</summary>
        public required string Model { get; init; }

        /// <summary>The category.</summary>
        public required ProductCategory Category { get; init; }
    }

    /// <summary>A note to readers.</summary>
    public sealed record PublishNote
    {
        /// <summary>What changed; needed from the second revision on.</summary>
        [Description("What changed, for readers; needed from the second revision on.")]
        public string? Note { get; init; }
    }

    /// <summary>A teardown that was opened.</summary>
    public sealed record Opened(string Slug, Guid Id, string Url);

    /// <summary>A revision that was published.</summary>
    public sealed record PublishedAnswer(int Revision, string Url);

    /// <summary>A teardown that was changed.</summary>
    public sealed record Changed(string Slug);

    /// <summary>A page of a list.</summary>
    public sealed record List<T>(IReadOnlyList<T> Items, string? Next);

    /// <summary>A teardown in a list.</summary>
    public sealed record Item(
        string Slug,
        string Url,
        int Number,
        string Title,
        string Product,
        string Brand,
        string Name,
        string Model,
        ProductCategory Category,
        string? Standfirst,
        int Revision,
        RevisionState State,
        DateTimeOffset? PublishedAt,
        IReadOnlyDictionary<Verdict, int> Figures);

    public static void MapTeardowns(this RouteGroupBuilder api)
    {
        var teardowns = api.MapGroup("teardowns").WithTags("teardowns");
        teardowns.MapGet("", ListAsync).AllowAnonymous().WithSummary("Lists teardowns, newest first; with a token and draft=true those of the lab.").Produces<List<Item>>();
        teardowns.MapGet("{slug}", GetAsync).AllowAnonymous().WithSummary("The current published revision; with a token and draft=true the draft.").Produces<TeardownJson>();
        teardowns.MapGet("{slug}/revisions/{number:int}", RevisionAsync).AllowAnonymous().WithSummary("A revision that is or was published.").Produces<TeardownJson>();
        teardowns.MapGet("{slug}/components.csv", CsvAsync).AllowAnonymous().WithSummary("The component table as CSV.").Produces(StatusCodes.Status200OK, contentType: "text/csv");
        var write = teardowns.MapGroup("").RequireAuthorization(Policies.WriteToken);
        write.MapPost("", CreateAsync).WithSummary("Opens a teardown with its first draft; each call opens another.").Produces<Opened>(StatusCodes.Status201Created);
        write.MapMethods("{slug}", [HttpMethods.Patch], AmendAsync).WithSummary("Changes the facts of the draft by a JSON merge patch (RFC 7396).").Accepts<TeardownForm>("application/json", "application/merge-patch+json").Produces<Changed>();
        write.MapPost("{slug}/submit", SubmitAsync).WithSummary("Sends the draft to a second person.").Produces<Changed>();
        write.MapPost("{slug}/publish", PublishAsync).WithSummary("Publishes the draft.").Produces<PublishedAnswer>();
    }

    private static async Task<IResult> CreateAsync([FromBody] NewTeardown body, HttpContext http, CreateTeardown create, CancellationToken cancel) =>
        (await create.RunAsync(new CreateTeardown.Request(body.Product.Brand, body.Product.Name, body.Product.Model, body.Product.Category, body.Title), http.User.ToEditor(), cancel))
        .ToResult(made => TypedResults.Created($"/api/v1/teardowns/{made.Slug}?draft=true", new Opened(made.Slug, made.Id.Value, $"/api/v1/teardowns/{made.Slug}?draft=true")));

    private static async Task<IResult> AmendAsync(
        string slug, [FromBody] JsonElement patch, [FromQuery] uint? version, HttpContext http, TeardownChanges teardowns, IOptions<Microsoft.AspNetCore.Http.Json.JsonOptions> json, CancellationToken cancel) =>
        await teardowns.FindAsync(slug, cancel) is { } id
            ? (await teardowns.AmendAsync(id, version, form => MergePatch.Apply(form, patch, json.Value.SerializerOptions), http.User.ToEditor(), cancel)).ToResult(_ => TypedResults.Ok(new Changed(slug)))
            : NoTeardown(slug);

    private static async Task<IResult> SubmitAsync(string slug, HttpContext http, TeardownChanges teardowns, CancellationToken cancel) =>
        await teardowns.FindAsync(slug, cancel) is { } id
            ? (await teardowns.SubmitAsync(id, http.User.ToEditor(), cancel)).ToResult(_ => TypedResults.Ok(new Changed(slug)))
            : NoTeardown(slug);

    private static async Task<IResult> PublishAsync(string slug, [FromBody] PublishNote? body, HttpContext http, PublishTeardown publish, SettingsQuery settings, CancellationToken cancel)
    {
        var outcome = await publish.RunAsync(slug, body?.Note, http.User.ToEditor(), cancel);
        var root = (await settings.RunAsync(cancel)).PublicBaseAddress ?? $"{http.Request.Scheme}://{http.Request.Host}";
        return outcome.ToResult(published => TypedResults.Ok(new PublishedAnswer(published.Revision, root + Addresses.Teardown(published.Slug))));
    }

    private static async Task<IResult> GetAsync(string slug, HttpContext http, TeardownRecordQuery query, CancellationToken cancel, [FromQuery] bool draft = false)
    {
        if (draft && !http.User.SeesDrafts())
            return ApiProblem.Of(StatusCodes.Status401Unauthorized, "Drafts are for people and scripts of the lab: send a bearer token.");
        var record = draft ? await query.DraftAsync(slug, cancel) : await query.PublishedAsync(slug, cancel);
        return record is not null
            ? TypedResults.Ok(TeardownJson.From(record))
            : ApiProblem.Of(StatusCodes.Status404NotFound, draft ? $"The teardown “{slug}” has no draft." : $"There is no published teardown “{slug}”.");
    }

    private static async Task<IResult> RevisionAsync(string slug, int number, TeardownRecordQuery query, CancellationToken cancel) =>
        await query.RevisionAsync(slug, number, cancel) is { } record
            ? TypedResults.Ok(TeardownJson.From(record))
            : ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no published revision {number} of a teardown “{slug}”.");

    private static async Task<IResult> CsvAsync(string slug, HttpContext http, TeardownRecordQuery query, CancellationToken cancel, [FromQuery] bool draft = false)
    {
        if (draft && !http.User.SeesDrafts())
            return ApiProblem.Of(StatusCodes.Status401Unauthorized, "Drafts are for people and scripts of the lab: send a bearer token.");
        var record = draft ? await query.DraftAsync(slug, cancel) : await query.PublishedAsync(slug, cancel);
        return record is not null
            ? TypedResults.File(await ComponentsCsv.WriteAsync(record), "text/csv; charset=utf-8", $"{slug}-components.csv")
            : NoTeardown(slug);
    }

    private static async Task<IResult> ListAsync(
        HttpContext http,
        TeardownsQuery query,
        MakersQuery makers,
        CancellationToken cancel,
        [FromQuery] string? search = null,
        [FromQuery] string? category = null,
        [FromQuery, Description("The slug of a brand.")] string? brand = null,
        [FromQuery] string? after = null,
        [FromQuery] int limit = 50,
        [FromQuery] bool draft = false)
    {
        if (draft && !http.User.SeesDrafts())
            return ApiProblem.Of(StatusCodes.Status401Unauthorized, "Drafts are for people and scripts of the lab: send a bearer token.");
        if (ListQuestions.Refuse(category, after, limit) is { } refusal)
            return refusal;
        if (after is not null && PageMark.TryParse(after)?.Moment is null)
            return ApiProblem.Of(StatusCodes.Status400BadRequest, "after is the mark that the previous page of this list gave; this one belongs to another list.", "after");
        MakerId? maker = null;
        if (brand is not null)
        {
            if (await makers.FindAsync(brand, draft, cancel) is not { } found)
                return ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no maker “{brand}”.");
            maker = found.Id;
        }

        var request = new TeardownsQuery.Request { Search = search, Category = SnakeCase.TryParse<ProductCategory>(category), Brand = maker, After = after, Limit = limit };
        var page = draft ? await query.LabAsync(request, cancel) : await query.PublishedAsync(request, cancel);
        return TypedResults.Ok(new List<Item>(
            [
                .. page.Items.Select(row => new Item(
                    row.Slug,
                    Addresses.Teardown(row.Slug),
                    row.Number,
                    row.Title,
                    $"{row.Brand} {row.ProductName}",
                    row.Brand,
                    row.ProductName,
                    row.Model,
                    row.Category,
                    row.Standfirst,
                    row.RevisionNumber,
                    row.State,
                    row.PublishedAt,
                    row.Tally)),
            ],
            ListQuestions.Next(http.Request, page.Next)));
    }

    private static IResult NoTeardown(string slug) => ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no teardown “{slug}”.");
}
