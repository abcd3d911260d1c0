namespace Catalogue.Domain.Photos;

/// <summary>Where a picture seems to belong, by its name and the names of its folders. Only ever a proposal.</summary>
/// <param name="Path">The path as it came.</param>
/// <param name="Place">Where it seems to belong.</param>
/// <param name="Reasons">Why, in plain words, the outermost folder first; empty where the names say nothing.</param>
/// <param name="Doubts">What is unsure, in plain words; empty where nothing is.</param>
public sealed record PhotoProposal(string Path, PhotoPlace Place, IReadOnlyList<string> Reasons, IReadOnlyList<string> Doubts)
{
    /// <summary>True where nothing is in doubt.</summary>
    public bool IsSure => Doubts.Count == 0;
}
