namespace Catalogue.Domain.Isolation;

/// <summary>What an isolation note can say. No outcome is a verdict: a qualified assessor with the product standard decides.</summary>
public enum IsolationOutcome
{
    /// <summary>The lowest case of the measurement is clearly above the orientation value.</summary>
    ClearlyAbove,

    /// <summary>Near the orientation value or below it: ask.</summary>
    NearOrBelowAsk,

    /// <summary>No orientation value fits, or the measurement is not fully described.</summary>
    NotAssessable,
}
