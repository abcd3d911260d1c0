using Catalogue.Domain.Components.Lists;

namespace Catalogue.Lab.Workbench;

/// <summary>What an import did or would do, as the endpoint answers it; long lists are cut by the script and counted.</summary>
public sealed record ListReport
{
    /// <summary>Why nothing could be read, or null.</summary>
    public string? Problem { get; init; }

    /// <summary>Part lines in the file.</summary>
    public int Rows { get; init; }

    /// <summary>How many are taken over.</summary>
    public int Imported { get; init; }

    /// <summary>How many become new components.</summary>
    public int Added { get; init; }

    /// <summary>How many change a component that is there.</summary>
    public int Updated { get; init; }

    /// <summary>How many are there already, word for word.</summary>
    public int Unchanged { get; init; }

    /// <summary>The first of those that are not taken over, with the reason.</summary>
    public IReadOnlyList<RejectedRow> Rejected { get; init; } = [];

    /// <summary>How many are not taken over.</summary>
    public int RejectedCount { get; init; }

    /// <summary>The first of what is worth a look.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>How many warnings there are.</summary>
    public int WarningCount { get; init; }

    /// <summary>The columns and what each was taken for.</summary>
    public IReadOnlyList<Column> Columns { get; init; } = [];

    /// <summary>What became of each sheet; empty for a text.</summary>
    public IReadOnlyList<Sheet> Sheets { get; init; } = [];

    /// <summary>The encoding, or null for a workbook.</summary>
    public string? Encoding { get; init; }

    /// <summary>What stands between cells, or null for a workbook.</summary>
    public string? Delimiter { get; init; }

    /// <summary>Components of earlier imports that no row meets.</summary>
    public int Missing { get; init; }

    /// <summary>Rows in which a person's word stands against the list.</summary>
    public int Kept { get; init; }

    /// <summary>Cells that were not read, though their row is taken over.</summary>
    public int Unread { get; init; }

    /// <summary>True where a person should look before closing it.</summary>
    public bool IsOpen => RejectedCount > 0 || Kept > 0 || Unread > 0 || Missing > 0;

    /// <summary>One column of the file.</summary>
    /// <param name="Header">Its name.</param>
    /// <param name="Meaning">The code of what it was taken for, or null where it is only kept.</param>
    public sealed record Column(string Header, string? Meaning);

    /// <summary>One sheet of a workbook.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Rows">Part lines in it.</param>
    /// <param name="Imported">True where its rows are among those counted.</param>
    /// <param name="Reason">Why not, or null.</param>
    public sealed record Sheet(string Name, int Rows, bool Imported, string? Reason);
}
