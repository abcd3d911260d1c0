namespace Catalogue.Domain.Figures;

/// <summary>Where a figure's interval lies against its lines, worst first. A screening word, never a certificate.</summary>
public enum Verdict
{
    /// <summary>The nominal case is beyond the part's own rating.</summary>
    OverRating,

    /// <summary>Within the rating, but the nominal case is beyond the guideline.</summary>
    OverGuideline,

    /// <summary>The nominal case is inside its line, the worst case beyond.</summary>
    Thin,

    /// <summary>The whole interval is inside.</summary>
    Adequate,

    /// <summary>The worst case is inside the ample line too.</summary>
    Ample,

    /// <summary>An input is missing, and is named.</summary>
    Unknown,

    /// <summary>A fact that is held against no line, such as a loss or a stored energy.</summary>
    NoLine,
}
