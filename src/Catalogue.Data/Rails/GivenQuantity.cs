using System.ComponentModel;
using System.Text.Json;
using System.Text.Json.Serialization;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Quantities;

namespace Catalogue.Data.Rails;

/// <summary>A quantity as it is given: a bare number, or one with its spread, evidence and source.</summary>
[JsonConverter(typeof(Converter))]
[Description("A number in the unit that the field's name says, or an object with nominal and optionally low, high, evidence and source.")]
public sealed record GivenQuantity
{
    /// <summary>The value.</summary>
    public required double Nominal { get; init; }

    /// <summary>The lowest case; the value itself when not given.</summary>
    public double? Low { get; init; }

    /// <summary>The highest case; the value itself when not given.</summary>
    public double? High { get; init; }

    /// <summary>How it is known; a guess when not given.</summary>
    public Evidence? Evidence { get; init; }

    /// <summary>Where it was found.</summary>
    public string? Source { get; init; }

    /// <summary>The three cases as an interval, or why they are none.</summary>
    internal Refusal? TryInterval(string field, out Interval interval)
    {
        var made = Interval.TryCreate(Low ?? Nominal, Nominal, High ?? Nominal);
        interval = made ?? default;
        return made is null ? new Refusal(field, $"{field}: low, nominal and high are finite numbers in that order.") : null;
    }

    private sealed class Converter : JsonConverter<GivenQuantity>
    {
        public override GivenQuantity Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            if (reader.TokenType is JsonTokenType.Number)
                return new GivenQuantity { Nominal = reader.GetDouble() };
            if (reader.TokenType is not JsonTokenType.StartObject)
                throw new JsonException("A quantity is a number, or an object such as {\"low\": 20, \"nominal\": 22, \"high\": 23, \"evidence\": \"measured\", \"source\": \"test 2\"}.");
            var parts = JsonSerializer.Deserialize<Parts>(ref reader, options)!;
            return new GivenQuantity
            {
                Nominal = parts.Nominal ?? throw new JsonException("A quantity given as an object needs nominal."),
                Low = parts.Low,
                High = parts.High,
                Evidence = parts.Evidence,
                Source = parts.Source,
            };
        }

        public override void Write(Utf8JsonWriter writer, GivenQuantity value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, new Parts(value.Low, value.Nominal, value.High, value.Evidence, value.Source), options);
    }

    private sealed record Parts(double? Low, double? Nominal, double? High, Evidence? Evidence, string? Source);
}
