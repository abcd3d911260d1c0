namespace Catalogue.Domain.Quantities;

/// <summary>What came of reading a quantity somebody typed.</summary>
public abstract record QuantityReading
{
    private QuantityReading()
    {
    }

    /// <summary>One value in its base unit.</summary>
    /// <param name="Value">Finite.</param>
    /// <param name="Unit">The base unit.</param>
    public sealed record Read(double Value, Unit Unit) : QuantityReading;

    /// <summary>It may be meant in more than one way; nothing is chosen.</summary>
    /// <param name="Alternatives">The readings, each as text.</param>
    public sealed record Ambiguous(IReadOnlyList<string> Alternatives) : QuantityReading;

    /// <summary>It is no quantity.</summary>
    /// <param name="Reason">Says what was wrong and what would be right.</param>
    public sealed record Refused(string Reason) : QuantityReading;
}
