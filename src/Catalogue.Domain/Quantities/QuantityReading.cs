namespace Catalogue.Domain.Quantities;

/// <summary>What came of reading a text with quantities.</summary>
public abstract record QuantityReading
{
    private QuantityReading()
    {
    }

    /// <summary>Read, with one reading or one that is to be preferred.</summary>
    /// <param name="Quantities">In written order, at least one.</param>
    /// <param name="Unread">Pieces of the text that no quantity took, in written order.</param>
    /// <param name="Alternatives">Where the text may be meant otherwise too: all readings, the one in Quantities first. Else empty.</param>
    public sealed record Read(IReadOnlyList<FoundQuantity> Quantities, IReadOnlyList<string> Unread, IReadOnlyList<QuantityAlternative> Alternatives) : QuantityReading;

    /// <summary>It may be meant in more than one way and none is to be preferred; nothing is chosen.</summary>
    /// <param name="Alternatives">The readings, at least two.</param>
    /// <param name="Unread">Pieces of the text that no quantity took.</param>
    public sealed record Ambiguous(IReadOnlyList<QuantityAlternative> Alternatives, IReadOnlyList<string> Unread) : QuantityReading
    {
        /// <summary>The question to the person who typed it.</summary>
        public string Ask(string typed) => $"“{typed.Trim()}” may be meant as {string.Join(" or ", Alternatives.Select(alternative => alternative.Text))}; write it so that only one is meant.";
    }

    /// <summary>It holds no quantity, or one that cannot be.</summary>
    /// <param name="Reason">Says what was wrong and what would be right.</param>
    public sealed record Refused(string Reason) : QuantityReading;
}
