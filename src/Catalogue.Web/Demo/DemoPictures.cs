using System.Reflection;
using System.Text.Json;

namespace Catalogue.Web.Demo;

/// <summary>The embedded drawings of the demo and the places of the parts in them. docs/demo holds their sources.</summary>
internal static class DemoPictures
{
    private const string Folder = "Catalogue.Web.Demo.Pictures.";

    private static readonly JsonSerializerOptions SnakeCase = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    private static readonly Lazy<Dictionary<string, Dictionary<string, Place>>> Places = new(ReadPlaces);

    /// <summary>Where something lies in a picture, in fractions of it.</summary>
    /// <param name="X">Left edge.</param>
    /// <param name="Y">Top edge.</param>
    /// <param name="Width">Width.</param>
    /// <param name="Height">Height.</param>
    /// <param name="PinX">A point on the body that no print covers.</param>
    /// <param name="PinY">A point on the body that no print covers.</param>
    /// <param name="IsGroup">True where several parts share the place.</param>
    /// <param name="Marking">What is printed there, with ? for a character that is worn away.</param>
    internal sealed record Place(double X, double Y, double Width, double Height, double PinX, double PinY, bool IsGroup, string Marking);

    /// <summary>A picture file.</summary>
    /// <param name="file">Its name.</param>
    /// <exception cref="InvalidOperationException">There is none of that name.</exception>
    public static Stream Open(string file) =>
        Assembly.GetExecutingAssembly().GetManifestResourceStream(Folder + file) ?? throw new InvalidOperationException($"The demo has no picture “{file}”.");

    /// <summary>The places in a picture by the name of what lies there; empty where nothing is named.</summary>
    public static IReadOnlyDictionary<string, Place> PlacesIn(string file) =>
        Places.Value.TryGetValue(Path.GetFileNameWithoutExtension(file), out var places) ? places : new Dictionary<string, Place>();

    private static Dictionary<string, Dictionary<string, Place>> ReadPlaces()
    {
        using var stream = Open("anchors.json");
        return JsonSerializer.Deserialize<Dictionary<string, Dictionary<string, Place>>>(stream, SnakeCase)
            ?? throw new InvalidOperationException("The places of the demo's drawings are empty.");
    }
}
