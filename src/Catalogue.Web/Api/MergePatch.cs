using System.Text.Json;
using System.Text.Json.Nodes;
using Catalogue.Data.Teardowns;

namespace Catalogue.Web.Api;

/// <summary>Applies a JSON merge patch (RFC 7396) to a form: what is not named stays, what is null is taken away, and refused where it may not be missing.</summary>
internal static class MergePatch
{
    /// <summary>The form as the patch makes it, or why it cannot be.</summary>
    public static ChangeOutcome<TForm> Apply<TForm>(TForm form, JsonElement patch, JsonSerializerOptions options)
        where TForm : class
    {
        if (patch.ValueKind is not JsonValueKind.Object)
            return new ChangeOutcome<TForm>.Refused(null, "A change is a JSON object that names the fields to change.");
        try
        {
            var target = JsonSerializer.SerializeToNode(form, options)!.AsObject();
            Merge(target, patch);
            return new ChangeOutcome<TForm>.Done(target.Deserialize<TForm>(options)!);
        }
        catch (JsonException exception)
        {
            throw new BadHttpRequestException("The change could not be read.", StatusCodes.Status400BadRequest, exception);
        }
        catch (InvalidOperationException exception)
        {
            // The reader's word for half a surrogate pair in a name or a text.
            throw new BadHttpRequestException("The JSON holds a broken character.", StatusCodes.Status400BadRequest, exception);
        }
    }

    private static void Merge(JsonObject target, JsonElement patch)
    {
        foreach (var property in patch.EnumerateObject())
        {
            if (property.Value.ValueKind is JsonValueKind.Object && target[property.Name] is JsonObject inner)
                Merge(inner, property.Value);
            else
                // A null stays a null: a field that may be missing takes it, one that may not refuses it, and none falls back to some first value.
                target[property.Name] = JsonNode.Parse(property.Value.GetRawText());
        }
    }
}
