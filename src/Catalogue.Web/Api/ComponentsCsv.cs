using System.Globalization;
using System.Text;
using Catalogue.Data.Teardowns;
using Catalogue.Domain.Components;
using Catalogue.Domain.Quantities;
using Catalogue.Domain.Teardowns;
using CsvHelper;

namespace Catalogue.Web.Api;

/// <summary>CSV as the API gives it: UTF-8, comma, one header row; cells that a spreadsheet would run as a formula are disarmed.</summary>
internal static class ComponentsCsv
{
    private static readonly CsvWriterOptions Options = CsvWriterOptions.Default with { Injection = CsvInjection.Escape, NewLine = "\r\n" };

    private static readonly string[] Headers =
    [
        "board", "board_name", "number", "role", "function_class", "designators", "quantity", "is_fitted", "marking_as_read", "part_number", "family", "value", "package", "maker", "parallel", "series",
        "rail", "ratings", "description",
    ];

    /// <summary>The component table of a revision, one row a component.</summary>
    public static async Task<byte[]> WriteAsync(TeardownRecord record)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        await using (var csv = Open(text))
        {
            await csv.WriteRecordAsync(Headers);
            var boards = record.Boards.Select((board, index) => (board, index)).ToDictionary(pair => pair.board.Id, pair => (Letter: Board.Letter(pair.index), pair.board.Name));
            var rails = record.Rails.ToDictionary(rail => rail.Id, rail => rail.Name);
            var ratings = record.Ratings.ToLookup(rating => rating.ComponentId);
            var numbers = record.Callouts.Where(callout => callout.ComponentId is not null).GroupBy(callout => callout.ComponentId!.Value).ToDictionary(group => group.Key, group => group.Min(callout => callout.Number));
            foreach (var row in record.Components)
            {
                await csv.WriteRecordAsync(
                [
                    boards[row.BoardId].Letter,
                    boards[row.BoardId].Name,
                    numbers.TryGetValue(row.Id, out var number) ? number.ToString(CultureInfo.InvariantCulture) : "",
                    row.Role,
                    row.FunctionClass?.Word(),
                    row.Designators,
                    row.Quantity?.ToString(CultureInfo.InvariantCulture),
                    row.IsFitted ? "yes" : "no",
                    row.MarkingAsRead,
                    row.PartNumber,
                    record.FamilyOf(row)?.Name,
                    row.Value,
                    row.Package,
                    row.MakerAsRead,
                    row.ParallelCount.ToString(CultureInfo.InvariantCulture),
                    row.SeriesCount.ToString(CultureInfo.InvariantCulture),
                    row.RailId is { } rail ? rails.GetValueOrDefault(rail) : null,
                    string.Join("; ", ratings[row.Id].Select(rating => $"{rating.Kind.Word()} {QuantityText.Of(rating.Interval, rating.Kind.Unit())} ({rating.Evidence.Word()})")),
                    row.Description,
                ]);
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());
    }

    /// <summary>A writer of such CSV; the text stays open.</summary>
    public static CsvWriter Open(TextWriter text) => CsvWriter.Create(text, Options, leaveOpen: true);
}
