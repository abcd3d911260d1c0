using Catalogue.Domain.Photos;

namespace Catalogue.Lab.Imports;

/// <summary>A picture that waits to be added: where it would go, and what became of it.</summary>
public sealed class PictureInHand
{
    /// <summary>Its path as it came.</summary>
    public required string Path { get; init; }

    /// <summary>Its place among the files that were chosen; -1 in a zip file.</summary>
    public int Index { get; init; } = -1;

    /// <summary>Where it goes, or null to leave it out.</summary>
    public PhotoPlace? Place { get; set; }

    /// <summary>Why it goes there.</summary>
    public IReadOnlyList<string> Reasons { get; init; } = [];

    /// <summary>What is unsure.</summary>
    public IReadOnlyList<string> Doubts { get; init; } = [];

    /// <summary>True for a file that cannot be added, whatever place it is given.</summary>
    public bool IsRefused { get; init; }

    /// <summary>Why it is not added, or what is odd about it, or null.</summary>
    public string? Remark { get; set; }

    /// <summary>True where it is to be added.</summary>
    public bool IsWanted => Place is not null && !IsRefused;

    /// <summary>A picture with what its names propose.</summary>
    public static PictureInHand Of(PhotoProposal proposal, int index)
    {
        ArgumentNullException.ThrowIfNull(proposal);
        return new PictureInHand { Path = proposal.Path, Index = index, Place = proposal.Place, Reasons = proposal.Reasons, Doubts = proposal.Doubts };
    }
}
