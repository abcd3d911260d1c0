namespace Catalogue.Domain.Components.Lists;

/// <summary>One part line of a component list. Texts are as written without blanks at their ends; null means that the list does not say.</summary>
public sealed record ListRow
{
    /// <summary>Number of the row's first line in the file, or of the row in its sheet, from 1.</summary>
    public required int LineNumber { get; init; }

    /// <summary>The sheet; null in a text.</summary>
    public string? Sheet { get; init; }

    /// <summary>Where the row is, in words: <c>Row 8</c>, or <c>Row 8 of “main”</c>.</summary>
    public string Place => ListWarnings.Rows([LineNumber], Sheet);

    /// <summary>The designators one by one, ranges expanded, each once; empty where there are none or they could not be told apart.</summary>
    public required IReadOnlyList<string> Designators { get; init; }

    /// <summary>The designators as written.</summary>
    public string? DesignatorsAsWritten { get; init; }

    /// <summary>Parts on one board, 0 or more: as written, else counted from the designators; null where neither tells.</summary>
    public int? Quantity { get; init; }

    /// <summary>The quantity as written; null where the cell is empty or there is no such column.</summary>
    public string? QuantityAsWritten { get; init; }

    /// <summary>The value as text; null also for marks such as <c>?</c> or <c>DNP</c> alone.</summary>
    public string? Value { get; init; }

    /// <summary>The maker's part number; null also for words such as <c>any</c>.</summary>
    public string? PartNumber { get; init; }

    /// <summary>The maker; null also for words such as <c>any</c>.</summary>
    public string? Maker { get; init; }

    /// <summary>Package or footprint.</summary>
    public string? Package { get; init; }

    /// <summary>What the part is, in words.</summary>
    public string? Description { get; init; }

    /// <summary>What the part does, where a column says so.</summary>
    public string? Role { get; init; }

    /// <summary>False where the list says that the place is left empty.</summary>
    public required bool Fitted { get; init; }

    /// <summary>Further makers and part numbers that the list offers for the same place, in list order.</summary>
    public required IReadOnlyList<MakersPart> Alternatives { get; init; }

    /// <summary>Every cell of the row in column order, exactly as read.</summary>
    public required IReadOnlyList<ListCell> AsRead { get; init; }

    /// <summary>What a person should look at, in plain words.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }
}
