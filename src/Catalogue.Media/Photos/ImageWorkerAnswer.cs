using System.Text.Json;
using System.Text.Json.Serialization;

namespace Catalogue.Media.Photos;

/// <summary>The one line of JSON that the worker process prints. Exactly one of the two parts is there.</summary>
internal sealed record ImageWorkerAnswer(ImageWorkerAnswer.Picture? Done, ImageWorkerAnswer.Reason? Refused)
{
    public string ToJson() => JsonSerializer.Serialize(this, ImageWorkerJson.Default.ImageWorkerAnswer);

    /// <summary>Null for anything that is no answer: the worker may have died, or been taken over.</summary>
    public static ImageWorkerAnswer? FromJson(string json)
    {
        try
        {
            return JsonSerializer.Deserialize(json, ImageWorkerJson.Default.ImageWorkerAnswer);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    internal sealed record Picture(int Width, int Height, IReadOnlyList<File> Renditions);

    internal sealed record File(string Name, int Width, int Height);

    internal sealed record Reason(ImageRefusal Code, string Text);
}

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    UseStringEnumConverter = true,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(ImageWorkerAnswer))]
internal sealed partial class ImageWorkerJson : JsonSerializerContext;
