using System.ComponentModel;
using System.Text.Json;
using Catalogue.Data.BenchLogs;
using Catalogue.Data.Callouts;
using Catalogue.Data.Components;
using Catalogue.Data.Findings;
using Catalogue.Data.Isolation;
using Catalogue.Data.Photos;
using Catalogue.Data.Products;
using Catalogue.Data.Rails;
using Catalogue.Data.Teardowns;
using Catalogue.Domain;
using Catalogue.Domain.BenchLogs;
using Catalogue.Domain.Callouts;
using Catalogue.Domain.Components;
using Catalogue.Domain.Findings;
using Catalogue.Domain.Isolation;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Products;
using Catalogue.Domain.Rails;
using Catalogue.Domain.Teardowns;
using Catalogue.Web.Accounts;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Extensions.Options;

namespace Catalogue.Web.Api;

/// <summary>Adding, changing and removing the records of a draft.</summary>
internal static class RecordEndpoints
{
    /// <summary>The id of a record that was added or changed.</summary>
    /// <param name="Id">The same through all revisions.</param>
    public sealed record Saved(Guid Id);

    public static void MapRecords(this RouteGroupBuilder api)
    {
        var write = api.MapGroup("").RequireAuthorization(Policies.WriteToken).WithTags("records");
        MapOfTeardown<BoardForm, BoardId>(write, "boards", (services, teardown, form, who, cancel) => services.GetRequiredService<BoardChanges>().AddAsync(teardown, form, who, cancel));
        MapOfTeardown<ClaimForm, ClaimId>(write, "claims", (services, teardown, form, who, cancel) => services.GetRequiredService<ClaimChanges>().AddAsync(teardown, form, who, cancel));
        MapOfTeardown<PortForm, PortId>(write, "ports", (services, teardown, form, who, cancel) => services.GetRequiredService<PortChanges>().AddAsync(teardown, form, who, cancel));
        MapOfTeardown<RailForm, RailId>(write, "rails", (services, teardown, form, who, cancel) => services.GetRequiredService<RailChanges>().AddAsync(teardown, form, who, cancel));
        MapOfTeardown<MeasuredPathForm, MeasuredPathId>(write, "isolation_paths", (services, teardown, form, who, cancel) => services.GetRequiredService<MeasuredPathChanges>().AddAsync(teardown, form, who, cancel));
        MapOfTeardown<DischargeReadingForm, DischargeReadingId>(write, "discharge_readings", (services, teardown, form, who, cancel) => services.GetRequiredService<DischargeReadingChanges>().AddAsync(teardown, form, who, cancel));
        MapOfTeardown<BenchTestForm, BenchTestId>(write, "tests", (services, teardown, form, who, cancel) => services.GetRequiredService<BenchTestChanges>().AddAsync(teardown, form, who, cancel));
        MapOfTeardown<StepForm, StepId>(write, "steps", (services, teardown, form, who, cancel) => services.GetRequiredService<StepChanges>().AddAsync(teardown, form, who, cancel));
        MapOfTeardown<FindingForm, FindingId>(write, "findings", (services, teardown, form, who, cancel) => services.GetRequiredService<FindingChanges>().AddAsync(teardown, form, who, cancel));
        MapOfRecord<ComponentForm, ComponentId, BoardId>(write, "boards", "components", (services, board, form, who, cancel) => services.GetRequiredService<ComponentChanges>().AddAsync(board, form, who, cancel));
        MapOfRecord<RatingForm, RatingId, ComponentId>(write, "components", "ratings", (services, component, form, who, cancel) => services.GetRequiredService<RatingChanges>().AddAsync(component, form, who, cancel));
        write.MapPost("photos/{id:guid}/callouts", AddCalloutAsync).WithSummary("Adds a callout to a photo.").Produces<CalloutSaved>(StatusCodes.Status201Created);

        MapAmending<Board, BoardId, BoardForm, BoardChanges>(write, "boards");
        MapAmending<BoardComponent, ComponentId, ComponentForm, ComponentChanges>(write, "components");
        MapAmending<Rating, RatingId, RatingForm, RatingChanges>(write, "ratings");
        MapAmending<Claim, ClaimId, ClaimForm, ClaimChanges>(write, "claims");
        MapAmending<Port, PortId, PortForm, PortChanges>(write, "ports");
        MapAmending<Rail, RailId, RailForm, RailChanges>(write, "rails");
        MapAmending<MeasuredPath, MeasuredPathId, MeasuredPathForm, MeasuredPathChanges>(write, "isolation_paths");
        MapAmending<DischargeReading, DischargeReadingId, DischargeReadingForm, DischargeReadingChanges>(write, "discharge_readings");
        MapAmending<BenchTest, BenchTestId, BenchTestForm, BenchTestChanges>(write, "tests");
        MapAmending<Step, StepId, StepForm, StepChanges>(write, "steps");
        MapAmending<Finding, FindingId, FindingForm, FindingChanges>(write, "findings");
        MapAmending<Photo, PhotoId, PhotoForm, PhotoChanges>(write, "photos");
        MapAmending<Callout, CalloutId, CalloutForm, CalloutChanges>(write, "callouts");
    }

    private delegate Task<ChangeOutcome<TId>> Add<in TParent, in TForm, TId>(IServiceProvider services, TParent parent, TForm form, Editor who, CancellationToken cancellationToken);

    private static void MapOfTeardown<TForm, TId>(RouteGroupBuilder write, string name, Add<TeardownId, TForm, TId> add)
        where TForm : class
        where TId : struct, ITypedId<TId> =>
        write.MapPost(
                $"teardowns/{{slug}}/{name}",
                async (string slug, [FromBody] TForm form, HttpContext http, TeardownChanges teardowns, CancellationToken cancel) =>
                    await teardowns.FindAsync(slug, cancel) is { } teardown
                        ? Created(await add(http.RequestServices, teardown, form, http.User.ToEditor(), cancel))
                        : ApiProblem.Of(StatusCodes.Status404NotFound, $"There is no teardown “{slug}”."))
            .WithSummary($"Adds one of the {name.Replace('_', ' ')} to the draft of a teardown.")
            .Produces<Saved>(StatusCodes.Status201Created);

    private static void MapOfRecord<TForm, TId, TParent>(RouteGroupBuilder write, string parents, string name, Add<TParent, TForm, TId> add)
        where TForm : class
        where TId : struct, ITypedId<TId>
        where TParent : struct, ITypedId<TParent> =>
        write.MapPost(
                $"{parents}/{{id:guid}}/{name}",
                async (Guid id, [FromBody] TForm form, HttpContext http, CancellationToken cancel) =>
                    Created(await add(http.RequestServices, TParent.From(id), form, http.User.ToEditor(), cancel)))
            .WithSummary($"Adds one of the {name} to one of the {parents}.")
            .Produces<Saved>(StatusCodes.Status201Created);

    private static async Task<IResult> AddCalloutAsync(Guid id, [FromBody] CalloutForm form, HttpContext http, CalloutChanges callouts, CancellationToken cancel)
    {
        var outcome = await callouts.AddAsync(PhotoId.From(id), form, http.User.ToEditor(), cancel);
        var number = outcome is ChangeOutcome<CalloutId>.Done { Value: var added } ? await callouts.NumberOfAsync(added, cancel) : null;
        return outcome.ToResult(callout => TypedResults.Json(new CalloutSaved(callout.Value, number ?? 0), statusCode: StatusCodes.Status201Created));
    }

    /// <summary>A callout that was added.</summary>
    /// <param name="Id">The same through all revisions.</param>
    /// <param name="Number">The number it is printed with.</param>
    public sealed record CalloutSaved(Guid Id, int Number);

    // POST on a record does what PATCH does: some scripts at the bench can send nothing else.
    private static void MapAmending<TRecord, TId, TForm, TChanges>(RouteGroupBuilder write, string name)
        where TRecord : class, IEditableRecord
        where TId : struct, ITypedId<TId>
        where TForm : class
        where TChanges : RecordChanges<TRecord, TId, TForm>
    {
        write.MapMethods(
                $"{name}/{{id:guid}}",
                [HttpMethods.Patch, HttpMethods.Post],
                async (
                    Guid id,
                    [FromBody] JsonElement patch,
                    [FromQuery, Description("The version that was read; when given, the change is refused if somebody saved since.")] uint? version,
                    HttpContext http,
                    TChanges changes,
                    IOptions<Microsoft.AspNetCore.Http.Json.JsonOptions> json,
                    CancellationToken cancel) =>
                    (await changes.AmendAsync(TId.From(id), version, form => MergePatch.Apply(form, patch, json.Value.SerializerOptions), http.User.ToEditor(), cancel))
                    .ToResult(saved => TypedResults.Ok(new Saved(saved.Value))))
            .WithSummary($"Changes one of the {name.Replace('_', ' ')} by a JSON merge patch (RFC 7396).")
            .Accepts<TForm>("application/json", "application/merge-patch+json")
            .Produces<Saved>();
        write.MapDelete(
                $"{name}/{{id:guid}}",
                async (Guid id, [FromQuery] uint? version, HttpContext http, TChanges changes, CancellationToken cancel) =>
                    (await changes.RemoveAsync(TId.From(id), version, http.User.ToEditor(), cancel)).ToResult(saved => TypedResults.Ok(new Saved(saved.Value))))
            .WithSummary($"Takes one of the {name.Replace('_', ' ')} out of the draft; published revisions keep it.")
            .Produces<Saved>();
    }

    private static IResult Created<TId>(ChangeOutcome<TId> outcome)
        where TId : struct, ITypedId<TId> =>
        outcome.ToResult(id => TypedResults.Json(new Saved(id.Value), statusCode: StatusCodes.Status201Created));
}
