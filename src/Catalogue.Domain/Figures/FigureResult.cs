using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Figures;

/// <summary>What came of computing a figure.</summary>
/// <param name="Working">The sum, or as much of its inputs as is known.</param>
public abstract record FigureResult(Working Working)
{
    /// <summary>It was computed.</summary>
    /// <param name="Value">From the worst to the best case of the inputs.</param>
    /// <param name="Unit">The unit of the value.</param>
    /// <param name="Verdict">Where the interval lies against its lines.</param>
    /// <param name="StaticOnly">True when a stress known to exist there is left out; the verdict is then at best adequate.</param>
    /// <param name="Working">The sum.</param>
    public sealed record Computed(Interval Value, Unit Unit, Verdict Verdict, bool StaticOnly, Working Working) : FigureResult(Working);

    /// <summary>It cannot be computed.</summary>
    /// <param name="Missing">What is missing; at least one.</param>
    /// <param name="Working">The inputs that are known.</param>
    public sealed record Unknown(IReadOnlyList<MissingInput> Missing, Working Working) : FigureResult(Working);
}
