using System.Globalization;
using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Catalogue.Data.Archives;
using Catalogue.Domain;
using Catalogue.Domain.Quantities;
using Microsoft.EntityFrameworkCore.Metadata;

namespace Catalogue.Data.Tests.Archives;

/// <summary>Makes the JSON Schema of each kind of line from the records themselves and their documentation; the files in docs/archive must be these.</summary>
internal static class ArchiveSchemas
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private static readonly Dictionary<string, XElement> Documents = new[] { "Catalogue.Domain.xml", "Catalogue.Data.xml" }
        .SelectMany(name => XDocument.Load(Path.Combine(AppContext.BaseDirectory, name)).Descendants("member"))
        .DistinctBy(member => member.Attribute("name")!.Value)
        .ToDictionary(member => member.Attribute("name")!.Value);

    public static string Of(ArchiveKind kind, IModel model)
    {
        var made = JsonSchemaExporter.GetJsonSchemaAsNode(ArchiveJson.Options, kind.Type, new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Transform }).AsObject();
        var fields = made["properties"]!.AsObject();
        fields["record"] = new JsonObject { ["const"] = kind.Name };
        if (kind.IsOfRevision)
            fields["revision"] = new JsonObject { ["type"] = "integer", ["minimum"] = 1, ["description"] = "The number of the revision; its line stands before." };
        if (fields["family"] is JsonObject family)
            family["description"] = "The match key of the part family; its line stands in families.jsonl.";
        if (model.FindEntityType(kind.Type) is { } entity)
        {
            foreach (var property in entity.GetProperties().Where(property => property.ClrType == typeof(string) && property.GetMaxLength() is not null))
                if (fields[JsonNamingPolicy.SnakeCaseLower.ConvertName(property.Name)] is JsonObject field)
                    field["maxLength"] = property.GetMaxLength();
        }

        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = string.Create(CultureInfo.InvariantCulture, $"https://catalogue.example/teardown-archive/v{ArchiveForm.Version}/{kind.Name}.json"),
            ["title"] = kind.Name,
            ["description"] = Summary("T:" + kind.Type.FullName!.Replace('+', '.')),
        };
        foreach (var (name, value) in made.Where(pair => pair.Key is not "description").ToList())
        {
            made.Remove(name);
            schema[name] = value;
        }

        return schema.ToJsonString(Indented) + "\n";
    }

    private static JsonNode Transform(JsonSchemaExporterContext context, JsonNode node)
    {
        var type = context.TypeInfo.Type;
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        var told = plain switch
        {
            _ when plain == typeof(Unit) => Text(new JsonObject { ["enum"] = new JsonArray([.. UnitSymbols.Codes.Select(code => JsonValue.Create(code))]) }),
            _ when plain == typeof(DateTimeOffset) => Text(new JsonObject { ["format"] = "date-time", ["pattern"] = "^\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(\\.\\d+)?(Z|[+-]\\d\\d:\\d\\d)$" }),
            _ when plain.GetInterfaces().Any(made => made.IsGenericType && made.GetGenericTypeDefinition() == typeof(ITypedId<>)) => Text(new JsonObject { ["format"] = "uuid", ["pattern"] = "^[0-9A-Fa-f]{8}(-[0-9A-Fa-f]{4}){3}-[0-9A-Fa-f]{12}$" }),
            _ => node,
        };
        if (told is JsonObject field && context.PropertyInfo?.AttributeProvider is PropertyInfo property && Description(property) is { } text && !field.ContainsKey("description"))
            field["description"] = text;
        return told;

        JsonObject Text(JsonObject made)
        {
            if (type == plain)
                return new JsonObject([new("type", "string"), .. Taken(made)]);
            if (made["enum"] is JsonArray codes)
                codes.Add((JsonNode?)null);
            return new JsonObject([new("type", new JsonArray("string", "null")), .. Taken(made)]);
        }
    }

    private static List<KeyValuePair<string, JsonNode?>> Taken(JsonObject made)
    {
        var pairs = made.ToList();
        made.Clear();
        return pairs;
    }

    private static string? Description(PropertyInfo property)
    {
        var owner = property.DeclaringType!.FullName!.Replace('+', '.');
        return Summary($"P:{owner}.{property.Name}")
            ?? Plain(Documents.GetValueOrDefault("T:" + owner)?.Elements("param").FirstOrDefault(parameter => parameter.Attribute("name")!.Value == property.Name));
    }

    private static string? Summary(string member) => Plain(Documents.GetValueOrDefault(member)?.Element("summary"));

    private static string? Plain(XElement? element)
    {
        if (element is null)
            return null;
        foreach (var reference in element.Descendants().Where(inner => inner.Attribute("cref") is not null).ToList())
            reference.ReplaceWith(reference.Attribute("cref")!.Value.Split('.')[^1].Split('(')[0]);
        return Regex.Replace(element.Value, @"\s+", " ").Trim() is { Length: > 0 } text ? text : null;
    }
}
