namespace Catalogue.Data.Archives;

/// <summary>Where picture files lie and are taken in; this project knows no media store of its own.</summary>
/// <param name="OpenAsync">Opens a file of the store by its name there; null when there is none.</param>
/// <param name="TakeInAsync">Takes a picture in from end to end, or refuses it; a fault of the machine is thrown.</param>
public sealed record ArchivePhotos(Func<string, CancellationToken, Task<Stream?>> OpenAsync, Func<Stream, CancellationToken, Task<ArchivePhotos.Taken>> TakeInAsync)
{
    /// <summary>A picture that was looked at.</summary>
    /// <param name="Refusal">Why it was not taken in, or null; then the rest says nothing.</param>
    /// <param name="Sha256">SHA-256 of the file, lower-case hex.</param>
    /// <param name="Kind"><c>jpeg</c>, <c>png</c> or <c>webp</c>.</param>
    /// <param name="WidthPixels">Width of the upright picture.</param>
    /// <param name="HeightPixels">Height of the upright picture.</param>
    public sealed record Taken(string? Refusal, string Sha256, string Kind, int WidthPixels, int HeightPixels);
}
