using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Unicode;

namespace Catalogue.Data.Conversions;

/// <summary>How values are written to JSON columns and to the API: snake_case names and codes, units by their code.</summary>
public static class StoredJson
{
    /// <summary>The options; read-only.</summary>
    public static JsonSerializerOptions Options { get; } = Make();

    private static JsonSerializerOptions Make()
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web) { Encoder = JavaScriptEncoder.Create(UnicodeRanges.All) };
        Configure(options);
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    /// <summary>Sets the naming and the converters on other options.</summary>
    public static void Configure(JsonSerializerOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        options.PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.Converters.Add(new UnitJsonConverter());
        options.Converters.Add(new TypedIdJsonConverterFactory());
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false));
    }
}
