using System.Buffers;
using System.Globalization;
using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using System.Text.Unicode;
using Catalogue.Data.Conversions;
using Catalogue.Domain.Components;
using Catalogue.Domain.Photos;
using Catalogue.Domain.Teardowns;

namespace Catalogue.Data.Archives;

/// <summary>
/// Records as lines and back. A line has the fields of its record by the names of the API, before them <c>record</c> and, in a revision, the revision's number.
/// What is computed, and what only this database knows, is left out; a new column of a record comes along by itself.
/// </summary>
internal static class ArchiveJson
{
    private const string KindField = "record";
    private const string RevisionField = "revision";
    private const string FamilyField = "family";
    private static readonly HashSet<string> OfThisDatabase = ["revision_id", "teardown_id", "version", "family_id"];
    private static readonly HashSet<string> OfTheOriginal = ["sha256", "width_pixels", "height_pixels"];
    private static readonly HashSet<string> OfTheAct = ["number", "state", "submitted_by", "opened_at", "published_at"];
    private static readonly Dictionary<Type, ArchiveKind> KindOf = ArchiveKind.All.ToDictionary(kind => kind.Type);

    /// <summary>The options; read-only.</summary>
    public static JsonSerializerOptions Options { get; } = Make();

    /// <summary>What of a record is not as it is stored.</summary>
    /// <param name="Revision">The revision's number.</param>
    /// <param name="Family">The match key of the family, for the kinds that name one.</param>
    /// <param name="ForOthers">True to leave out what the lab keeps to itself.</param>
    /// <param name="PublicCopy">The public copy in place of a photo's original, or null.</param>
    public readonly record struct Setting(int Revision = 0, string? Family = null, bool ForOthers = false, Photos.Rendition? PublicCopy = null);

    /// <summary>Writes a record as one line, its end included.</summary>
    public static void WriteLine(IBufferWriter<byte> target, ArchiveKind kind, object record, Setting setting)
    {
        using (var json = new Utf8JsonWriter(target, new JsonWriterOptions { Encoder = Options.Encoder }))
            Write(json, kind, record, setting, comparing: false);
        target.Write("\n"u8);
    }

    /// <summary>Writes a record for comparing: without its number, its state and what else tells only of the act of publishing.</summary>
    /// <param name="target">Where to.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="record">The record.</param>
    /// <param name="forOthers">True to leave out what the form that is given away does not tell.</param>
    public static void WriteForComparing(IBufferWriter<byte> target, ArchiveKind kind, object record, bool forOthers)
    {
        using var json = new Utf8JsonWriter(target);
        Write(json, kind, record, new Setting(ForOthers: forOthers), comparing: true);
    }

    /// <summary>Reads a line.</summary>
    /// <exception cref="JsonException">It is no record of its kind; the text says why, in words for the person who made the file.</exception>
    public static (ArchiveKind Kind, int? Revision, object Record, string? Family) ReadLine(ReadOnlyMemory<byte> line)
    {
        if (!Utf8.IsValid(line.Span))
            throw new JsonException("It is not UTF-8.");
        using var document = Parse(line);
        var root = document.RootElement;
        if (root.ValueKind is not JsonValueKind.Object)
            throw new JsonException("A line is one JSON object.");
        if (!root.TryGetProperty(KindField, out var named) || named.ValueKind is not JsonValueKind.String)
            throw new JsonException("It lacks the field “record”, which says what kind of line it is.");
        if (!ArchiveKind.ByName.TryGetValue(named.GetString()!, out var kind))
            throw new JsonException($"Lines of the kind “{named.GetString()}” are not known; there are {string.Join(", ", ArchiveKind.ByName.Keys)}.");
        RefuseFields(root, kind);
        int? revision = null;
        if (kind.IsOfRevision)
            revision = root.GetProperty(RevisionField).TryGetInt32OrNull() ?? throw new JsonException("“revision” is the number of a revision.");
        try
        {
            var record = root.Deserialize(kind.Type, Options)!;
            string? family = null;
            if (root.TryGetProperty(FamilyField, out var key) && key.ValueKind is JsonValueKind.String)
                family = key.GetString();
            return (kind, revision, record, family);
        }
        catch (JsonException exception)
        {
            var path = exception.Path?.TrimStart('$').TrimStart('.');
            throw new JsonException(string.IsNullOrEmpty(path) ? $"It is no {kind.Name}." : $"The field “{path}” holds what it cannot hold: {Value(root, path)}.");
        }
        catch (Exception exception) when (exception is ArgumentException or FormatException or OverflowException or InvalidOperationException)
        {
            throw new JsonException($"It is no {kind.Name}: {exception.Message}");
        }
    }

    private static void Write(Utf8JsonWriter json, ArchiveKind kind, object record, Setting setting, bool comparing)
    {
        json.WriteStartObject();
        foreach (var property in Options.GetTypeInfo(kind.Type).Properties)
        {
            if (comparing && ((kind == ArchiveKind.Revision && OfTheAct.Contains(property.Name)) || (setting.ForOthers && OfTheOriginal.Contains(property.Name))))
                continue;
            json.WritePropertyName(property.Name);
            var value = property.Name switch
            {
                RevisionField when kind.IsOfRevision => setting.Revision,
                FamilyField when IsLinked(kind) => setting.Family,
                _ => property.Get!(record),
            };
            if (setting.ForOthers)
                value = ForOthers(record, property.Name, value, setting.PublicCopy);
            JsonSerializer.Serialize(json, value, property.PropertyType, Options);
        }

        json.WriteEndObject();
    }

    // What is on no public page: serial numbers, rows as imported, names of files, who pressed which button.
    private static object? ForOthers(object record, string field, object? value, Photos.Rendition? copy) => (record, field) switch
    {
        (ArchiveLine.Teardown, "serial_number") => null,
        (Revision, "submitted_by") => null,
        (ArchiveLine.Publication, "published_by") => null,
        (BoardComponent, "imported_row") => Array.Empty<ImportedCell>(),
        (Photo, "file_name") => null,
        (Photo, "sha256") when copy is not null => copy.ContentSha256,
        (Photo, "width_pixels") when copy is not null => copy.WidthPixels,
        (Photo, "height_pixels") when copy is not null => copy.HeightPixels,
        _ => value,
    };

    private static bool IsLinked(ArchiveKind kind) => kind.Type == typeof(BoardComponent) || kind == ArchiveKind.FamilyMove;

    private static JsonDocument Parse(ReadOnlyMemory<byte> line)
    {
        string reason;
        try
        {
            if (!HoldsNul(line.Span))
                return JsonDocument.Parse(line, new JsonDocumentOptions { AllowDuplicateProperties = false });
            reason = "It holds the character NUL, which no text may hold.";
        }
        catch (InvalidOperationException)
        {
            reason = "It holds half of a character (a lone surrogate).";
        }
        catch (JsonException exception)
        {
            reason = exception.BytePositionInLine is { } position ? string.Create(CultureInfo.InvariantCulture, $"It is not JSON at byte {position + 1}.") : "A field stands twice.";
        }

        throw new JsonException(reason);
    }

    // A NUL, or half of a character written as an escape, is in JSON but in no text that a database keeps.
    private static bool HoldsNul(ReadOnlySpan<byte> line)
    {
        var reader = new Utf8JsonReader(line);
        while (reader.Read())
            if (reader.TokenType is JsonTokenType.String or JsonTokenType.PropertyName && reader.ValueIsEscaped && reader.GetString()!.Contains('\0', StringComparison.Ordinal))
                return true;
        return false;
    }

    private static void RefuseFields(JsonElement root, ArchiveKind kind)
    {
        var fields = Options.GetTypeInfo(kind.Type).Properties;
        foreach (var given in root.EnumerateObject())
            if (!fields.Any(field => field.Name == given.Name))
                throw new JsonException($"The field “{Short(given.Name)}” is not known in lines of the kind “{kind.Name}”.");
        foreach (var field in fields)
            if (field.IsRequired && !root.TryGetProperty(field.Name, out _))
                throw new JsonException($"It lacks the field “{field.Name}”, which lines of the kind “{kind.Name}” must have.");
    }

    private static string Value(JsonElement root, string path)
    {
        var field = path.Split('.', '[')[0];
        return root.TryGetProperty(field, out var value) ? Short(value.GetRawText()) : "nothing";
    }

    private static string Short(string text) => text.Length <= 60 ? text : text[..57] + "...";

    private static int? TryGetInt32OrNull(this JsonElement element) => element.ValueKind is JsonValueKind.Number && element.TryGetInt32(out var value) ? value : null;

    private static JsonSerializerOptions Make()
    {
        var options = new JsonSerializerOptions
        {
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
            RespectNullableAnnotations = true,
            RespectRequiredConstructorParameters = true,
            AllowDuplicateProperties = false,
            TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { Shape } },
        };
        StoredJson.Configure(options);
        options.Converters.Insert(0, new ArchiveMomentConverter());
        options.MakeReadOnly();
        return options;
    }

    private static void Shape(JsonTypeInfo info)
    {
        if (!KindOf.TryGetValue(info.Type, out var kind))
            return;
        var nullability = new NullabilityInfoContext();
        for (var i = info.Properties.Count - 1; i >= 0; i--)
        {
            var property = info.Properties[i];
            if (property.Set is null || OfThisDatabase.Contains(property.Name))
                info.Properties.RemoveAt(i);
            else
                property.IsRequired = nullability.Create((PropertyInfo)property.AttributeProvider!).WriteState is not NullabilityState.Nullable;
        }

        var place = 0;
        Add(KindField, typeof(string), _ => kind.Name, isRequired: true);
        if (kind.IsOfRevision)
            Add(RevisionField, typeof(int), _ => 0, isRequired: true);
        if (IsLinked(kind))
        {
            place = info.Properties.Count;
            Add(FamilyField, typeof(string), _ => null, isRequired: kind == ArchiveKind.FamilyMove);
        }

        void Add(string name, Type type, Func<object, object?> get, bool isRequired)
        {
            var property = info.CreateJsonPropertyInfo(type, name);
            property.Get = get;
            property.Set = (_, _) => { };
            property.IsRequired = isRequired;
            property.IsSetNullable = !isRequired;
            property.IsGetNullable = !isRequired;
            info.Properties.Insert(place++, property);
        }
    }
}
