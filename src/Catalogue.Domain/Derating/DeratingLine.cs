using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Derating;

/// <summary>The guideline that a part is held against, or why there is none.</summary>
public abstract record DeratingLine
{
    private DeratingLine()
    {
    }

    /// <summary>There is one.</summary>
    /// <param name="Guideline">The guideline, to be named beside the figure.</param>
    /// <param name="Value">Its number at the part's temperature, as the guideline's measure says.</param>
    public sealed record Applied(DeratingGuideline Guideline, Interval Value) : DeratingLine;

    /// <summary>There is one, but it cannot be applied here; the line is then the rating alone.</summary>
    /// <param name="Guideline">The guideline.</param>
    /// <param name="Reason">Why not, in words.</param>
    public sealed record NotApplied(DeratingGuideline Guideline, string Reason) : DeratingLine;

    /// <summary>The preset has no usable guideline for this part and parameter; the line is then the rating alone.</summary>
    public sealed record None : DeratingLine;
}
