using Catalogue.Data.Imports;

namespace Catalogue.Web.Imports;

/// <summary>A run that is under way.</summary>
/// <param name="Run">What was asked for, and by whom.</param>
/// <param name="File">The file; it can be read from any place.</param>
/// <param name="ReportAsync">Says how many parts are done, and how many there are.</param>
internal sealed record ImportWork(ImportRun Run, Stream File, Func<int, int, CancellationToken, Task> ReportAsync);
