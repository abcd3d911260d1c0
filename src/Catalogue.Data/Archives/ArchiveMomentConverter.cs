using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Catalogue.Data.Archives;

/// <summary>Moments in UTC, to the microsecond that the database keeps; one that says no offset is not taken.</summary>
internal sealed class ArchiveMomentConverter : JsonConverter<DateTimeOffset>
{
    private const string Form = "yyyy-MM-ddTHH:mm:ss.ffffffZ";

    public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType is not JsonTokenType.String || reader.GetString() is not { } text
            || !(text.EndsWith('Z') || (text.Length > 6 && text[^6] is '+' or '-')) || !reader.TryGetDateTimeOffset(out var moment))
            throw new JsonException("A moment is written with its offset from UTC, such as 2026-03-09T14:05:00Z.");
        var utc = moment.ToUniversalTime();
        return utc.AddTicks(-(utc.Ticks % TimeSpan.TicksPerMicrosecond));
    }

    public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
        writer.WriteStringValue(value.UtcDateTime.ToString(Form, CultureInfo.InvariantCulture));
}
