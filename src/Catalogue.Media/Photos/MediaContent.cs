namespace Catalogue.Media.Photos;

/// <summary>An opened file of the store. Whoever opened it disposes it.</summary>
/// <param name="Stream">The bytes from the start; it can seek.</param>
/// <param name="Length">Number of bytes.</param>
public sealed record MediaContent(Stream Stream, long Length) : IAsyncDisposable
{
    /// <inheritdoc/>
    public ValueTask DisposeAsync() => Stream.DisposeAsync();
}
