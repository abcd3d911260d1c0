using System.ComponentModel;
using Catalogue.Data.Families;
using Catalogue.Domain.Components;
using Catalogue.Domain.Identification;
using Catalogue.Domain.Makers;
using Catalogue.Web.Accounts;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Api;

/// <summary>Finds the part families that a marking may belong to; nothing is stored.</summary>
internal static class DecodeMarkingEndpoint
{
    /// <summary>A marking to look up.</summary>
    public sealed record MarkingQuestionJson
    {
        /// <summary>What was read.</summary>
        [Description("The marking as read, line breaks and all; ? for a character that is there and could not be read. At most 500 characters.")]
        public required string Text { get; init; }

        /// <summary>The package.</summary>
        [Description("The package, such as SOT-23-6, where it is known.")]
        public string? Package { get; init; }

        /// <summary>The role.</summary>
        [Description("What the part does, as a function class or in trade words, such as fuse, buck regulator or MOSFET.")]
        public string? Role { get; init; }

        /// <summary>The maker.</summary>
        [Description("The maker, where a logo or a name was read.")]
        public string? Maker { get; init; }
    }

    /// <summary>A family that the marking may belong to.</summary>
    public record CandidateJson
    {
        /// <summary>The family.</summary>
        [Description("The slug of the part family.")]
        public required string Family { get; init; }

        /// <summary>Its base number.</summary>
        [Description("Its base number as first written.")]
        public required string Name { get; init; }

        /// <summary>How probable it is.</summary>
        [Description("How probable it is that the part is of this family, 0 to 1; what is missing to 1 over all candidates is that the catalogue does not know the family.")]
        public required double Score { get; init; }

        /// <summary>How alike the texts are.</summary>
        [Description("1 where the marking reads exactly as the number, less with every difference.")]
        public required double Similarity { get; init; }

        /// <summary>Whether another one is about as probable.</summary>
        [Description("True where another candidate is about as probable; such a one is never taken by itself.")]
        public required bool IsTied { get; init; }

        /// <summary>What speaks for and against it.</summary>
        [Description("What speaks for and against it, in words.")]
        public required IReadOnlyList<string> Reasons { get; init; }
    }

    /// <summary>What was found.</summary>
    public sealed record CandidatesJson
    {
        /// <summary>The candidates.</summary>
        [Description("The likeliest families first, at most 20; empty where none comes near.")]
        public required IReadOnlyList<CandidateJson> Candidates { get; init; }

        /// <summary>The one to take.</summary>
        [Description("The slug of the one that may be taken: probable enough, read exactly, and no other near it. Else null.")]
        public required string? Take { get; init; }

        /// <summary>The role as understood.</summary>
        [Description("The function class that the role was understood as, or null.")]
        public required FunctionClass? FunctionClass { get; init; }

        /// <summary>What to know about the text.</summary>
        [Description("What is odd about the text: letters of other alphabets, nothing that could be a number, a role that says nothing.")]
        public required IReadOnlyList<string> Warnings { get; init; }
    }

    public static void MapDecodeMarking(this RouteGroupBuilder api) =>
        api.MapPost("decode/marking", DecodeAsync)
            .AllowAnonymous()
            .WithTags("decode")
            .WithSummary("Finds the part families that a marking may belong to.")
            .WithDescription("Weighs look-alike characters, worn ends, endings for packing and finish, the order of lines, package, role, maker and how often a family was seen. Families that only drafts mention come only with a token. Nothing is stored; a candidate never replaces what was read.")
            .Produces<CandidatesJson>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> DecodeAsync([FromBody] MarkingQuestionJson body, MarkingCandidatesQuery query, HttpContext http)
    {
        if (string.IsNullOrWhiteSpace(body.Text))
            return ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, "text is empty; it takes what is printed on the part, such as QX4R0-65N.", "text");
        if (body.Text.Length > MarkingReadings.MaxMarkingLength)
            return ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, FormattableString.Invariant($"text has {body.Text.Length} characters; a marking has at most {MarkingReadings.MaxMarkingLength}."), "text");
        var functionClass = FunctionClassText.Read(body.Role);
        var question = new MarkingQuestion
        {
            Marking = body.Text,
            Package = string.IsNullOrWhiteSpace(body.Package) ? null : body.Package,
            FunctionClass = functionClass,
            Maker = MakerName.Key(body.Maker) is { Length: > 0 } maker ? maker : null,
        };
        var found = await query.RunAsync(question, null, http.User.SeesDrafts(), http.RequestAborted);
        return TypedResults.Ok(new CandidatesJson
        {
            Candidates = [.. found.Select(one => Json(one))],
            Take = MarkingCandidates.ToTake([.. found.Select(one => one.Candidate)]) is null ? null : found[0].Slug,
            FunctionClass = functionClass,
            Warnings = [.. Warnings(body, functionClass)],
        });
    }

    /// <summary>A candidate as the API gives it.</summary>
    public static CandidateJson Json(MarkingCandidatesQuery.Found found) => new()
    {
        Family = found.Slug,
        Name = found.Name,
        Score = Math.Round(found.Candidate.Score, 4),
        Similarity = Math.Round(found.Candidate.Similarity, 4),
        IsTied = found.Candidate.IsTied,
        Reasons = found.Candidate.Reasons,
    };

    private static IEnumerable<string> Warnings(MarkingQuestionJson body, FunctionClass? functionClass)
    {
        foreach (var remark in MarkingRemarks.Of(body.Text))
            yield return remark;
        if (functionClass is null && !string.IsNullOrWhiteSpace(body.Role))
            yield return $"The role “{body.Role}” names no function that is known; it was not weighed.";
    }
}
