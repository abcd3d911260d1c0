using System.Text.Json;
using System.Text.Json.Serialization;
using Catalogue.Domain;

namespace Catalogue.Data.Conversions;

/// <summary>Writes typed ids as their UUID.</summary>
internal sealed class TypedIdJsonConverterFactory : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) =>
        typeToConvert.GetInterfaces().Any(type => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ITypedId<>));

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(Converter<>).MakeGenericType(typeToConvert))!;

    private sealed class Converter<TId> : JsonConverter<TId>
        where TId : struct, ITypedId<TId>
    {
        public override TId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType is JsonTokenType.String && reader.TryGetGuid(out var value)
                ? TId.From(value)
                : throw new JsonException("An id is a UUID, as an earlier answer gave it.");

        public override void Write(Utf8JsonWriter writer, TId value, JsonSerializerOptions options) => writer.WriteStringValue(value.Value);
    }
}
