using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace MakerStudio.Services.Schema.Migrations
{
    /// <inheritdoc />
    internal sealed partial class AdviceOverrides : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "advice_overrides",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    formula_version_id = table.Column<Guid>(type: "uuid", nullable: false),
                    rule = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    subject = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    measure = table.Column<decimal>(type: "numeric", nullable: true),
                    reason = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    taken_back_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_advice_overrides", x => x.id);
                    table.ForeignKey(
                        name: "fk_advice_overrides_formula_versions_formula_version_id",
                        column: x => x.formula_version_id,
                        principalTable: "formula_versions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.AddCheckConstraint(
                name: "ph_sane",
                table: "formula_versions",
                sql: "measured_ph is null or measured_ph between 0 and 14");

            migrationBuilder.AddCheckConstraint(
                name: "viscosity_positive",
                table: "formula_versions",
                sql: "measured_viscosity is null or measured_viscosity > 0");

            migrationBuilder.CreateIndex(
                name: "ix_advice_overrides_formula_version_id",
                table: "advice_overrides",
                column: "formula_version_id");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "advice_overrides");

            migrationBuilder.DropCheckConstraint(
                name: "ph_sane",
                table: "formula_versions");

            migrationBuilder.DropCheckConstraint(
                name: "viscosity_positive",
                table: "formula_versions");
        }
    }
}
