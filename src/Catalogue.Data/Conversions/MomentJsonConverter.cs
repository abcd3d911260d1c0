using System.Text.Json;
using System.Text.Json.Serialization;

namespace Catalogue.Data.Conversions;

/// <summary>Reads a moment that says its offset from UTC; one without would be taken for the server's own time, and be hours off.</summary>
internal sealed class MomentJsonConverter : JsonConverter<DateTimeOffset>
{
    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.TokenType is JsonTokenType.String && HasOffset(reader.GetString()!) && reader.TryGetDateTimeOffset(out var moment)
            ? moment
            : throw new JsonException("A moment is written with its offset from UTC, such as 2026-03-09T14:05:00Z or 2026-03-09T15:05:00+01:00.");

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) => writer.WriteStringValue(value);

    private static bool HasOffset(string text) =>
        text.Contains('T', StringComparison.Ordinal) && (text.EndsWith('Z') || (text.Length > 6 && text[^6] is '+' or '-'));
}
