namespace Catalogue.Domain.Figures;

/// <summary>One of the three cases of an interval.</summary>
public enum End
{
    /// <summary>The lowest case.</summary>
    Low,

    /// <summary>The value.</summary>
    Nominal,

    /// <summary>The highest case.</summary>
    High,
}
