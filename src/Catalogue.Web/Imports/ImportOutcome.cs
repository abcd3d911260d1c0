namespace Catalogue.Web.Imports;

/// <summary>How an import ended.</summary>
public abstract record ImportOutcome
{
    private ImportOutcome()
    {
    }

    /// <summary>All of it was brought in.</summary>
    /// <param name="Report">What came of it; written as JSON.</param>
    public sealed record Done(object Report) : ImportOutcome;

    /// <summary>What was sent cannot be brought in.</summary>
    /// <param name="Reason">What is wrong and what would be right.</param>
    /// <param name="Report">More about it, written as JSON; or null.</param>
    public sealed record Refused(string Reason, object? Report = null) : ImportOutcome;
}
