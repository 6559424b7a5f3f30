using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace MakerStudio.Services.Schema.Migrations
{
    /// <inheritdoc />
    internal sealed partial class Labels : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "label_stocks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    width = table.Column<decimal>(type: "numeric", nullable: false),
                    height = table.Column<decimal>(type: "numeric", nullable: false),
                    page_width = table.Column<decimal>(type: "numeric", nullable: true),
                    page_height = table.Column<decimal>(type: "numeric", nullable: true),
                    columns = table.Column<int>(type: "integer", nullable: true),
                    rows = table.Column<int>(type: "integer", nullable: true),
                    pitch_across = table.Column<decimal>(type: "numeric", nullable: true),
                    pitch_down = table.Column<decimal>(type: "numeric", nullable: true),
                    margin_left = table.Column<decimal>(type: "numeric", nullable: true),
                    margin_top = table.Column<decimal>(type: "numeric", nullable: true),
                    offset_across = table.Column<decimal>(type: "numeric", nullable: false),
                    offset_down = table.Column<decimal>(type: "numeric", nullable: false),
                    retired_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_label_stocks", x => x.id);
                    table.CheckConstraint("label_sheet_whole", "num_nulls(page_width, page_height, columns, rows, pitch_across, pitch_down, margin_left, margin_top) in (0, 8)");
                    table.CheckConstraint("label_stock_size", "width between 10 and 420 and height between 10 and 420");
                });

            migrationBuilder.CreateTable(
                name: "labels",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    formula_version_id = table.Column<Guid>(type: "uuid", nullable: false),
                    formula_size_id = table.Column<Guid>(type: "uuid", nullable: false),
                    label_stock_id = table.Column<Guid>(type: "uuid", nullable: true),
                    wording = table.Column<string>(type: "jsonb", nullable: false),
                    ufi = table.Column<string>(type: "character varying(19)", maxLength: 19, nullable: true),
                    confirmed = table.Column<string>(type: "jsonb", nullable: true),
                    confirmed_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    confirmed_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    kept_by_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kept_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    xmin = table.Column<uint>(type: "xid", rowVersion: true, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_labels", x => x.id);
                    table.CheckConstraint("confirmed_by_somebody", "num_nulls(confirmed, confirmed_by_id, confirmed_at) in (0, 3)");
                    table.ForeignKey(
                        name: "fk_labels_formula_sizes_formula_size_id",
                        column: x => x.formula_size_id,
                        principalTable: "formula_sizes",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_labels_formula_versions_formula_version_id",
                        column: x => x.formula_version_id,
                        principalTable: "formula_versions",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_labels_label_stocks_label_stock_id",
                        column: x => x.label_stock_id,
                        principalTable: "label_stocks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "label_prints",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    label_id = table.Column<Guid>(type: "uuid", nullable: false),
                    label_stock_id = table.Column<Guid>(type: "uuid", nullable: false),
                    facts = table.Column<string>(type: "jsonb", nullable: false),
                    stock = table.Column<string>(type: "jsonb", nullable: false),
                    count = table.Column<int>(type: "integer", nullable: false),
                    first_place = table.Column<int>(type: "integer", nullable: false),
                    offset_across = table.Column<decimal>(type: "numeric", nullable: false),
                    offset_down = table.Column<decimal>(type: "numeric", nullable: false),
                    best_before = table.Column<DateOnly>(type: "date", nullable: true),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    request_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_label_prints", x => x.id);
                    table.CheckConstraint("label_print_counts", "count > 0 and first_place > 0");
                    table.ForeignKey(
                        name: "fk_label_prints_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_label_prints_label_stocks_label_stock_id",
                        column: x => x.label_stock_id,
                        principalTable: "label_stocks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_label_prints_labels_label_id",
                        column: x => x.label_id,
                        principalTable: "labels",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_label_prints_batch_id",
                table: "label_prints",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_label_prints_label_id",
                table: "label_prints",
                column: "label_id");

            migrationBuilder.CreateIndex(
                name: "ix_label_prints_label_stock_id",
                table: "label_prints",
                column: "label_stock_id");

            migrationBuilder.CreateIndex(
                name: "ix_label_prints_request_id",
                table: "label_prints",
                column: "request_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_labels_formula_size_id",
                table: "labels",
                column: "formula_size_id");

            migrationBuilder.CreateIndex(
                name: "ix_labels_formula_version_id_formula_size_id",
                table: "labels",
                columns: new[] { "formula_version_id", "formula_size_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_labels_label_stock_id",
                table: "labels",
                column: "label_stock_id");

            migrationBuilder.Sql("""
                create trigger label_prints_append_only before update or delete on label_prints for each row execute function refuse_change();
                create trigger label_prints_no_truncate before truncate on label_prints for each statement execute function refuse_change();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "label_prints");

            migrationBuilder.DropTable(
                name: "labels");

            migrationBuilder.DropTable(
                name: "label_stocks");
        }
    }
}
