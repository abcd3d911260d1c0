namespace Catalogue.Domain.Components.Lists;

/// <summary>What came of reading a component list: <see cref="Read"/> or <see cref="Refused"/>.</summary>
public abstract record ComponentListReading
{
    private ComponentListReading()
    {
    }

    /// <summary>The list was read; every part line of the file is in <see cref="Rows"/> or in <see cref="Rejected"/>.</summary>
    public sealed record Read : ComponentListReading
    {
        /// <summary>IANA name of the encoding that was taken; null for a workbook.</summary>
        public string? Encoding { get; init; }

        /// <summary>The character between fields; null for a workbook.</summary>
        public char? Delimiter { get; init; }

        /// <summary>What became of each sheet, in the workbook's order; empty for a text.</summary>
        public IReadOnlyList<ListSheet> Sheets { get; init; } = [];

        /// <summary>The columns in file order; where there are several tables, each name with its meaning once.</summary>
        public required IReadOnlyList<ListColumn> Columns { get; init; }

        /// <summary>The part lines in file order.</summary>
        public required IReadOnlyList<ListRow> Rows { get; init; }

        /// <summary>The part lines that could not be taken over, in file order.</summary>
        public required IReadOnlyList<RejectedRow> Rejected { get; init; }

        /// <summary>Cells that may be read in more than one way, in file order.</summary>
        public required IReadOnlyList<OpenReading> Readings { get; init; }

        /// <summary>What a person should know, in plain words with row numbers; the rows' own warnings are among them.</summary>
        public required IReadOnlyList<string> Warnings { get; init; }
    }

    /// <summary>The content is no component list that can be read.</summary>
    /// <param name="Reason">Why, in plain words, and what would be right.</param>
    public sealed record Refused(string Reason) : ComponentListReading;
}
