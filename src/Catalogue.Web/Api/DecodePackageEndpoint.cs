using System.ComponentModel;
using Catalogue.Domain.Packages;
using Catalogue.Domain.Text;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Api;

/// <summary>Reads the name of a package; computes only, nothing is stored.</summary>
internal static class DecodePackageEndpoint
{
    public sealed record Request
    {
        [Description("What is written, such as SOT23-5, DPAK, R_0603_1608Metric or QFN-20-1EP_3x3mm_P0.4mm; at most 200 characters.")]
        public required string Text { get; init; }
    }

    public sealed record Answer(
        [property: Description("The text as it was written.")] string AsWritten,
        [property: Description("The name the trade uses, such as SOT-23 or 0805; null where no known package is named. An unknown text never becomes a name.")] string? Canonical,
        [property: Description("Pins as the trade counts them: a tab in the place of a lead counts, an exposed pad does not. Null where not known.")] int? Pins,
        [property: Description("The body in plan as written, such as 3.9x4.9, in mm; null where not written.")] string? BodyMm,
        [property: Description("Distance of pins or wires as written, in mm.")] double? PitchMm,
        [property: Description("Exposed pad as written, such as 1.65x1.65, in mm.")] string? ExposedPadMm,
        [property: Description("Diameter as written, in mm.")] double? DiameterMm,
        [property: Description("Height as written, in mm.")] double? HeightMm,
        [property: Description("The metric size code of a chip, such as 2012.")] string? Metric,
        [property: Description("The other name: the one written where it is not the canonical one, else the other common one, such as DPAK for TO-252.")] string? Alias,
        [property: Description("chip, tantalum_chip, smd_small, smd_power, through_hole, through_hole_power, gull_wing, gull_wing_quad, leadless, leadless_power, grid_array, diode_smd, diode_axial, bridge, opto, wired, smd_can.")] string? Kind,
        [property: Description("Nominal body of the outline, in mm; the usual one of several for leadless packages. For telling packages apart, not for a land pattern.")] string? NominalBodyMm,
        [property: Description("How well the outline's row is founded: high, medium or low.")] string? Confidence,
        [property: Description("What sets the outline apart.")] string? Note,
        [property: Description("Other names, those of the trade first, then the outlines of the standards.")] IReadOnlyList<string> Synonyms,
        [property: Description("Packages that fit similar pads or look alike and are not the same.")] IReadOnlyList<string> EasilyMistakenFor,
        [property: Description("What tells each of those apart, in the same order.")] IReadOnlyList<string> ToldApartBy,
        [property: Description("What was assumed, dropped or not read; why nothing is known.")] IReadOnlyList<string> Warnings);

    public static void MapDecodePackage(this RouteGroupBuilder api) =>
        api.MapPost("decode/package", Decode).AllowAnonymous().WithTags("decode")
            .WithSummary("Reads the name of a package.")
            .WithDescription("Takes what people and drawing programs write to the outline the trade knows, with sizes as written. A text that names no known package, or two, stays as written with the reason among the warnings. Nothing is stored.")
            .Produces<Answer>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static IResult Decode([FromBody] Request body)
    {
        if (string.IsNullOrWhiteSpace(body.Text) || body.Text.Length > PackageText.MaxLength)
            return ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, $"text is the name of a package, such as SOT23-5, of 1 to {PackageText.MaxLength} characters; it had {body.Text.Length}.", "text");
        return PackageText.Read(body.Text) switch
        {
            PackageReading.Recognised read => TypedResults.Ok(Known(read)),
            PackageReading.Unknown unknown => TypedResults.Ok(new Answer(unknown.AsWritten, null, null, null, null, null, null, null, null, null, null, null, null, null, [], [], [], [unknown.Reason])),
            _ => throw new InvalidOperationException("Every reading is known."),
        };
    }

    private static Answer Known(PackageReading.Recognised read)
    {
        var outline = read.Outline;
        var lookAlikes = PackageOutlines.MistakenFor(outline).ToList();
        return new Answer(
            read.AsWritten,
            read.Canonical,
            read.Pins,
            read.Body?.ToString(),
            read.PitchMm,
            read.ExposedPad?.ToString(),
            read.DiameterMm,
            read.HeightMm,
            outline.Metric,
            read.Alias,
            SnakeCase.Code(outline.Kind),
            outline.Body?.ToString(),
            SnakeCase.Code(outline.Confidence),
            outline.Note,
            outline.Synonyms,
            [.. lookAlikes.Select(pair => pair.Beside(outline))],
            [.. lookAlikes.Select(pair => pair.Difference)],
            read.Warnings);
    }
}
