using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Catalogue.Data.Migrations
{
    /// <summary>
    /// What is known of part families beside their number; the keys that misread numbers are found by; merges, splits and the view that says which family
    /// a component counts to now.
    /// </summary>
    public partial class KnowingTheFamily : Migration
    {
        private static readonly string[] ShownOnPublicPages =
            ["family_aliases", "family_makers", "family_moves", "family_ratings", "family_relations", "family_top_marks", "maker_aliases"];

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // They agree, sign for sign, with Catalogue.Domain.Identification.MarkingKeys; a test compares the two.
            migrationBuilder.Sql("""
                create function marking_letters(number text) returns text language sql immutable parallel safe as $$
                    select left(regexp_replace(
                        translate(upper(number), 'ΑΒΕΖΗΙΚΜΝΟΡΤΥΧАВЕЅІЈКМНОРСТУХҮԌԚԜՏՕ', 'ABEZHIKMNOPTYXABESIJKMHOPCTYXYGQWSO') collate "C", '[^A-Z0-9]', '', 'g'), 24)
                $$;
                create function marking_skeleton(letters text) returns text language sql immutable parallel safe as $$
                    select translate(letters, 'OQDILZSGCBAV', '00011256684U')
                $$;
                create function marking_keys(letters text) returns text[] language sql immutable parallel safe as $$
                    select coalesce(array_agg(distinct key collate "C"), '{}') from (
                        select skeleton as key from marking_skeleton(letters) skeleton where skeleton <> ''
                        union all
                        select overlay(skeleton placing '' from place for 1) from marking_skeleton(letters) skeleton, generate_series(1, length(skeleton)) place
                            where length(skeleton) >= 4
                        union all
                        select left(skeleton, length(skeleton) - worn) from marking_skeleton(letters) skeleton, generate_series(2, 4) worn
                            where length(skeleton) - worn > 4
                    ) keys
                $$;
                """);
            migrationBuilder.DropPrimaryKey(
                name: "pk_family_aliases",
                table: "family_aliases");

            migrationBuilder.DropIndex(
                name: "ix_family_aliases_match_key",
                table: "family_aliases");

            migrationBuilder.AddColumn<string>(
                name: "kind",
                table: "family_aliases",
                type: "character varying(40)",
                maxLength: 40,
                nullable: false,
                defaultValue: "other_number");

            migrationBuilder.AddColumn<string>(
                name: "note",
                table: "families",
                type: "character varying(4000)",
                maxLength: 4000,
                nullable: true);

            migrationBuilder.AddColumn<string[]>(
                name: "packages",
                table: "families",
                type: "text[]",
                nullable: false,
                defaultValueSql: "'{}'");

            migrationBuilder.AddColumn<string>(
                name: "letters",
                table: "family_aliases",
                type: "text",
                nullable: true,
                computedColumnSql: "marking_letters(match_key)",
                stored: true);

            migrationBuilder.AddColumn<string[]>(
                name: "marking_keys",
                table: "family_aliases",
                type: "text[]",
                nullable: true,
                computedColumnSql: "marking_keys(marking_letters(match_key))",
                stored: true);

            migrationBuilder.AddColumn<string>(
                name: "letters",
                table: "families",
                type: "text",
                nullable: true,
                computedColumnSql: "marking_letters(match_key)",
                stored: true);

            migrationBuilder.AddColumn<string[]>(
                name: "marking_keys",
                table: "families",
                type: "text[]",
                nullable: true,
                computedColumnSql: "marking_keys(marking_letters(match_key))",
                stored: true);

            migrationBuilder.AddPrimaryKey(
                name: "pk_family_aliases",
                table: "family_aliases",
                column: "match_key");

            migrationBuilder.CreateTable(
                name: "family_merges",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    from_id = table.Column<Guid>(type: "uuid", nullable: false),
                    into_id = table.Column<Guid>(type: "uuid", nullable: false),
                    followers = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    who = table.Column<string>(type: "text", nullable: false),
                    undone_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    undone_by = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_family_merges", x => x.id);
                    table.ForeignKey(
                        name: "fk_family_merges_families_from_id",
                        column: x => x.from_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_family_merges_families_into_id",
                        column: x => x.into_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "family_moves",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    component_id = table.Column<Guid>(type: "uuid", nullable: false),
                    family_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_family_moves", x => new { x.revision_id, x.component_id });
                    table.ForeignKey(
                        name: "fk_family_moves_components_revision_id_component_id",
                        columns: x => new { x.revision_id, x.component_id },
                        principalTable: "components",
                        principalColumns: new[] { "revision_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_family_moves_families_family_id",
                        column: x => x.family_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "family_ratings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    family_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    low = table.Column<double>(type: "double precision", nullable: false),
                    nominal = table.Column<double>(type: "double precision", nullable: false),
                    high = table.Column<double>(type: "double precision", nullable: false),
                    condition = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    evidence = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    source = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_family_ratings", x => x.id);
                    table.ForeignKey(
                        name: "fk_family_ratings_families_family_id",
                        column: x => x.family_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "family_relations",
                columns: table => new
                {
                    one_id = table.Column<Guid>(type: "uuid", nullable: false),
                    other_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    note = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    who = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_family_relations", x => new { x.one_id, x.other_id });
                    table.ForeignKey(
                        name: "fk_family_relations_families_one_id",
                        column: x => x.one_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_family_relations_families_other_id",
                        column: x => x.other_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "family_splits",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    from_id = table.Column<Guid>(type: "uuid", nullable: false),
                    to_id = table.Column<Guid>(type: "uuid", nullable: false),
                    aliases = table.Column<string[]>(type: "text[]", nullable: false),
                    top_marks = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    made_family = table.Column<bool>(type: "boolean", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    who = table.Column<string>(type: "text", nullable: false),
                    undone_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    undone_by = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_family_splits", x => x.id);
                    table.ForeignKey(
                        name: "fk_family_splits_families_from_id",
                        column: x => x.from_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_family_splits_families_to_id",
                        column: x => x.to_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "family_top_marks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    family_id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    maker_id = table.Column<Guid>(type: "uuid", nullable: true),
                    package = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    source = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    letters = table.Column<string>(type: "text", nullable: true, computedColumnSql: "marking_letters(code)", stored: true),
                    marking_keys = table.Column<string[]>(type: "text[]", nullable: true, computedColumnSql: "marking_keys(marking_letters(code))", stored: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_family_top_marks", x => x.id);
                    table.ForeignKey(
                        name: "fk_family_top_marks_families_family_id",
                        column: x => x.family_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_family_top_marks_makers_maker_id",
                        column: x => x.maker_id,
                        principalTable: "makers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.SetNull);
                });

            migrationBuilder.CreateTable(
                name: "family_split_parts",
                columns: table => new
                {
                    split_id = table.Column<Guid>(type: "uuid", nullable: false),
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    component_id = table.Column<Guid>(type: "uuid", nullable: false),
                    before_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_family_split_parts", x => new { x.split_id, x.revision_id, x.component_id });
                    table.ForeignKey(
                        name: "fk_family_split_parts_components_revision_id_component_id",
                        columns: x => new { x.revision_id, x.component_id },
                        principalTable: "components",
                        principalColumns: new[] { "revision_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_family_split_parts_families_before_id",
                        column: x => x.before_id,
                        principalTable: "families",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_family_split_parts_family_splits_split_id",
                        column: x => x.split_id,
                        principalTable: "family_splits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_family_aliases_family_id",
                table: "family_aliases",
                column: "family_id");

            migrationBuilder.CreateIndex(
                name: "ix_family_aliases_marking_keys",
                table: "family_aliases",
                column: "marking_keys")
                .Annotation("Npgsql:IndexMethod", "gin");

            migrationBuilder.CreateIndex(
                name: "ix_families_marking_keys",
                table: "families",
                column: "marking_keys")
                .Annotation("Npgsql:IndexMethod", "gin");

            migrationBuilder.CreateIndex(
                name: "ix_family_merges_from_id",
                table: "family_merges",
                column: "from_id");

            migrationBuilder.CreateIndex(
                name: "ix_family_merges_into_id",
                table: "family_merges",
                column: "into_id");

            migrationBuilder.CreateIndex(
                name: "ix_family_moves_family_id",
                table: "family_moves",
                column: "family_id");

            migrationBuilder.CreateIndex(
                name: "ix_family_ratings_family_id",
                table: "family_ratings",
                column: "family_id");

            migrationBuilder.CreateIndex(
                name: "ix_family_relations_other_id",
                table: "family_relations",
                column: "other_id");

            migrationBuilder.CreateIndex(
                name: "ix_family_split_parts_before_id",
                table: "family_split_parts",
                column: "before_id");

            migrationBuilder.CreateIndex(
                name: "ix_family_split_parts_revision_id_component_id",
                table: "family_split_parts",
                columns: new[] { "revision_id", "component_id" });

            migrationBuilder.CreateIndex(
                name: "ix_family_splits_from_id",
                table: "family_splits",
                column: "from_id");

            migrationBuilder.CreateIndex(
                name: "ix_family_splits_to_id",
                table: "family_splits",
                column: "to_id");

            migrationBuilder.CreateIndex(
                name: "ix_family_top_marks_family_id",
                table: "family_top_marks",
                column: "family_id");

            migrationBuilder.CreateIndex(
                name: "ix_family_top_marks_maker_id",
                table: "family_top_marks",
                column: "maker_id");

            migrationBuilder.CreateIndex(
                name: "ix_family_top_marks_marking_keys",
                table: "family_top_marks",
                column: "marking_keys")
                .Annotation("Npgsql:IndexMethod", "gin");

            migrationBuilder.Sql("""
                create view family_links as
                    select c.revision_id, c.id as component_id, f.id as linked_family_id, coalesce(f.merged_into_id, f.id) as family_id
                    from components c join families f on f.id = c.family_id
                    where not exists (select 1 from family_moves m where m.revision_id = c.revision_id and m.component_id = c.id)
                    union all
                    select m.revision_id, m.component_id, f.id, coalesce(f.merged_into_id, f.id)
                    from family_moves m join families f on f.id = m.family_id;
                """);
            foreach (var table in ShownOnPublicPages)
            {
                migrationBuilder.Sql($"""
                    create trigger {table}_raise_site_version after insert or update or delete on {table}
                        for each statement execute function raise_site_version();
                    """);
            }
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            foreach (var table in ShownOnPublicPages)
                migrationBuilder.Sql($"drop trigger {table}_raise_site_version on {table};");
            migrationBuilder.Sql("drop view family_links;");
            migrationBuilder.DropTable(
                name: "family_merges");

            migrationBuilder.DropTable(
                name: "family_moves");

            migrationBuilder.DropTable(
                name: "family_ratings");

            migrationBuilder.DropTable(
                name: "family_relations");

            migrationBuilder.DropTable(
                name: "family_split_parts");

            migrationBuilder.DropTable(
                name: "family_top_marks");

            migrationBuilder.DropTable(
                name: "family_splits");

            migrationBuilder.DropPrimaryKey(
                name: "pk_family_aliases",
                table: "family_aliases");

            migrationBuilder.DropIndex(
                name: "ix_family_aliases_family_id",
                table: "family_aliases");

            migrationBuilder.DropIndex(
                name: "ix_family_aliases_marking_keys",
                table: "family_aliases");

            migrationBuilder.DropIndex(
                name: "ix_families_marking_keys",
                table: "families");

            migrationBuilder.DropColumn(
                name: "letters",
                table: "family_aliases");

            migrationBuilder.DropColumn(
                name: "marking_keys",
                table: "family_aliases");

            migrationBuilder.DropColumn(
                name: "letters",
                table: "families");

            migrationBuilder.DropColumn(
                name: "marking_keys",
                table: "families");

            migrationBuilder.DropColumn(
                name: "kind",
                table: "family_aliases");

            migrationBuilder.DropColumn(
                name: "note",
                table: "families");

            migrationBuilder.DropColumn(
                name: "packages",
                table: "families");

            migrationBuilder.AddPrimaryKey(
                name: "pk_family_aliases",
                table: "family_aliases",
                columns: new[] { "family_id", "match_key" });

            migrationBuilder.CreateIndex(
                name: "ix_family_aliases_match_key",
                table: "family_aliases",
                column: "match_key",
                unique: true);
            migrationBuilder.Sql("drop function marking_keys(text); drop function marking_skeleton(text); drop function marking_letters(text);");
        }
    }
}
