namespace Catalogue.Domain.Components.Lists;

/// <summary>What a person decided about a component list, where the guess was wrong. Null means: find out from the content.</summary>
/// <param name="Encoding">IANA name of the text's encoding, such as <c>Shift_JIS</c>.</param>
/// <param name="Delimiter">The character between fields.</param>
/// <param name="Sheet">Name of the only sheet to read, hidden or not; null for all visible ones with a header.</param>
/// <param name="HeaderLine">Number of the line that names the columns, from 1; null to find it.</param>
/// <param name="Columns">What columns hold, by their <see cref="ListColumn.Key"/> whatever its case; null as a meaning only keeps the cells. Columns that are not named are found out.</param>
public sealed record ComponentListOptions(
    string? Encoding = null, char? Delimiter = null, string? Sheet = null, int? HeaderLine = null, IReadOnlyDictionary<string, ColumnMeaning?>? Columns = null)
{
    /// <summary>What a person said of a column, or null where nothing was said.</summary>
    internal ColumnMeaning?[]? Chosen(string key) =>
        Columns is not null && Columns.Keys.FirstOrDefault(name => name.Trim().Equals(key, StringComparison.OrdinalIgnoreCase)) is { } named ? [Columns[named]] : null;
}
