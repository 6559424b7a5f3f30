using System;
using System.Collections.Generic;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace MakerStudio.Services.Schema.Migrations
{
    /// <inheritdoc />
    internal sealed partial class MaterialSafety : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "enough_scent_note",
                table: "formulas",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "enough_scent_percent",
                table: "formulas",
                type: "numeric",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "measured_boiling_point",
                table: "formula_versions",
                type: "numeric",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "measured_flash_point",
                table: "formula_versions",
                type: "numeric",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "measured_ph",
                table: "formula_versions",
                type: "numeric",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "measured_viscosity",
                table: "formula_versions",
                type: "numeric",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "sustains_combustion",
                table: "formula_versions",
                type: "boolean",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "market",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    scheme = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    voc_limits = table.Column<List<string>>(type: "text[]", nullable: false),
                    allergen_percent = table.Column<decimal>(type: "numeric", nullable: true),
                    ufi_entity = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: true),
                    ufi_number = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_market", x => x.id);
                    table.CheckConstraint("allergen_percent_sane", "allergen_percent > 0 and allergen_percent <= 100");
                    table.CheckConstraint("only_one_market", "id = 1");
                    table.CheckConstraint("ufi_never_bare", "(ufi_entity is null) = (ufi_number is null)");
                });

            migrationBuilder.CreateTable(
                name: "material_safety",
                columns: table => new
                {
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sheet_edition = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    sheet_date = table.Column<DateOnly>(type: "date", nullable: true),
                    volatile_percent = table.Column<decimal>(type: "numeric", nullable: true),
                    vanillin_percent = table.Column<decimal>(type: "numeric", nullable: true),
                    holds_citrus = table.Column<bool>(type: "boolean", nullable: false),
                    phthalate_free = table.Column<bool>(type: "boolean", nullable: true),
                    cmr_free = table.Column<bool>(type: "boolean", nullable: true),
                    certificate_amendment = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: true),
                    certificate_issued_on = table.Column<DateOnly>(type: "date", nullable: true),
                    notes = table.Column<string>(type: "text", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false),
                    acute_m = table.Column<int>(type: "integer", nullable: true),
                    chronic_m = table.Column<int>(type: "integer", nullable: true),
                    classes = table.Column<string>(type: "text", nullable: true),
                    dermal_mg_per_kg = table.Column<decimal>(type: "numeric", nullable: true),
                    limits = table.Column<string>(type: "text", nullable: true),
                    mist_mg_per_litre = table.Column<decimal>(type: "numeric", nullable: true),
                    oral_mg_per_kg = table.Column<decimal>(type: "numeric", nullable: true),
                    vapour_mg_per_litre = table.Column<decimal>(type: "numeric", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_material_safety", x => x.material_id);
                    table.CheckConstraint("safety_percents", "volatile_percent between 0 and 100 and vanillin_percent between 0 and 100");
                    table.ForeignKey(
                        name: "fk_material_safety_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "own_flammable_limits",
                columns: table => new
                {
                    market_id = table.Column<int>(type: "integer", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: false),
                    counts = table.Column<string[]>(type: "text[]", nullable: false),
                    max_milligrams = table.Column<long>(type: "bigint", nullable: true),
                    max_millilitres = table.Column<decimal>(type: "numeric", nullable: true),
                    citation = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    status = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_own_flammable_limits", x => new { x.market_id, x.position });
                    table.CheckConstraint("one_most", "(max_milligrams is null) <> (max_millilitres is null) and coalesce(max_milligrams, max_millilitres) > 0");
                    table.ForeignKey(
                        name: "fk_own_flammable_limits_market_market_id",
                        column: x => x.market_id,
                        principalTable: "market",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "own_substance_limits",
                columns: table => new
                {
                    market_id = table.Column<int>(type: "integer", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: false),
                    cas = table.Column<List<string>>(type: "text[]", nullable: false),
                    amendment = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    is_phototoxic = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_own_substance_limits", x => new { x.market_id, x.position });
                    table.ForeignKey(
                        name: "fk_own_substance_limits_market_market_id",
                        column: x => x.market_id,
                        principalTable: "market",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "certificate_limits",
                columns: table => new
                {
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    category = table.Column<string>(type: "character varying(4)", maxLength: 4, nullable: false),
                    max_percent = table.Column<decimal>(type: "numeric", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_certificate_limits", x => new { x.material_id, x.category });
                    table.CheckConstraint("certificate_percent", "max_percent between 0 and 100");
                    table.ForeignKey(
                        name: "fk_certificate_limits_material_safety_material_id",
                        column: x => x.material_id,
                        principalTable: "material_safety",
                        principalColumn: "material_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "material_substances",
                columns: table => new
                {
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(160)", maxLength: 160, nullable: false),
                    cas = table.Column<string>(type: "character varying(12)", maxLength: 12, nullable: true),
                    low_percent = table.Column<decimal>(type: "numeric", nullable: false),
                    high_percent = table.Column<decimal>(type: "numeric", nullable: false),
                    stated_percent = table.Column<decimal>(type: "numeric", nullable: true),
                    acute_m = table.Column<int>(type: "integer", nullable: true),
                    chronic_m = table.Column<int>(type: "integer", nullable: true),
                    classes = table.Column<string>(type: "text", nullable: true),
                    dermal_mg_per_kg = table.Column<decimal>(type: "numeric", nullable: true),
                    limits = table.Column<string>(type: "text", nullable: true),
                    mist_mg_per_litre = table.Column<decimal>(type: "numeric", nullable: true),
                    oral_mg_per_kg = table.Column<decimal>(type: "numeric", nullable: true),
                    vapour_mg_per_litre = table.Column<decimal>(type: "numeric", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_material_substances", x => new { x.material_id, x.position });
                    table.CheckConstraint("substance_range", "low_percent >= 0 and high_percent >= low_percent and high_percent <= 100 and stated_percent between 0 and 100");
                    table.ForeignKey(
                        name: "fk_material_substances_material_safety_material_id",
                        column: x => x.material_id,
                        principalTable: "material_safety",
                        principalColumn: "material_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "own_substance_categories",
                columns: table => new
                {
                    market_id = table.Column<int>(type: "integer", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    category = table.Column<string>(type: "character varying(4)", maxLength: 4, nullable: false),
                    max_percent = table.Column<decimal>(type: "numeric", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_own_substance_categories", x => new { x.market_id, x.position, x.category });
                    table.CheckConstraint("own_percent", "max_percent between 0 and 100");
                    table.ForeignKey(
                        name: "fk_own_substance_categories_own_substance_limits_market_id_pos",
                        columns: x => new { x.market_id, x.position },
                        principalTable: "own_substance_limits",
                        principalColumns: new[] { "market_id", "position" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.AddCheckConstraint(
                name: "enough_scent_sane",
                table: "formulas",
                sql: "enough_scent_percent > 0 and enough_scent_percent <= 100");

            migrationBuilder.CreateIndex(
                name: "ix_material_substances_cas",
                table: "material_substances",
                column: "cas");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "certificate_limits");

            migrationBuilder.DropTable(
                name: "material_substances");

            migrationBuilder.DropTable(
                name: "own_flammable_limits");

            migrationBuilder.DropTable(
                name: "own_substance_categories");

            migrationBuilder.DropTable(
                name: "material_safety");

            migrationBuilder.DropTable(
                name: "own_substance_limits");

            migrationBuilder.DropTable(
                name: "market");

            migrationBuilder.DropCheckConstraint(
                name: "enough_scent_sane",
                table: "formulas");

            migrationBuilder.DropColumn(
                name: "enough_scent_note",
                table: "formulas");

            migrationBuilder.DropColumn(
                name: "enough_scent_percent",
                table: "formulas");

            migrationBuilder.DropColumn(
                name: "measured_boiling_point",
                table: "formula_versions");

            migrationBuilder.DropColumn(
                name: "measured_flash_point",
                table: "formula_versions");

            migrationBuilder.DropColumn(
                name: "measured_ph",
                table: "formula_versions");

            migrationBuilder.DropColumn(
                name: "measured_viscosity",
                table: "formula_versions");

            migrationBuilder.DropColumn(
                name: "sustains_combustion",
                table: "formula_versions");
        }
    }
}
