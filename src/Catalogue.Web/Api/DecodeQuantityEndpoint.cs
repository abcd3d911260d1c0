using System.ComponentModel;
using Catalogue.Domain.Quantities;
using Microsoft.AspNetCore.Mvc;

namespace Catalogue.Web.Api;

/// <summary>Reads quantities and value codes; computes only, nothing is stored.</summary>
internal static class DecodeQuantityEndpoint
{
    /// <summary>A text to read.</summary>
    public sealed record QuantityQuestion
    {
        /// <summary>What is written.</summary>
        [Description("What is written on the part, the label or the list, such as 4k7, 47uF/63V, 100-240V~ 50/60Hz 1.5A; at most 500 characters.")]
        public required string Text { get; init; }

        /// <summary>What kind of part it speaks of.</summary>
        [Description("What kind of part it speaks of, which decides what bare numbers and codes mean: resistor, capacitor, inductor, fuse, diode, transistor, crystal, varistor, thermistor, cell. Left out: only what carries a unit or an unmistakable letter is read.")]
        public string? Kind { get; init; }
    }

    /// <summary>One quantity.</summary>
    public sealed record QuantityJson
    {
        /// <summary>The value.</summary>
        [Description("The value in its unit, never in a multiple of it; null for a range or a bound.")]
        public required double? Value { get; init; }

        /// <summary>The unit.</summary>
        [Description("V, A, W, Wh, Ah, ohm, F, H, Hz, degC, m, s, kg, 1/degC or ratio.")]
        public required string Unit { get; init; }

        /// <summary>The lowest case.</summary>
        [Description("The lowest case: the value less its tolerance, or the lower end of a range; null for an upper bound.")]
        public required double? Low { get; init; }

        /// <summary>The highest case.</summary>
        [Description("The highest case: the value plus its tolerance, or the upper end of a range; null for a lower bound.")]
        public required double? High { get; init; }

        /// <summary>How many.</summary>
        [Description("How many such things: 2 for 2x15A, whose value is 15.")]
        public required int Count { get; init; }

        /// <summary>Ac or dc.</summary>
        [Description("ac or dc where it was written, else null.")]
        public required string? Current { get; init; }

        /// <summary>The piece of the text.</summary>
        [Description("Exactly the piece of the text that was read.")]
        public required string Text { get; init; }
    }

    /// <summary>One way to read the text.</summary>
    public sealed record AlternativeJson
    {
        /// <summary>The reading.</summary>
        [Description("The reading written so that only it is meant.")]
        public required string Text { get; init; }

        /// <summary>Its quantities.</summary>
        [Description("Its quantities, in written order.")]
        public required IReadOnlyList<QuantityJson> Quantities { get; init; }

        /// <summary>How it was read.</summary>
        [Description("By what code or convention it was read; empty where the reading says it all.")]
        public required string Why { get; init; }
    }

    /// <summary>What was read.</summary>
    public sealed record QuantitiesJson
    {
        /// <summary>The quantities.</summary>
        [Description("In written order. Empty where the text is ambiguous and no reading is to be preferred.")]
        public required IReadOnlyList<QuantityJson> Quantities { get; init; }

        /// <summary>All readings of an ambiguous text.</summary>
        [Description("All readings of a text that may be meant in several ways, the likeliest first; empty where only one is possible.")]
        public required IReadOnlyList<AlternativeJson> Ambiguous { get; init; }

        /// <summary>What no quantity took.</summary>
        [Description("Pieces of the text that no quantity took, as written.")]
        public required IReadOnlyList<string> Unread { get; init; }
    }

    public static void MapDecodeQuantity(this RouteGroupBuilder api) =>
        api.MapPost("decode/quantity", Decode)
            .AllowAnonymous()
            .WithTags("decode")
            .WithSummary("Reads quantities and value codes.")
            .WithDescription("Reads what people write into values in SI units, with tolerances as low and high. What may be meant in several ways comes as alternatives, what cannot be read as a reason. Nothing is stored.")
            .Produces<QuantitiesJson>()
            .ProducesProblem(StatusCodes.Status400BadRequest)
            .ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static IResult Decode([FromBody] QuantityQuestion body)
    {
        var kind = PartKind.NotSaid;
        if (!string.IsNullOrWhiteSpace(body.Kind))
        {
            if (PartKinds.Find(body.Kind) is not { } known)
                return ApiProblem.Of(StatusCodes.Status400BadRequest, $"kind is one of {string.Join(", ", PartKinds.Known)}, or left out.", "kind");
            kind = known;
        }

        return QuantityParser.Read(body.Text, kind) switch
        {
            QuantityReading.Read read => TypedResults.Ok(new QuantitiesJson
            {
                Quantities = All(body.Text, read.Quantities),
                Ambiguous = All(body.Text, read.Alternatives),
                Unread = read.Unread,
            }),
            QuantityReading.Ambiguous ambiguous => TypedResults.Ok(new QuantitiesJson
            {
                Quantities = [],
                Ambiguous = All(body.Text, ambiguous.Alternatives),
                Unread = ambiguous.Unread,
            }),
            QuantityReading.Refused refused => ApiProblem.Of(StatusCodes.Status422UnprocessableEntity, refused.Reason, "text"),
            var other => throw new InvalidOperationException($"{other.GetType().Name} is no answer."),
        };
    }

    private static List<AlternativeJson> All(string text, IReadOnlyList<QuantityAlternative> alternatives) =>
        [.. alternatives.Select(alternative => new AlternativeJson { Text = alternative.Text, Quantities = All(text, alternative.Quantities), Why = alternative.Why })];

    private static List<QuantityJson> All(string text, IReadOnlyList<FoundQuantity> quantities) =>
    [
        .. quantities.Select(found => new QuantityJson
        {
            Value = found.Quantity.Value,
            Unit = found.Quantity.Unit.Code(),
            Low = found.Quantity.Low,
            High = found.Quantity.High,
            Count = found.Quantity.Count,
            Current = found.Quantity.Current switch { CurrentKind.Alternating => "ac", CurrentKind.Direct => "dc", _ => null },
            Text = text.Substring(found.Start, found.Length),
        }),
    ];
}
