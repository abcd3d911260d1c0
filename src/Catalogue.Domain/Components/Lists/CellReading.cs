using System.Globalization;
using Catalogue.Domain.Families;
using Catalogue.Domain.Packages;
using Catalogue.Domain.Quantities;

namespace Catalogue.Domain.Components.Lists;

/// <summary>How one cell of a part line was understood.</summary>
/// <param name="Column">The column's <see cref="ListColumn.Key"/>.</param>
/// <param name="Meaning">What the column was taken for.</param>
/// <param name="Text">The cell as read.</param>
/// <param name="Reading">What it was read as, as text; null where the text itself is taken.</param>
/// <param name="Problem">Why it was not read, though cells of its column are; null where it was. The text is kept all the same.</param>
public sealed record CellReading(string Column, ColumnMeaning Meaning, string Text, string? Reading, string? Problem)
{
    private const int MostDesignators = 24;

    /// <summary>The cells of a line that hold something and whose column is understood, in column order.</summary>
    /// <param name="row">The line.</param>
    /// <param name="value">What it says of value and ratings.</param>
    public static IReadOnlyList<CellReading> Of(ListRow row, RowValue value)
    {
        ArgumentNullException.ThrowIfNull(row);
        ArgumentNullException.ThrowIfNull(value);
        var cells = new List<CellReading>();
        foreach (var cell in row.AsRead)
        {
            if (cell.Meaning is not { } meaning || string.IsNullOrWhiteSpace(cell.Text))
                continue;
            var (reading, problem) = Read(row, value, meaning, cell.Text);
            cells.Add(new CellReading(cell.Header, meaning, cell.Text, reading == cell.Text.Trim() ? null : reading, problem));
        }

        return cells;
    }

    private static (string? Reading, string? Problem) Read(ListRow row, RowValue value, ColumnMeaning meaning, string text) => meaning switch
    {
        ColumnMeaning.Designators when row.Designators.SequenceEqual(text.Split([',', ';', ' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries)) => (null, null),
        ColumnMeaning.Designators => row.Designators.Count > 0
            ? (string.Join(' ', row.Designators.Take(MostDesignators)) + (row.Designators.Count > MostDesignators ? FormattableString.Invariant($" and {row.Designators.Count - MostDesignators} more") : ""), null)
            : (null, "no designator could be told"),
        ColumnMeaning.Quantity => row.Quantity is { } count ? (count.ToString(CultureInfo.InvariantCulture), null) : (null, "not a number of parts"),
        ColumnMeaning.Value => row.Value is null ? ("no value", null) : Value(value, fromDescription: false),
        ColumnMeaning.Description => (Value(value, fromDescription: true).Reading, null),
        ColumnMeaning.Package => (PackageText.Read(text).Canonical, null),
        ColumnMeaning.PartNumber => (row.PartNumber is null ? "no part number" : PartNumber.From(text)?.MatchKey, null),
        ColumnMeaning.Maker => (row.Maker is null ? "no maker" : null, null),
        ColumnMeaning.Fitted or ColumnMeaning.NotFitted => (row.Fitted ? "fitted" : "not fitted", null),
        _ => (null, null),
    };

    private static (string? Reading, string? Problem) Value(RowValue value, bool fromDescription)
    {
        var reading = value.Reading;
        var texts = reading.Value is { } main && reading.IsFromDescription == fromDescription ? [QuantityText.Exact(main)] : new List<string>();
        texts.AddRange(reading.Extras.Where(extra => extra.IsFromDescription == fromDescription && extra.Name != "tol").Select(extra => extra.Condition is { } condition ? $"{extra.Text} at {condition}" : extra.Text));
        if (texts.Count > 0)
            return (string.Join(", ", texts), null);
        return (null, fromDescription || value.Kind is PartKind.NotSaid ? null : reading.Warnings.Count > 0 ? reading.Warnings[0] : null);
    }
}
