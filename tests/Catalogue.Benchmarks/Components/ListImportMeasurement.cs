using System.Diagnostics;
using System.Text;
using Catalogue.Data.Components;
using Catalogue.Domain.Components;
using Catalogue.Testing;
using Npgsql;

namespace Catalogue.Benchmarks.Components;

/// <summary>
/// Importing component lists, 100,000 rows in all, beside a bare COPY of every row that the import wrote (components, ratings, figures, families) into the same
/// tables with their indexes and triggers.
/// </summary>
internal static class ListImportMeasurement
{
    private const int Lists = 20;
    private const int RowsEach = BoardComponent.MaxInTeardown;

    private static readonly string[] Tables = ["components", "ratings", "figures"];

    /// <summary>Runs it, printing a line for each list and the ratio.</summary>
    public static async Task RunAsync()
    {
        Console.WriteLine(FormattableString.Invariant($"\n### {Lists} component lists of {RowsEach:N0} rows\n"));
        Console.WriteLine("| list | rows written | import ms | COPY ms | rate of COPY | managed memory MB |");
        Console.WriteLine("|---|---|---|---|---|---|");
        await using var database = await CatalogueDatabaseFixture.CreateAsync();
        var bench = new Bench(database);
        var (imports, copies, rows) = (TimeSpan.Zero, TimeSpan.Zero, 0L);
        // The first list warms both up and is not counted.
        for (var list = 0; list <= Lists; list++)
        {
            var teardown = await bench.TeardownAsync(name: FormattableString.Invariant($"Board {list}"));
            var board = await bench.BoardAsync(teardown.Id);
            var content = Encoding.UTF8.GetBytes(ListOf(list));
            var known = await FamiliesAsync(database);
            var watch = Stopwatch.StartNew();
            Bench.Done(await database.Get<ImportComponents>().RunAsync(board, content, "list.csv", dryRun: false, Bench.Reviewer));
            var import = watch.Elapsed;
            var memory = GC.GetTotalMemory(forceFullCollection: true) / 1e6;
            var (copy, written) = await CopyAgainAsync(database, teardown.Id.Value, known);
            if (list == 0)
                continue;
            (imports, copies, rows) = (imports + import, copies + copy, rows + written);
            Console.WriteLine(FormattableString.Invariant($"| {list} | {written:N0} | {import.TotalMilliseconds:F0} | {copy.TotalMilliseconds:F0} | {copy / import:F2} | {memory:F0} |"));
        }

        Console.WriteLine(FormattableString.Invariant(
            $"\n{Lists * RowsEach:N0} component rows, {rows:N0} rows written: import {imports.TotalSeconds:F1} s ({Lists * RowsEach / imports.TotalSeconds:N0} component rows/s), COPY {copies.TotalSeconds:F1} s; the import reaches **{copies / imports:F2}** of the rate of COPY.\n"));
    }

    private static async Task<HashSet<Guid>> FamiliesAsync(CatalogueDatabaseFixture database)
    {
        await using var command = database.Source.CreateCommand("select id from families");
        await using var reader = await command.ExecuteReaderAsync();
        var ids = new HashSet<Guid>();
        while (await reader.ReadAsync())
            ids.Add(reader.GetGuid(0));
        return ids;
    }

    // Takes the rows out as the server packs them, deletes them, and puts them back by COPY: the time of the putting back.
    private static async Task<(TimeSpan Time, long Rows)> CopyAgainAsync(CatalogueDatabaseFixture database, Guid teardown, HashSet<Guid> known)
    {
        await using var connection = await database.Source.OpenConnectionAsync();
        var revision = $"select id from revisions where teardown_id = '{teardown}'";
        var opened = (await FamiliesAsync(database)).Except(known).Select(id => $"'{id}'").DefaultIfEmpty("'00000000-0000-0000-0000-000000000000'");
        var packed = new List<(string Target, byte[] Rows)>();
        foreach (var (table, condition) in Tables.Select(table => (table, $"revision_id in ({revision})")).Prepend(("families", $"id in ({string.Join(',', opened)})")))
        {
            var columns = await database.ScalarAsync<string>($"select string_agg(column_name, ', ' order by ordinal_position) from information_schema.columns where table_name = '{table}' and is_generated = 'NEVER'");
            packed.Add(($"{table} ({columns})", await TakeAsync(connection, $"select {columns} from {table} where {condition}")));
        }

        var rows = 0L;
        foreach (var table in Tables.Reverse())
            rows += await RunAsync(connection, $"delete from {table} where revision_id in ({revision})");
        rows += await RunAsync(connection, $"delete from families where id in ({string.Join(',', opened)})");
        var watch = Stopwatch.StartNew();
        await using (var transaction = await connection.BeginTransactionAsync())
        {
            foreach (var (target, content) in packed)
            {
                await using var writer = await connection.BeginRawBinaryCopyAsync($"copy {target} from stdin (format binary)");
                await writer.WriteAsync(content);
            }

            await transaction.CommitAsync();
        }

        return (watch.Elapsed, rows);
    }

    private static async Task<byte[]> TakeAsync(NpgsqlConnection connection, string sql)
    {
        using var content = new MemoryStream();
        await using var reader = await connection.BeginRawBinaryCopyAsync($"copy ({sql}) to stdout (format binary)");
        await reader.CopyToAsync(content);
        return content.ToArray();
    }

    private static async Task<int> RunAsync(NpgsqlConnection connection, string sql)
    {
        await using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 300 };
        return await command.ExecuteNonQueryAsync();
    }

    private static string ListOf(int list)
    {
        var chance = new Random(list);
        var text = new StringBuilder("Reference,Quantity,Value,Package,Manufacturer,MPN,Description,Price\n");
        for (var row = 1; row <= RowsEach; row++)
        {
            // Common parts come in every list, rare ones in one.
            var part = (int)(4000 * Math.Pow(chance.NextDouble(), 2)) + (chance.Next(20) == 0 ? 10_000 + (list * 500) + chance.Next(500) : 0);
            _ = (row % 4) switch
            {
                0 => text.Append(FormattableString.Invariant($"R{row},1,{chance.Next(1, 999)}k 1%,0603,Tolmery,TRM-{part:D5},thick film resistor,0.01\n")),
                1 => text.Append(FormattableString.Invariant($"\"C{row}, C{row + 10_000}\",2,{chance.Next(1, 99)}uF/63V,1210,Ondrel,OND-{part:D5}-TR,ceramic capacitor X7R,0.05\n")),
                2 => text.Append(FormattableString.Invariant($"Q{row},1,60V 12A,SOT-23,Merwick,MWK-{part:D5},switch,0.30\n")),
                _ => text.Append(FormattableString.Invariant($"U{row},1,QV{part:D4},QFN-24,Kestrin,KPD-{part:D5},controller,1.20\n")),
            };
        }

        return text.ToString();
    }
}
