namespace Catalogue.Media.Photos;

/// <summary>One JPEG made from a photo: upright, without metadata other than an RGB colour profile.</summary>
/// <param name="Path">Full path of the file in the folder that the caller gave.</param>
/// <param name="Width">Pixels.</param>
/// <param name="Height">Pixels.</param>
/// <param name="Bytes">Length of the file.</param>
public sealed record Rendition(string Path, int Width, int Height, long Bytes);
