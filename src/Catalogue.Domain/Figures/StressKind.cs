namespace Catalogue.Domain.Figures;

/// <summary>The kind of stress that a guideline limits.</summary>
public enum StressKind
{
    /// <summary>Voltage across the part, as a share of its rated voltage.</summary>
    Voltage,

    /// <summary>Current through the part, as a share of its rated current.</summary>
    Current,
}
