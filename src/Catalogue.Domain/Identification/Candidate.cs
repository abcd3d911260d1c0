using Catalogue.Domain.Families;

namespace Catalogue.Domain.Identification;

/// <summary>A family that a marking may belong to.</summary>
public sealed record Candidate
{
    /// <summary>The family.</summary>
    public required CandidateFamily Family { get; init; }

    /// <summary>The name that fits best.</summary>
    public required FamilyName Name { get; init; }

    /// <summary>The reading of the marking that fits best.</summary>
    public required MarkingReading Reading { get; init; }

    /// <summary>
    /// How probable it is that the part is of this family, 0 to 1, after what was read and what else is known. The scores of all candidates add up to less
    /// than 1: the rest is that the family is not in the catalogue.
    /// </summary>
    public required double Score { get; init; }

    /// <summary>The score in a word: <c>very likely</c> from 0.9, <c>likely</c> from 0.6, <c>possible</c> from 0.3, else <c>unlikely</c>.</summary>
    public string Likelihood => Score switch
    {
        >= 0.9 => "very likely",
        >= 0.6 => "likely",
        >= 0.3 => "possible",
        _ => "unlikely",
    };

    /// <summary>1 for identical texts (<see cref="MarkingDistance.Similarity"/>).</summary>
    public required double Similarity { get; init; }

    /// <summary>True where another candidate is about as probable: such a one is never taken by itself.</summary>
    public required bool IsTied { get; init; }

    /// <summary>What speaks for and against it, in words, the weightiest first.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }
}
