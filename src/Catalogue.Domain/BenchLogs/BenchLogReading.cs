namespace Catalogue.Domain.BenchLogs;

/// <summary>What came of reading a log.</summary>
public abstract record BenchLogReading
{
    private BenchLogReading()
    {
    }

    /// <summary>The log was read.</summary>
    /// <param name="Log">What it says.</param>
    public sealed record Read(BenchLog Log) : BenchLogReading;

    /// <summary>The content is no bench log.</summary>
    /// <param name="Reason">Why, and what would be right.</param>
    public sealed record Refused(string Reason) : BenchLogReading;
}
