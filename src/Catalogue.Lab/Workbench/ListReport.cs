using Catalogue.Domain.Components.Lists;

namespace Catalogue.Lab.Workbench;

/// <summary>What an import did or would do, as the endpoint answers it; long lists are cut by the script and counted.</summary>
/// <param name="Problem">Why nothing could be read, or null.</param>
/// <param name="Rows">Part lines in the file.</param>
/// <param name="Imported">How many become components.</param>
/// <param name="Rejected">The first of those that do not, with the reason.</param>
/// <param name="RejectedCount">How many do not.</param>
/// <param name="Warnings">The first of what is worth a look.</param>
/// <param name="WarningCount">How many warnings there are.</param>
/// <param name="Columns">The columns and what each was taken for.</param>
/// <param name="Encoding">The encoding, or null for a workbook.</param>
/// <param name="Delimiter">What stands between cells, or null for a workbook.</param>
public sealed record ListReport(
    string? Problem,
    int Rows,
    int Imported,
    IReadOnlyList<RejectedRow>? Rejected,
    int RejectedCount,
    IReadOnlyList<string>? Warnings,
    int WarningCount,
    IReadOnlyList<ListReport.Column>? Columns,
    string? Encoding,
    string? Delimiter)
{
    /// <summary>One column of the file.</summary>
    /// <param name="Header">Its header as written.</param>
    /// <param name="Meaning">The code of what it was taken for, or null where it is only kept.</param>
    public sealed record Column(string? Header, string? Meaning);
}
