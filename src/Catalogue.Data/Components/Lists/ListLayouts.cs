using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Catalogue.Data.Conversions;
using Catalogue.Domain.Components.Lists;
using Microsoft.EntityFrameworkCore;

namespace Catalogue.Data.Components.Lists;

/// <summary>Remembers what a person said of the columns of a layout, for the next list of the same one.</summary>
internal static class ListLayouts
{
    /// <summary>What was said of lists with these columns, or null.</summary>
    public static async Task<ListLayout?> FindAsync(CatalogueContext context, IReadOnlyList<ListColumn> columns, CancellationToken cancellationToken)
    {
        var key = KeyOf(columns);
        return await context.ListLayouts.AsNoTracking().SingleOrDefaultAsync(row => row.Key == key, cancellationToken);
    }

    /// <summary>Keeps what was said; nothing said forgets the layout. Of two that say something at once the later one counts.</summary>
    public static async Task KeepAsync(
        CatalogueContext context, IReadOnlyList<ListColumn> columns, IReadOnlyDictionary<string, ColumnMeaning?> meanings, string who, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var key = KeyOf(columns);
        var known = columns.Select(column => column.Key).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var said = meanings.Where(meaning => known.Contains(meaning.Key.Trim())).ToDictionary(meaning => meaning.Key.Trim(), meaning => meaning.Value, StringComparer.OrdinalIgnoreCase);
        if (said.Count == 0)
        {
            await context.ListLayouts.Where(row => row.Key == key).ExecuteDeleteAsync(cancellationToken);
            return;
        }

        var (names, meant) = (columns.Select(column => column.Key).ToArray(), JsonSerializer.Serialize(said, StoredJson.Options));
        await context.Database.ExecuteSqlAsync(
            $"""
            insert into list_layouts (key, names, meanings, changed_by, changed_at) values ({key}, {names}, {meant}::jsonb, {who}, {now})
            on conflict (key) do update set meanings = excluded.meanings, changed_by = excluded.changed_by, changed_at = excluded.changed_at
            """,
            cancellationToken);
    }

    /// <summary>The sentence that says that columns are taken as remembered.</summary>
    public static string Say(ListLayout layout) => string.Create(
        CultureInfo.InvariantCulture, $"The columns are taken as {layout.ChangedBy} set them for lists with these headers on {layout.ChangedAt:d MMMM yyyy}.");

    private static string KeyOf(IReadOnlyList<ListColumn> columns) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\u001F', columns.Select(column => column.Key.ToLowerInvariant())))));
}
