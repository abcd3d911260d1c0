namespace Catalogue.Domain.UsbPd;

/// <summary>A capability at its place in a list.</summary>
/// <param name="Position">From 1.</param>
/// <param name="Capability">What is offered there.</param>
/// <param name="Word">The word it was decoded from; null for text and for a damaged word.</param>
/// <param name="Origin">What its numbers were taken from.</param>
public sealed record PlacedCapability(int Position, Capability Capability, uint? Word, WordOrigin Origin)
{
    /// <summary>Decodes a word of a source's list.</summary>
    public static PlacedCapability Of(int position, uint word, WordOrigin origin) => new(position, CapabilityWord.Decode(word, position), word, origin);
}
