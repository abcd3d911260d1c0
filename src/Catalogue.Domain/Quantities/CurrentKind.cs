namespace Catalogue.Domain.Quantities;

/// <summary>The kind of current a voltage or current was said to be of.</summary>
public enum CurrentKind : byte
{
    /// <summary>Nothing was said.</summary>
    NotSaid,

    /// <summary>Alternating (<c>~</c>, <c>AC</c>, <c>rms</c>).</summary>
    Alternating,

    /// <summary>Direct (<c>⎓</c>, <c>=</c>, <c>DC</c>).</summary>
    Direct,
}
