using Catalogue.Domain.Families;
using Catalogue.Domain.Makers;
using Catalogue.Domain.Text;
using Npgsql;
using NpgsqlTypes;

namespace Catalogue.Testing.Identification;

/// <summary>Invented families in a database, with or without published designs that use them.</summary>
public static class InventedCatalogue
{
    private const int ComponentsInDesign = 60;

    /// <summary>Writes the families and their makers; the id of the family at a place is <see cref="Id"/>.</summary>
    public static async Task LoadAsync(CatalogueDatabaseFixture database, IReadOnlyList<InventedFamily> families)
    {
        ArgumentNullException.ThrowIfNull(database);
        ArgumentNullException.ThrowIfNull(families);
        await using var connection = await database.Source.OpenConnectionAsync();
        var makers = families.Select(family => family.Maker).Distinct().ToDictionary(maker => maker, _ => Guid.CreateVersion7());
        await using (var rows = await connection.BeginBinaryImportAsync("copy makers (id, name, name_key, slug) from stdin (format binary)"))
        {
            foreach (var (maker, id) in makers)
                await rows.WriteRowAsync(default, id, maker, MakerName.Key(maker), MakerName.Key(maker));
            await rows.CompleteAsync();
        }

        // The index is built once, after the rows.
        await ExecuteAsync(connection, "drop index ix_families_marking_keys; drop index ix_families_search_key_trigram");
        await using (var rows = await connection.BeginBinaryImportAsync("copy families (id, name, match_key, search_key, slug, function_class, packages) from stdin (format binary)"))
        {
            for (var i = 0; i < families.Count; i++)
            {
                var number = PartNumber.From(families[i].Number)!;
                await rows.StartRowAsync();
                await rows.WriteAsync(Id(i), NpgsqlDbType.Uuid);
                await rows.WriteAsync(number.MatchKey);
                await rows.WriteAsync(number.MatchKey);
                await rows.WriteAsync(number.SearchKey);
                await rows.WriteAsync(FormattableString.Invariant($"invented-{i}"));
                await rows.WriteAsync(SnakeCase.Code(families[i].FunctionClass));
                await rows.WriteAsync(new[] { families[i].Package }, NpgsqlDbType.Array | NpgsqlDbType.Text);
            }

            await rows.CompleteAsync();
        }

        await using (var rows = await connection.BeginBinaryImportAsync("copy family_makers (family_id, maker_id) from stdin (format binary)"))
        {
            for (var i = 0; i < families.Count; i++)
                await rows.WriteRowAsync(default, Id(i), makers[families[i].Maker]);
            await rows.CompleteAsync();
        }

        await ExecuteAsync(connection, "create index ix_families_marking_keys on families using gin (marking_keys); create index ix_families_search_key_trigram on families using gin (search_key gin_trgm_ops); analyze families");
    }

    /// <summary>Writes published designs of sixty components each, of the families at the given places.</summary>
    public static async Task PublishAsync(CatalogueDatabaseFixture database, IReadOnlyList<int> uses)
    {
        ArgumentNullException.ThrowIfNull(database);
        ArgumentNullException.ThrowIfNull(uses);
        var designs = (uses.Count + ComponentsInDesign - 1) / ComponentsInDesign;
        await using var connection = await database.Source.OpenConnectionAsync();
        await ExecuteAsync(connection, FormattableString.Invariant($"""
            insert into makers (id, name, name_key, slug) values (md5('brand')::uuid, 'Harrowgate Bench', 'harrowgatebench', 'harrowgate-bench');
            insert into products (id, brand_id, name, model, category, identity_key)
                select md5('product' || n)::uuid, md5('brand')::uuid, 'Design ' || n, 'D' || n, 'adapter', 'design' || n from generate_series(0, {designs - 1}) n;
            insert into teardowns (id, product_id, slug, created_at)
                select md5('teardown' || n)::uuid, md5('product' || n)::uuid, 'design-' || n, now() from generate_series(0, {designs - 1}) n;
            insert into revisions (id, teardown_id, number, state, title, brand, product_name, model, category, obtained, opened_at)
                select md5('revision' || n)::uuid, md5('teardown' || n)::uuid, 1, 'draft', 'Design ' || n, 'Harrowgate Bench', 'Design ' || n, 'D' || n, 'adapter', 'bought', now()
                from generate_series(0, {designs - 1}) n;
            insert into boards (revision_id, id, position, name, topology)
                select md5('revision' || n)::uuid, md5('board' || n)::uuid, 0, 'main', array[]::text[] from generate_series(0, {designs - 1}) n;
            create temporary table uses (place int, design int, family_id uuid);
            """));
        await using (var rows = await connection.BeginBinaryImportAsync("copy uses (place, design, family_id) from stdin (format binary)"))
        {
            for (var i = 0; i < uses.Count; i++)
                await rows.WriteRowAsync(default, i % ComponentsInDesign, i / ComponentsInDesign, Id(uses[i]));
            await rows.CompleteAsync();
        }

        await ExecuteAsync(connection, """
            insert into components (revision_id, id, board_id, position, designator_list, parallel_count, series_count, is_fitted, imported_row, family_id, family_evidence)
                select md5('revision' || design)::uuid, md5('component' || design || '-' || place)::uuid, md5('board' || design)::uuid, place, array[]::text[], 1, 1, true, '[]', family_id, 'inferred'
                from uses;
            update revisions set state = 'published', published_at = now() where product_name like 'Design %';
            analyze components;
            """);
    }

    /// <summary>The id of the family at a place of the list.</summary>
    public static Guid Id(int place) => new(place, 0x1de, 0x7ab1, 0x80, 0, 0, 0, 0, 0, 0, 1);

    private static async Task ExecuteAsync(NpgsqlConnection connection, string sql)
    {
        await using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 0 };
        await command.ExecuteNonQueryAsync();
    }
}
