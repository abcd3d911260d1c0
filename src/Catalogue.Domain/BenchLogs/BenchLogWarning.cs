namespace Catalogue.Domain.BenchLogs;

/// <summary>Something about a log that its reader must know.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Text">The words.</param>
/// <param name="IsQuestion">True where the result waits for an answer: which unit, which day, which order.</param>
public sealed record BenchLogWarning(BenchLogWarningKind Kind, string Text, bool IsQuestion = false);
