using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace MakerStudio.Services.Schema.Migrations
{
    /// <inheritdoc />
    internal sealed partial class Buying : Migration
    {
        private static readonly string[] AppendOnly = ["purchase_orders", "purchase_order_lines", "order_closings"];

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "address",
                table: "suppliers",
                type: "character varying(400)",
                maxLength: 400,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "order_cover_days",
                table: "materials",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "safety_stock",
                table: "materials",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "order_line_id",
                table: "delivery_lines",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "purchase_orders",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    supplier_id = table.Column<Guid>(type: "uuid", nullable: false),
                    ordered_on = table.Column<DateOnly>(type: "date", nullable: false),
                    expected_on = table.Column<DateOnly>(type: "date", nullable: true),
                    freight = table.Column<decimal>(type: "numeric", nullable: false),
                    tax_rate = table.Column<decimal>(type: "numeric", nullable: false),
                    note = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    sent_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sent_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_purchase_orders", x => x.id);
                    table.CheckConstraint("order_freight_sane", "freight >= 0");
                    table.CheckConstraint("order_tax_sane", "tax_rate between 0 and 1");
                    table.ForeignKey(
                        name: "fk_purchase_orders_suppliers_supplier_id",
                        column: x => x.supplier_id,
                        principalTable: "suppliers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "order_closings",
                columns: table => new
                {
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    reason = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_order_closings", x => x.order_id);
                    table.ForeignKey(
                        name: "fk_order_closings_purchase_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "purchase_orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "purchase_order_lines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    order_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    quantity = table.Column<decimal>(type: "numeric", nullable: false),
                    unit = table.Column<string>(type: "character varying(30)", maxLength: 30, nullable: false),
                    units = table.Column<long>(type: "bigint", nullable: false),
                    unit_price = table.Column<decimal>(type: "numeric", nullable: false),
                    discount = table.Column<decimal>(type: "numeric", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_purchase_order_lines", x => x.id);
                    table.CheckConstraint("order_line_above_zero", "quantity > 0 and units > 0");
                    table.CheckConstraint("order_line_price_sane", "unit_price >= 0 and discount between 0 and 1");
                    table.ForeignKey(
                        name: "fk_purchase_order_lines_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_purchase_order_lines_purchase_orders_order_id",
                        column: x => x.order_id,
                        principalTable: "purchase_orders",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.AddCheckConstraint(
                name: "order_amounts_sane",
                table: "materials",
                sql: "safety_stock >= 0 and order_cover_days > 0");

            migrationBuilder.CreateIndex(
                name: "ix_delivery_lines_order_line_id",
                table: "delivery_lines",
                column: "order_line_id");

            migrationBuilder.CreateIndex(
                name: "ix_purchase_order_lines_material_id",
                table: "purchase_order_lines",
                column: "material_id");

            migrationBuilder.CreateIndex(
                name: "ix_purchase_order_lines_order_id",
                table: "purchase_order_lines",
                column: "order_id");

            migrationBuilder.CreateIndex(
                name: "ix_purchase_orders_code",
                table: "purchase_orders",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_purchase_orders_sent_at_id",
                table: "purchase_orders",
                columns: new[] { "sent_at", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_purchase_orders_supplier_id",
                table: "purchase_orders",
                column: "supplier_id");

            migrationBuilder.AddForeignKey(
                name: "fk_delivery_lines_purchase_order_lines_order_line_id",
                table: "delivery_lines",
                column: "order_line_id",
                principalTable: "purchase_order_lines",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            foreach (var table in AppendOnly)
            {
                migrationBuilder.Sql($"""
                    create trigger {table}_append_only before update or delete on {table} for each row execute function refuse_change();
                    create trigger {table}_no_truncate before truncate on {table} for each statement execute function refuse_change();
                    """);
            }
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_delivery_lines_purchase_order_lines_order_line_id",
                table: "delivery_lines");

            migrationBuilder.DropTable(
                name: "order_closings");

            migrationBuilder.DropTable(
                name: "purchase_order_lines");

            migrationBuilder.DropTable(
                name: "purchase_orders");

            migrationBuilder.DropCheckConstraint(
                name: "order_amounts_sane",
                table: "materials");

            migrationBuilder.DropIndex(
                name: "ix_delivery_lines_order_line_id",
                table: "delivery_lines");

            migrationBuilder.DropColumn(
                name: "address",
                table: "suppliers");

            migrationBuilder.DropColumn(
                name: "order_cover_days",
                table: "materials");

            migrationBuilder.DropColumn(
                name: "safety_stock",
                table: "materials");

            migrationBuilder.DropColumn(
                name: "order_line_id",
                table: "delivery_lines");
        }
    }
}
