using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace MakerStudio.Services.Schema.Migrations
{
    /// <inheritdoc />
    internal sealed partial class Prices : Migration
    {
        private static readonly string[] AppendOnly = ["price_tags", "margin_floors", "book_methods", "write_downs", "batch_losses"];

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<decimal>(
                name: "conversion_cost",
                table: "batches",
                type: "numeric",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "batch_losses",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    milligrams = table.Column<long>(type: "bigint", nullable: false),
                    reason = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_batch_losses", x => x.id);
                    table.CheckConstraint("batch_loss_positive", "milligrams > 0");
                    table.ForeignKey(
                        name: "fk_batch_losses_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "book_methods",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    first = table.Column<DateOnly>(type: "date", nullable: false),
                    method = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_book_methods", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "margin_floors",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    formula_size_id = table.Column<Guid>(type: "uuid", nullable: false),
                    floor = table.Column<decimal>(type: "numeric", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_margin_floors", x => x.id);
                    table.CheckConstraint("floor_sane", "floor >= 0 and floor < 1");
                    table.ForeignKey(
                        name: "fk_margin_floors_formula_sizes_formula_size_id",
                        column: x => x.formula_size_id,
                        principalTable: "formula_sizes",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "price_rules",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    tax_rate = table.Column<decimal>(type: "numeric", nullable: false),
                    tax_basis = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    ending = table.Column<decimal>(type: "numeric", nullable: true),
                    margin_floor = table.Column<decimal>(type: "numeric", nullable: true),
                    year_month = table.Column<int>(type: "integer", nullable: false),
                    year_day = table.Column<int>(type: "integer", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_price_rules", x => x.id);
                    table.CheckConstraint("only_one_price_rules", "id = 1");
                    table.CheckConstraint("price_rules_sane", "tax_rate between 0 and 1 and ending >= 0 and ending < 1 and margin_floor >= 0 and margin_floor < 1");
                    table.CheckConstraint("year_start_sane", "year_month between 1 and 12 and year_day between 1 and 28");
                });

            migrationBuilder.CreateTable(
                name: "sales_channels",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    tax_rate = table.Column<decimal>(type: "numeric", nullable: false),
                    tax_basis = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    cost_per_unit = table.Column<decimal>(type: "numeric", nullable: false),
                    our_share = table.Column<decimal>(type: "numeric", nullable: false),
                    wanted = table.Column<decimal>(type: "numeric", nullable: false),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    retired_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sales_channels", x => x.id);
                    table.CheckConstraint("channel_sane", "tax_rate between 0 and 1 and cost_per_unit >= 0 and our_share > 0 and our_share <= 1 and wanted >= 0");
                });

            migrationBuilder.CreateTable(
                name: "write_downs",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    material_id = table.Column<Guid>(type: "uuid", nullable: true),
                    formula_id = table.Column<Guid>(type: "uuid", nullable: true),
                    size_name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    quantity = table.Column<decimal>(type: "numeric", nullable: false),
                    cost = table.Column<decimal>(type: "numeric", nullable: false),
                    selling_price = table.Column<decimal>(type: "numeric", nullable: false),
                    to_complete = table.Column<decimal>(type: "numeric", nullable: false),
                    to_sell = table.Column<decimal>(type: "numeric", nullable: false),
                    amount = table.Column<decimal>(type: "numeric", nullable: false),
                    reason = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_write_downs", x => x.id);
                    table.CheckConstraint("write_down_of_one", "(material_id is null) <> (formula_id is null)");
                    table.CheckConstraint("write_down_sane", "quantity > 0 and amount >= 0 and amount <= cost");
                    table.ForeignKey(
                        name: "fk_write_downs_formulas_formula_id",
                        column: x => x.formula_id,
                        principalTable: "formulas",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_write_downs_materials_material_id",
                        column: x => x.material_id,
                        principalTable: "materials",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "price_tags",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    formula_size_id = table.Column<Guid>(type: "uuid", nullable: false),
                    sales_channel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    amount = table.Column<decimal>(type: "numeric", nullable: true),
                    from_day = table.Column<DateOnly>(type: "date", nullable: false),
                    note = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_price_tags", x => x.id);
                    table.CheckConstraint("tag_not_negative", "amount >= 0");
                    table.ForeignKey(
                        name: "fk_price_tags_formula_sizes_formula_size_id",
                        column: x => x.formula_size_id,
                        principalTable: "formula_sizes",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_price_tags_sales_channels_sales_channel_id",
                        column: x => x.sales_channel_id,
                        principalTable: "sales_channels",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sales_channel_fees",
                columns: table => new
                {
                    sales_channel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    rate = table.Column<decimal>(type: "numeric", nullable: false),
                    @fixed = table.Column<decimal>(name: "fixed", type: "numeric", nullable: false),
                    basis = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sales_channel_fees", x => new { x.sales_channel_id, x.position });
                    table.CheckConstraint("fee_sane", "rate between 0 and 1 and fixed >= 0");
                    table.ForeignKey(
                        name: "fk_sales_channel_fees_sales_channels_sales_channel_id",
                        column: x => x.sales_channel_id,
                        principalTable: "sales_channels",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_batch_losses_batch_id",
                table: "batch_losses",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_book_methods_first",
                table: "book_methods",
                column: "first",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_margin_floors_formula_size_id",
                table: "margin_floors",
                column: "formula_size_id");

            migrationBuilder.CreateIndex(
                name: "ix_price_tags_formula_size_id_sales_channel_id_from_day",
                table: "price_tags",
                columns: new[] { "formula_size_id", "sales_channel_id", "from_day" });

            migrationBuilder.CreateIndex(
                name: "ix_price_tags_sales_channel_id",
                table: "price_tags",
                column: "sales_channel_id");

            migrationBuilder.CreateIndex(
                name: "ix_sales_channels_name",
                table: "sales_channels",
                column: "name",
                unique: true,
                filter: "retired_at is null");

            migrationBuilder.CreateIndex(
                name: "ix_write_downs_formula_id",
                table: "write_downs",
                column: "formula_id");

            migrationBuilder.CreateIndex(
                name: "ix_write_downs_material_id",
                table: "write_downs",
                column: "material_id");

            // What labour and overhead a pre-blend was charged is what its lot cost beyond its materials.
            migrationBuilder.Sql("""
                update batches b set conversion_cost = round(m.change / 1000.0 * m.unit_cost
                    - coalesce((select sum(w.net_milligrams / 1000.0 * w.unit_cost) from weighings w where w.batch_id = b.id and w.reversed_at is null), 0), 10)
                from movements m where m.batch_id = b.id and m.kind = 'Made';
                """);
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
            migrationBuilder.DropTable(
                name: "batch_losses");

            migrationBuilder.DropTable(
                name: "book_methods");

            migrationBuilder.DropTable(
                name: "margin_floors");

            migrationBuilder.DropTable(
                name: "price_rules");

            migrationBuilder.DropTable(
                name: "price_tags");

            migrationBuilder.DropTable(
                name: "sales_channel_fees");

            migrationBuilder.DropTable(
                name: "write_downs");

            migrationBuilder.DropTable(
                name: "sales_channels");

            migrationBuilder.DropColumn(
                name: "conversion_cost",
                table: "batches");
        }
    }
}
