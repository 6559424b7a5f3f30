using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace MakerStudio.Services.Schema.Migrations
{
    /// <inheritdoc />
    internal sealed partial class FinishedGoods : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "entry_id",
                table: "unit_movements",
                type: "uuid",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"));

            migrationBuilder.AddColumn<string>(
                name: "kind",
                table: "unit_movements",
                type: "character varying(20)",
                maxLength: 20,
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<Guid>(
                name: "kit_lot_id",
                table: "unit_movements",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "place_id",
                table: "unit_movements",
                type: "uuid",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"));

            migrationBuilder.AddColumn<long>(
                name: "reverses_id",
                table: "unit_movements",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "sale_id",
                table: "unit_movements",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "kit_lot_id",
                table: "movements",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "best_before",
                table: "batches",
                type: "date",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "customers",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    email = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    phone = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    address = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    note = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    added_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_customers", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "kits",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    note = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    put_away_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_kits", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "places",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    contact = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    email = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    phone = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    address = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    commission_percent = table.Column<decimal>(type: "numeric", nullable: true),
                    pays_broken = table.Column<bool>(type: "boolean", nullable: false),
                    closed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_places", x => x.id);
                    table.CheckConstraint("commission_is_percent", "commission_percent between 0 and 100");
                });

            migrationBuilder.CreateTable(
                name: "sales_files",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    bytes = table.Column<long>(type: "bigint", nullable: false),
                    sha256 = table.Column<byte[]>(type: "bytea", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    posted_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    posted_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    sales_posted = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sales_files", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "kit_items",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kit_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    formula_id = table.Column<Guid>(type: "uuid", nullable: false),
                    size_name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    count = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_kit_items", x => x.id);
                    table.CheckConstraint("kit_item_positive", "count > 0");
                    table.ForeignKey(
                        name: "fk_kit_items_formulas_formula_id",
                        column: x => x.formula_id,
                        principalTable: "formulas",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_kit_items_kits_kit_id",
                        column: x => x.kit_id,
                        principalTable: "kits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "kit_lots",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    kit_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    made = table.Column<int>(type: "integer", nullable: false),
                    sold = table.Column<int>(type: "integer", nullable: false),
                    undone = table.Column<int>(type: "integer", nullable: false),
                    left = table.Column<int>(type: "integer", nullable: false),
                    unit_cost = table.Column<decimal>(type: "numeric", nullable: false),
                    made_on = table.Column<DateOnly>(type: "date", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_kit_lots", x => x.id);
                    table.CheckConstraint("kits_add_up", "made > 0 and sold >= 0 and undone >= 0 and \"left\" >= 0 and made = sold + undone + \"left\"");
                    table.ForeignKey(
                        name: "fk_kit_lots_kits_kit_id",
                        column: x => x.kit_id,
                        principalTable: "kits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "kit_parts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kit_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    material_id = table.Column<Guid>(type: "uuid", nullable: false),
                    count = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_kit_parts", x => x.id);
                    table.CheckConstraint("kit_part_positive", "count > 0");
                    table.ForeignKey(
                        name: "fk_kit_parts_kits_kit_id",
                        column: x => x.kit_id,
                        principalTable: "kits",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_kit_parts_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "placements",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    place_id = table.Column<Guid>(type: "uuid", nullable: false),
                    entry_id = table.Column<Guid>(type: "uuid", nullable: false),
                    placed_on = table.Column<DateOnly>(type: "date", nullable: false),
                    note = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_placements", x => x.id);
                    table.ForeignKey(
                        name: "fk_placements_places_place_id",
                        column: x => x.place_id,
                        principalTable: "places",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "unit_balances",
                columns: table => new
                {
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    place_id = table.Column<Guid>(type: "uuid", nullable: false),
                    status = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    count = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_unit_balances", x => new { x.batch_id, x.place_id, x.status });
                    table.CheckConstraint("units_never_negative", "count >= 0");
                    table.ForeignKey(
                        name: "fk_unit_balances_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_unit_balances_places_place_id",
                        column: x => x.place_id,
                        principalTable: "places",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sales",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    of_sale_id = table.Column<Guid>(type: "uuid", nullable: true),
                    place_id = table.Column<Guid>(type: "uuid", nullable: false),
                    customer_id = table.Column<Guid>(type: "uuid", nullable: true),
                    channel = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    reference = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    sold_on = table.Column<DateOnly>(type: "date", nullable: false),
                    tax_percent = table.Column<decimal>(type: "numeric", nullable: false),
                    tax_basis = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    fees = table.Column<decimal>(type: "numeric", nullable: false),
                    note = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    sales_file_id = table.Column<Guid>(type: "uuid", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sales", x => x.id);
                    table.CheckConstraint("reversal_names_its_sale", "kind <> 'Reversal' or of_sale_id is not null");
                    table.CheckConstraint("tax_is_percent", "tax_percent between 0 and 100");
                    table.ForeignKey(
                        name: "fk_sales_customers_customer_id",
                        column: x => x.customer_id,
                        principalTable: "customers",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_sales_places_place_id",
                        column: x => x.place_id,
                        principalTable: "places",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_sales_sales_files_sales_file_id",
                        column: x => x.sales_file_id,
                        principalTable: "sales_files",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_sales_sales_of_sale_id",
                        column: x => x.of_sale_id,
                        principalTable: "sales",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sales_file_parts",
                columns: table => new
                {
                    file_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    content = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sales_file_parts", x => new { x.file_id, x.number });
                    table.ForeignKey(
                        name: "fk_sales_file_parts_sales_files_file_id",
                        column: x => x.file_id,
                        principalTable: "sales_files",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "kit_lot_contents",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kit_lot_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: true),
                    lot_id = table.Column<Guid>(type: "uuid", nullable: true),
                    name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    count = table.Column<int>(type: "integer", nullable: false),
                    unit_cost = table.Column<decimal>(type: "numeric", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_kit_lot_contents", x => x.id);
                    table.CheckConstraint("kit_content_batch_or_lot", "(batch_id is null) <> (lot_id is null)");
                    table.CheckConstraint("kit_content_positive", "count > 0");
                    table.ForeignKey(
                        name: "fk_kit_lot_contents_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_kit_lot_contents_kit_lots_kit_lot_id",
                        column: x => x.kit_lot_id,
                        principalTable: "kit_lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_kit_lot_contents_lots_lot_id",
                        column: x => x.lot_id,
                        principalTable: "lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "placement_lines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    placement_id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    count = table.Column<int>(type: "integer", nullable: false),
                    net_price = table.Column<decimal>(type: "numeric", nullable: false),
                    commission_percent = table.Column<decimal>(type: "numeric", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_placement_lines", x => x.id);
                    table.CheckConstraint("placed_count_positive", "count > 0");
                    table.ForeignKey(
                        name: "fk_placement_lines_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_placement_lines_placements_placement_id",
                        column: x => x.placement_id,
                        principalTable: "placements",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "consignment_reports",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    place_id = table.Column<Guid>(type: "uuid", nullable: false),
                    entry_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sale_id = table.Column<Guid>(type: "uuid", nullable: true),
                    reported_on = table.Column<DateOnly>(type: "date", nullable: false),
                    note = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_consignment_reports", x => x.id);
                    table.ForeignKey(
                        name: "fk_consignment_reports_places_place_id",
                        column: x => x.place_id,
                        principalTable: "places",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_consignment_reports_sales_sale_id",
                        column: x => x.sale_id,
                        principalTable: "sales",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "dispatches",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    sale_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sent_on = table.Column<DateOnly>(type: "date", nullable: false),
                    carrier = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    tracking = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    note = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_dispatches", x => x.id);
                    table.ForeignKey(
                        name: "fk_dispatches_sales_sale_id",
                        column: x => x.sale_id,
                        principalTable: "sales",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sale_lines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    sale_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: true),
                    kit_lot_id = table.Column<Guid>(type: "uuid", nullable: true),
                    quantity = table.Column<int>(type: "integer", nullable: false),
                    tag = table.Column<decimal>(type: "numeric", nullable: false),
                    net_price = table.Column<decimal>(type: "numeric", nullable: false),
                    unit_cost = table.Column<decimal>(type: "numeric", nullable: true),
                    is_for_broken = table.Column<bool>(type: "boolean", nullable: false),
                    reason = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sale_lines", x => x.id);
                    table.CheckConstraint("sale_of_batch_or_kit", "(batch_id is null) <> (kit_lot_id is null)");
                    table.CheckConstraint("sale_quantity_not_zero", "quantity <> 0");
                    table.ForeignKey(
                        name: "fk_sale_lines_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_sale_lines_kit_lots_kit_lot_id",
                        column: x => x.kit_lot_id,
                        principalTable: "kit_lots",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_sale_lines_sales_sale_id",
                        column: x => x.sale_id,
                        principalTable: "sales",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "consignment_report_lines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    report_id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    held = table.Column<int>(type: "integer", nullable: false),
                    sold = table.Column<int>(type: "integer", nullable: false),
                    broken = table.Column<int>(type: "integer", nullable: false),
                    sent_back = table.Column<int>(type: "integer", nullable: false),
                    left = table.Column<int>(type: "integer", nullable: false),
                    net_price = table.Column<decimal>(type: "numeric", nullable: false),
                    commission_percent = table.Column<decimal>(type: "numeric", nullable: false),
                    paid_per_broken = table.Column<decimal>(type: "numeric", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_consignment_report_lines", x => x.id);
                    table.CheckConstraint("shop_accounts_for_all", "sold >= 0 and broken >= 0 and sent_back >= 0 and \"left\" >= 0 and held = sold + broken + sent_back + \"left\"");
                    table.ForeignKey(
                        name: "fk_consignment_report_lines_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_consignment_report_lines_consignment_reports_report_id",
                        column: x => x.report_id,
                        principalTable: "consignment_reports",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_unit_movements_entry_id",
                table: "unit_movements",
                column: "entry_id");

            migrationBuilder.CreateIndex(
                name: "ix_unit_movements_kit_lot_id",
                table: "unit_movements",
                column: "kit_lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_unit_movements_place_id_id",
                table: "unit_movements",
                columns: new[] { "place_id", "id" });

            migrationBuilder.CreateIndex(
                name: "ix_unit_movements_reverses_id",
                table: "unit_movements",
                column: "reverses_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_unit_movements_sale_id",
                table: "unit_movements",
                column: "sale_id");

            migrationBuilder.CreateIndex(
                name: "ix_movements_kit_lot_id",
                table: "movements",
                column: "kit_lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_consignment_report_lines_batch_id",
                table: "consignment_report_lines",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_consignment_report_lines_report_id",
                table: "consignment_report_lines",
                column: "report_id");

            migrationBuilder.CreateIndex(
                name: "ix_consignment_reports_place_id",
                table: "consignment_reports",
                column: "place_id");

            migrationBuilder.CreateIndex(
                name: "ix_consignment_reports_sale_id",
                table: "consignment_reports",
                column: "sale_id");

            migrationBuilder.CreateIndex(
                name: "ix_customers_name",
                table: "customers",
                column: "name");

            migrationBuilder.CreateIndex(
                name: "ix_dispatches_sale_id",
                table: "dispatches",
                column: "sale_id");

            migrationBuilder.CreateIndex(
                name: "ix_kit_items_formula_id",
                table: "kit_items",
                column: "formula_id");

            migrationBuilder.CreateIndex(
                name: "ix_kit_items_kit_id",
                table: "kit_items",
                column: "kit_id");

            migrationBuilder.CreateIndex(
                name: "ix_kit_lot_contents_batch_id",
                table: "kit_lot_contents",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_kit_lot_contents_kit_lot_id",
                table: "kit_lot_contents",
                column: "kit_lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_kit_lot_contents_lot_id",
                table: "kit_lot_contents",
                column: "lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_kit_lots_code",
                table: "kit_lots",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_kit_lots_kit_id",
                table: "kit_lots",
                column: "kit_id");

            migrationBuilder.CreateIndex(
                name: "ix_kit_parts_kit_id",
                table: "kit_parts",
                column: "kit_id");

            migrationBuilder.CreateIndex(
                name: "ix_kit_parts_material_id",
                table: "kit_parts",
                column: "material_id");

            migrationBuilder.CreateIndex(
                name: "ix_placement_lines_batch_id",
                table: "placement_lines",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_placement_lines_placement_id",
                table: "placement_lines",
                column: "placement_id");

            migrationBuilder.CreateIndex(
                name: "ix_placements_place_id",
                table: "placements",
                column: "place_id");

            migrationBuilder.CreateIndex(
                name: "ix_places_name",
                table: "places",
                column: "name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_places_one_studio",
                table: "places",
                column: "kind",
                unique: true,
                filter: "kind = 'Studio'");

            migrationBuilder.CreateIndex(
                name: "ix_sale_lines_batch_id",
                table: "sale_lines",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_sale_lines_kit_lot_id",
                table: "sale_lines",
                column: "kit_lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_sale_lines_sale_id_position",
                table: "sale_lines",
                columns: new[] { "sale_id", "position" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_sales_channel_reference",
                table: "sales",
                columns: new[] { "channel", "reference" });

            migrationBuilder.CreateIndex(
                name: "ix_sales_code",
                table: "sales",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_sales_customer_id",
                table: "sales",
                column: "customer_id");

            migrationBuilder.CreateIndex(
                name: "ix_sales_place_id",
                table: "sales",
                column: "place_id");

            migrationBuilder.CreateIndex(
                name: "ix_sales_reversed_once",
                table: "sales",
                column: "of_sale_id",
                unique: true,
                filter: "kind = 'Reversal'");

            migrationBuilder.CreateIndex(
                name: "ix_sales_sales_file_id",
                table: "sales",
                column: "sales_file_id");

            migrationBuilder.CreateIndex(
                name: "ix_sales_sold_on_at",
                table: "sales",
                columns: new[] { "sold_on", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_sales_files_posted_once",
                table: "sales_files",
                column: "sha256",
                unique: true,
                filter: "posted_at is not null");

            migrationBuilder.CreateIndex(
                name: "ix_unit_balances_place_id_status",
                table: "unit_balances",
                columns: new[] { "place_id", "status" });

            migrationBuilder.PutUnitsOnTheStudiosShelf();

            migrationBuilder.AddForeignKey(
                name: "fk_movements_kit_lots_kit_lot_id",
                table: "movements",
                column: "kit_lot_id",
                principalTable: "kit_lots",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_unit_movements_kit_lots_kit_lot_id",
                table: "unit_movements",
                column: "kit_lot_id",
                principalTable: "kit_lots",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_unit_movements_places_place_id",
                table: "unit_movements",
                column: "place_id",
                principalTable: "places",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_unit_movements_sales_sale_id",
                table: "unit_movements",
                column: "sale_id",
                principalTable: "sales",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_unit_movements_unit_movements_reverses_id",
                table: "unit_movements",
                column: "reverses_id",
                principalTable: "unit_movements",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.GuardUnits();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropUnitGuards();

            migrationBuilder.DropForeignKey(
                name: "fk_movements_kit_lots_kit_lot_id",
                table: "movements");

            migrationBuilder.DropForeignKey(
                name: "fk_unit_movements_kit_lots_kit_lot_id",
                table: "unit_movements");

            migrationBuilder.DropForeignKey(
                name: "fk_unit_movements_places_place_id",
                table: "unit_movements");

            migrationBuilder.DropForeignKey(
                name: "fk_unit_movements_sales_sale_id",
                table: "unit_movements");

            migrationBuilder.DropForeignKey(
                name: "fk_unit_movements_unit_movements_reverses_id",
                table: "unit_movements");

            migrationBuilder.DropTable(
                name: "consignment_report_lines");

            migrationBuilder.DropTable(
                name: "dispatches");

            migrationBuilder.DropTable(
                name: "kit_items");

            migrationBuilder.DropTable(
                name: "kit_lot_contents");

            migrationBuilder.DropTable(
                name: "kit_parts");

            migrationBuilder.DropTable(
                name: "placement_lines");

            migrationBuilder.DropTable(
                name: "sale_lines");

            migrationBuilder.DropTable(
                name: "sales_file_parts");

            migrationBuilder.DropTable(
                name: "unit_balances");

            migrationBuilder.DropTable(
                name: "consignment_reports");

            migrationBuilder.DropTable(
                name: "placements");

            migrationBuilder.DropTable(
                name: "kit_lots");

            migrationBuilder.DropTable(
                name: "sales");

            migrationBuilder.DropTable(
                name: "kits");

            migrationBuilder.DropTable(
                name: "customers");

            migrationBuilder.DropTable(
                name: "places");

            migrationBuilder.DropTable(
                name: "sales_files");

            migrationBuilder.DropIndex(
                name: "ix_unit_movements_entry_id",
                table: "unit_movements");

            migrationBuilder.DropIndex(
                name: "ix_unit_movements_kit_lot_id",
                table: "unit_movements");

            migrationBuilder.DropIndex(
                name: "ix_unit_movements_place_id_id",
                table: "unit_movements");

            migrationBuilder.DropIndex(
                name: "ix_unit_movements_reverses_id",
                table: "unit_movements");

            migrationBuilder.DropIndex(
                name: "ix_unit_movements_sale_id",
                table: "unit_movements");

            migrationBuilder.DropIndex(
                name: "ix_movements_kit_lot_id",
                table: "movements");

            migrationBuilder.DropColumn(
                name: "entry_id",
                table: "unit_movements");

            migrationBuilder.DropColumn(
                name: "kind",
                table: "unit_movements");

            migrationBuilder.DropColumn(
                name: "kit_lot_id",
                table: "unit_movements");

            migrationBuilder.DropColumn(
                name: "place_id",
                table: "unit_movements");

            migrationBuilder.DropColumn(
                name: "reverses_id",
                table: "unit_movements");

            migrationBuilder.DropColumn(
                name: "sale_id",
                table: "unit_movements");

            migrationBuilder.DropColumn(
                name: "kit_lot_id",
                table: "movements");

            migrationBuilder.DropColumn(
                name: "best_before",
                table: "batches");
        }
    }
}
