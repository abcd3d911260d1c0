using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Catalogue.Data.Migrations
{
    /// <inheritdoc />
    public partial class IsolationPathsAndDischargeReadings : Migration
    {
        private static readonly string[] ContentTables = ["discharge_readings", "isolation_paths"];

        private static readonly (string Table, string Column, string Target)[] References =
        [
            ("discharge_readings", "rail_id", "rails"),
            ("isolation_paths", "board_id", "boards"),
        ];

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "discharge_readings",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    rail_id = table.Column<Guid>(type: "uuid", nullable: true),
                    place = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    low_v = table.Column<double>(type: "double precision", nullable: false),
                    nominal_v = table.Column<double>(type: "double precision", nullable: false),
                    high_v = table.Column<double>(type: "double precision", nullable: false),
                    taken_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    instrument = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_discharge_readings", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_discharge_readings_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "isolation_paths",
                columns: table => new
                {
                    revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    board_id = table.Column<Guid>(type: "uuid", nullable: true),
                    one_end = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    other_end = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    path_kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    low_mm = table.Column<double>(type: "double precision", nullable: true),
                    nominal_mm = table.Column<double>(type: "double precision", nullable: true),
                    high_mm = table.Column<double>(type: "double precision", nullable: true),
                    method = table.Column<string>(type: "text", nullable: true),
                    narrowest_groove_mm = table.Column<double>(type: "double precision", nullable: true),
                    working_voltage_v = table.Column<double>(type: "double precision", nullable: true),
                    insulation = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    overvoltage_category = table.Column<int>(type: "integer", nullable: true),
                    pollution_degree = table.Column<int>(type: "integer", nullable: true),
                    material_group = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    altitude_m = table.Column<double>(type: "double precision", nullable: true),
                    frequency_hz = table.Column<double>(type: "double precision", nullable: true),
                    is_coated = table.Column<bool>(type: "boolean", nullable: true),
                    remark = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_isolation_paths", x => new { x.revision_id, x.id });
                    table.ForeignKey(
                        name: "fk_isolation_paths_revisions_revision_id",
                        column: x => x.revision_id,
                        principalTable: "revisions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_discharge_readings_id",
                table: "discharge_readings",
                column: "id");

            migrationBuilder.CreateIndex(
                name: "ix_isolation_paths_id",
                table: "isolation_paths",
                column: "id");

            foreach (var (table, column, target) in References)
            {
                migrationBuilder.Sql($"""
                    alter table {table} add constraint fk_{table}_{column} foreign key (revision_id, {column})
                        references {target} (revision_id, id) on delete set null ({column}) deferrable initially deferred;
                    create index ix_{table}_{column} on {table} (revision_id, {column}) where {column} is not null;
                    """);
            }

            foreach (var table in ContentTables)
            {
                migrationBuilder.Sql($"""
                    create trigger published_content_never_changes before insert or update or delete on {table}
                        for each row execute function refuse_change_of_published_content();
                    alter table {table} enable always trigger published_content_never_changes;
                    create trigger content_never_truncated before truncate on {table}
                        for each statement execute function refuse_change();
                    """);
            }
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "discharge_readings");

            migrationBuilder.DropTable(
                name: "isolation_paths");
        }
    }
}
