using System.Text.Json;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Catalogue.Data.Conversions;

/// <summary>Stores a value as JSON; it is compared and copied by its JSON too.</summary>
/// <typeparam name="T">The type of the value.</typeparam>
internal sealed class StoredJsonConverter<T>() : ValueConverter<T, string>(value => JsonSerializer.Serialize(value, StoredJson.Options), text => Read(text))
    where T : class
{
    public static ValueComparer<T> Comparer { get; } = new(
        (left, right) => JsonSerializer.Serialize(left, StoredJson.Options) == JsonSerializer.Serialize(right, StoredJson.Options),
        value => JsonSerializer.Serialize(value, StoredJson.Options).GetHashCode(StringComparison.Ordinal),
        value => Read(JsonSerializer.Serialize(value, StoredJson.Options)));

    private static T Read(string text) =>
        JsonSerializer.Deserialize<T>(text, StoredJson.Options) ?? throw new InvalidOperationException("A stored JSON value was null.");
}
