namespace Catalogue.Domain.Consistency;

/// <summary>How much two facts that do not go together weigh, worst first.</summary>
public enum ContradictionSeverity
{
    /// <summary>Both cannot be true.</summary>
    Contradiction,

    /// <summary>Both can be true, but seldom are: worth another look.</summary>
    LookAgain,
}
