using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace MakerStudio.Services.Schema.Migrations
{
    /// <inheritdoc />
    internal sealed partial class PriceBreaks : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<long>(
                name: "minimum",
                table: "material_suppliers",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "pack",
                table: "material_suppliers",
                type: "bigint",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "price_breaks",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    supplier_id = table.Column<Guid>(type: "uuid", nullable: false),
                    quantity = table.Column<decimal>(type: "numeric", nullable: false),
                    unit = table.Column<string>(type: "character varying(30)", maxLength: 30, nullable: false),
                    price = table.Column<decimal>(type: "numeric", nullable: true),
                    price_is = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    freight = table.Column<decimal>(type: "numeric", nullable: true),
                    charges = table.Column<decimal>(type: "numeric", nullable: true),
                    asked_on = table.Column<DateOnly>(type: "date", nullable: false),
                    note = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_price_breaks", x => x.id);
                    table.CheckConstraint("price_break_sane", "quantity > 0 and price > 0 and freight >= 0 and charges >= 0");
                    table.ForeignKey(
                        name: "fk_price_breaks_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_price_breaks_suppliers_supplier_id",
                        column: x => x.supplier_id,
                        principalTable: "suppliers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.AddCheckConstraint(
                name: "supplier_packs_sane",
                table: "material_suppliers",
                sql: "minimum > 0 and pack > 0");

            migrationBuilder.CreateIndex(
                name: "ix_price_breaks_material_id_supplier_id",
                table: "price_breaks",
                columns: new[] { "material_id", "supplier_id" });

            migrationBuilder.CreateIndex(
                name: "ix_price_breaks_supplier_id",
                table: "price_breaks",
                column: "supplier_id");

            migrationBuilder.Sql("""
                create trigger price_breaks_append_only before update or delete on price_breaks for each row execute function refuse_change();
                create trigger price_breaks_no_truncate before truncate on price_breaks for each statement execute function refuse_change();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "price_breaks");

            migrationBuilder.DropCheckConstraint(
                name: "supplier_packs_sane",
                table: "material_suppliers");

            migrationBuilder.DropColumn(
                name: "minimum",
                table: "material_suppliers");

            migrationBuilder.DropColumn(
                name: "pack",
                table: "material_suppliers");
        }
    }
}
