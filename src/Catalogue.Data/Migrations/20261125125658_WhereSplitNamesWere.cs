using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Catalogue.Data.Migrations
{
    /// <inheritdoc />
    public partial class WhereSplitNamesWere : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid[]>(
                name: "aliases_before",
                table: "family_splits",
                type: "uuid[]",
                nullable: false,
                defaultValue: Array.Empty<Guid>());

            migrationBuilder.AddColumn<Guid[]>(
                name: "top_marks_before",
                table: "family_splits",
                type: "uuid[]",
                nullable: false,
                defaultValue: Array.Empty<Guid>());

            // Splits made before this was kept: what they moved was of the family itself.
            migrationBuilder.Sql("""
                update family_splits set
                    aliases_before = array_fill(from_id, array[cardinality(aliases)]), top_marks_before = array_fill(from_id, array[cardinality(top_marks)]);
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "aliases_before",
                table: "family_splits");

            migrationBuilder.DropColumn(
                name: "top_marks_before",
                table: "family_splits");
        }
    }
}
