using System.Diagnostics.CodeAnalysis;

namespace Catalogue.Domain.Isolation;

/// <summary>What the insulation is there for.</summary>
public enum InsulationKind
{
    /// <summary>Needed for the function only.</summary>
    Functional,

    /// <summary>Basic protection.</summary>
    Basic,

    /// <summary>Independent, beside the basic one.</summary>
    Supplementary,

    /// <summary>Basic and supplementary together.</summary>
    [SuppressMessage("Naming", "CA1720", Justification = "The word of the standards.")]
    Double,

    /// <summary>One insulation that protects like a double one.</summary>
    Reinforced,
}
