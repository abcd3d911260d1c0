using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace Catalogue.Data.Teardowns;

/// <summary>
/// Marks a place in an ordered list: the sort key of the last row seen and its id. It carries nothing secret and is not signed; a mark that
/// somebody made up only names another place.
/// </summary>
/// <param name="Key">The sort key as text.</param>
/// <param name="Id">The id that breaks ties.</param>
public sealed record PageMark(string Key, Guid Id)
{
    /// <summary>The mark as it stands in addresses.</summary>
    public override string ToString() => Base64Url.EncodeToString(Encoding.UTF8.GetBytes($"{Id:N}{Key}"));

    /// <summary>Reads a mark, or null where the text is none.</summary>
    public static PageMark? TryParse(string? text)
    {
        if (string.IsNullOrEmpty(text) || text.Length > 1000 || !Base64Url.IsValid(text))
            return null;
        var plain = Encoding.UTF8.GetString(Base64Url.DecodeFromChars(text));
        return plain.Length >= 32 && Guid.TryParseExact(plain[..32], "N", out var id) && !plain.Contains('\0', StringComparison.Ordinal)
            ? new PageMark(plain[32..], id)
            : null;
    }

    /// <summary>A mark whose key is a number.</summary>
    public static PageMark Of(double key, Guid id) => new(key.ToString("R", CultureInfo.InvariantCulture), id);

    /// <summary>A mark whose key is a moment, to the microsecond that the database keeps.</summary>
    public static PageMark Of(DateTimeOffset key, Guid id) => new(key.UtcTicks.ToString(CultureInfo.InvariantCulture), id);

    /// <summary>The key as a number, or null.</summary>
    public double? Number => double.TryParse(Key, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    /// <summary>The key as a moment, or null.</summary>
    public DateTimeOffset? Moment =>
        long.TryParse(Key, NumberStyles.None, CultureInfo.InvariantCulture, out var ticks) && ticks <= DateTimeOffset.MaxValue.Ticks ? new DateTimeOffset(ticks, TimeSpan.Zero) : null;
}
