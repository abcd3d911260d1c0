using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Catalogue.Data.Migrations
{
    /// <inheritdoc />
    public partial class FiguresOfRails : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropPrimaryKey(
                name: "pk_current_figures",
                table: "current_figures");

            migrationBuilder.AddColumn<string>(
                name: "figures_stamp",
                table: "site_state",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "port_id",
                table: "rails",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "changed_lines",
                table: "lab_settings",
                type: "jsonb",
                nullable: false,
                defaultValueSql: "'{}'");

            migrationBuilder.AddColumn<string>(
                name: "derating_preset",
                table: "lab_settings",
                type: "character varying(40)",
                maxLength: 40,
                nullable: false,
                defaultValue: "industrial");

            migrationBuilder.AddColumn<int>(
                name: "parts_done",
                table: "jobs",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "parts_total",
                table: "jobs",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AlterColumn<Guid>(
                name: "component_id",
                table: "figures",
                type: "uuid",
                nullable: true,
                oldClrType: typeof(Guid),
                oldType: "uuid");

            migrationBuilder.AddColumn<Guid>(
                name: "rail_id",
                table: "figures",
                type: "uuid",
                nullable: true);

            migrationBuilder.AlterColumn<Guid>(
                name: "component_id",
                table: "current_figures",
                type: "uuid",
                nullable: true,
                oldClrType: typeof(Guid),
                oldType: "uuid");

            migrationBuilder.AddColumn<Guid>(
                name: "id",
                table: "current_figures",
                type: "uuid",
                nullable: false,
                defaultValueSql: "gen_random_uuid()");

            migrationBuilder.AddColumn<Guid>(
                name: "rail_id",
                table: "current_figures",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "circuit_position",
                table: "components",
                type: "character varying(40)",
                maxLength: 40,
                nullable: true);

            migrationBuilder.AddPrimaryKey(
                name: "pk_current_figures",
                table: "current_figures",
                column: "id");

            migrationBuilder.UpdateData(
                table: "lab_settings",
                keyColumn: "id",
                keyValue: 1,
                column: "changed_lines",
                value: "{}");

            migrationBuilder.UpdateData(
                table: "site_state",
                keyColumn: "id",
                keyValue: 1,
                column: "figures_stamp",
                value: null);

            migrationBuilder.CreateIndex(
                name: "ix_figures_revision_id_rail_id_rule",
                table: "figures",
                columns: new[] { "revision_id", "rail_id", "rule" },
                unique: true);

            migrationBuilder.AddCheckConstraint(
                name: "ck_figures_subject",
                table: "figures",
                sql: "(component_id is null) <> (rail_id is null)");

            migrationBuilder.CreateIndex(
                name: "ix_current_figures_revision_id_component_id_rule",
                table: "current_figures",
                columns: new[] { "revision_id", "component_id", "rule" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_current_figures_revision_id_rail_id_rule",
                table: "current_figures",
                columns: new[] { "revision_id", "rail_id", "rule" },
                unique: true);

            migrationBuilder.AddCheckConstraint(
                name: "ck_current_figures_subject",
                table: "current_figures",
                sql: "(component_id is null) <> (rail_id is null)");

            migrationBuilder.AddForeignKey(
                name: "fk_current_figures_rails_revision_id_rail_id",
                table: "current_figures",
                columns: new[] { "revision_id", "rail_id" },
                principalTable: "rails",
                principalColumns: new[] { "revision_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_figures_rails_revision_id_rail_id",
                table: "figures",
                columns: new[] { "revision_id", "rail_id" },
                principalTable: "rails",
                principalColumns: new[] { "revision_id", "id" },
                onDelete: ReferentialAction.Cascade);
            // The default only filled the rows that were there.
            migrationBuilder.Sql("""
                alter table current_figures alter column id drop default;
                alter table rails add constraint fk_rails_port_id foreign key (revision_id, port_id)
                    references ports (revision_id, id) on delete set null (port_id) deferrable initially deferred;
                create index ix_rails_port_id on rails (revision_id, port_id) where port_id is not null;
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            // Figures of rails have no place in the older form; they are computed again.
            migrationBuilder.Sql("""
                alter table figures disable trigger published_content_never_changes;
                delete from figures where component_id is null;
                alter table figures enable always trigger published_content_never_changes;
                delete from current_figures where component_id is null;
                alter table rails drop constraint fk_rails_port_id;
                drop index ix_rails_port_id;
                """);
            migrationBuilder.DropForeignKey(
                name: "fk_current_figures_rails_revision_id_rail_id",
                table: "current_figures");

            migrationBuilder.DropForeignKey(
                name: "fk_figures_rails_revision_id_rail_id",
                table: "figures");

            migrationBuilder.DropIndex(
                name: "ix_figures_revision_id_rail_id_rule",
                table: "figures");

            migrationBuilder.DropCheckConstraint(
                name: "ck_figures_subject",
                table: "figures");

            migrationBuilder.DropPrimaryKey(
                name: "pk_current_figures",
                table: "current_figures");

            migrationBuilder.DropIndex(
                name: "ix_current_figures_revision_id_component_id_rule",
                table: "current_figures");

            migrationBuilder.DropIndex(
                name: "ix_current_figures_revision_id_rail_id_rule",
                table: "current_figures");

            migrationBuilder.DropCheckConstraint(
                name: "ck_current_figures_subject",
                table: "current_figures");

            migrationBuilder.DropColumn(
                name: "figures_stamp",
                table: "site_state");

            migrationBuilder.DropColumn(
                name: "port_id",
                table: "rails");

            migrationBuilder.DropColumn(
                name: "changed_lines",
                table: "lab_settings");

            migrationBuilder.DropColumn(
                name: "derating_preset",
                table: "lab_settings");

            migrationBuilder.DropColumn(
                name: "parts_done",
                table: "jobs");

            migrationBuilder.DropColumn(
                name: "parts_total",
                table: "jobs");

            migrationBuilder.DropColumn(
                name: "rail_id",
                table: "figures");

            migrationBuilder.DropColumn(
                name: "id",
                table: "current_figures");

            migrationBuilder.DropColumn(
                name: "rail_id",
                table: "current_figures");

            migrationBuilder.DropColumn(
                name: "circuit_position",
                table: "components");

            migrationBuilder.AlterColumn<Guid>(
                name: "component_id",
                table: "figures",
                type: "uuid",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"),
                oldClrType: typeof(Guid),
                oldType: "uuid",
                oldNullable: true);

            migrationBuilder.AlterColumn<Guid>(
                name: "component_id",
                table: "current_figures",
                type: "uuid",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"),
                oldClrType: typeof(Guid),
                oldType: "uuid",
                oldNullable: true);

            migrationBuilder.AddPrimaryKey(
                name: "pk_current_figures",
                table: "current_figures",
                columns: new[] { "revision_id", "component_id", "rule" });
        }
    }
}
