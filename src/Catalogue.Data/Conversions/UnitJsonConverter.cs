using System.Text.Json;
using System.Text.Json.Serialization;
using Catalogue.Domain.Quantities;

namespace Catalogue.Data.Conversions;

/// <summary>Writes a unit as its code.</summary>
internal sealed class UnitJsonConverter : JsonConverter<Unit>
{
    public override Unit Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        UnitSymbols.Find(reader.GetString()) ?? throw new JsonException($"A unit is one of {string.Join(", ", UnitSymbols.Codes)}.");

    public override void Write(Utf8JsonWriter writer, Unit value, JsonSerializerOptions options) => writer.WriteStringValue(value.Code());
}
