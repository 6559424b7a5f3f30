using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace MakerStudio.Services.Schema.Migrations
{
    /// <inheritdoc />
    internal sealed partial class BookYears : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropCheckConstraint(
                name: "write_down_of_one",
                table: "write_downs");

            migrationBuilder.AddColumn<Guid>(
                name: "batch_id",
                table: "write_downs",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "kit_id",
                table: "write_downs",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "kit_lot_id",
                table: "write_downs",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "lot_id",
                table: "write_downs",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "book_years",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    first = table.Column<DateOnly>(type: "date", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_book_years", x => x.id);
                    table.CheckConstraint("book_year_starts_in_every_month", "extract(day from first) <= 28");
                });

            migrationBuilder.CreateIndex(
                name: "ix_write_downs_batch_id",
                table: "write_downs",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "ix_write_downs_kit_id",
                table: "write_downs",
                column: "kit_id");

            migrationBuilder.CreateIndex(
                name: "ix_write_downs_kit_lot_id",
                table: "write_downs",
                column: "kit_lot_id");

            migrationBuilder.CreateIndex(
                name: "ix_write_downs_lot_id",
                table: "write_downs",
                column: "lot_id");

            migrationBuilder.AddCheckConstraint(
                name: "write_down_of_its_lot",
                table: "write_downs",
                sql: "(lot_id is null or material_id is not null) and (batch_id is null or formula_id is not null) and (kit_lot_id is null) = (kit_id is null)");

            migrationBuilder.AddCheckConstraint(
                name: "write_down_of_one",
                table: "write_downs",
                sql: "num_nonnulls(material_id, formula_id, kit_id) = 1");

            migrationBuilder.AddForeignKey(
                name: "fk_write_downs_batches_batch_id",
                table: "write_downs",
                column: "batch_id",
                principalTable: "batches",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_write_downs_kit_lots_kit_lot_id",
                table: "write_downs",
                column: "kit_lot_id",
                principalTable: "kit_lots",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_write_downs_kits_kit_id",
                table: "write_downs",
                column: "kit_id",
                principalTable: "kits",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "fk_write_downs_lots_lot_id",
                table: "write_downs",
                column: "lot_id",
                principalTable: "lots",
                principalColumn: "id",
                onDelete: ReferentialAction.Restrict);
            migrationBuilder.Sql("""
                create trigger book_years_append_only before update or delete on book_years for each row execute function refuse_change();
                create trigger book_years_no_truncate before truncate on book_years for each statement execute function refuse_change();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_write_downs_batches_batch_id",
                table: "write_downs");

            migrationBuilder.DropForeignKey(
                name: "fk_write_downs_kit_lots_kit_lot_id",
                table: "write_downs");

            migrationBuilder.DropForeignKey(
                name: "fk_write_downs_kits_kit_id",
                table: "write_downs");

            migrationBuilder.DropForeignKey(
                name: "fk_write_downs_lots_lot_id",
                table: "write_downs");

            migrationBuilder.DropTable(
                name: "book_years");

            migrationBuilder.DropIndex(
                name: "ix_write_downs_batch_id",
                table: "write_downs");

            migrationBuilder.DropIndex(
                name: "ix_write_downs_kit_id",
                table: "write_downs");

            migrationBuilder.DropIndex(
                name: "ix_write_downs_kit_lot_id",
                table: "write_downs");

            migrationBuilder.DropIndex(
                name: "ix_write_downs_lot_id",
                table: "write_downs");

            migrationBuilder.DropCheckConstraint(
                name: "write_down_of_its_lot",
                table: "write_downs");

            migrationBuilder.DropCheckConstraint(
                name: "write_down_of_one",
                table: "write_downs");

            migrationBuilder.DropColumn(
                name: "batch_id",
                table: "write_downs");

            migrationBuilder.DropColumn(
                name: "kit_id",
                table: "write_downs");

            migrationBuilder.DropColumn(
                name: "kit_lot_id",
                table: "write_downs");

            migrationBuilder.DropColumn(
                name: "lot_id",
                table: "write_downs");

            migrationBuilder.AddCheckConstraint(
                name: "write_down_of_one",
                table: "write_downs",
                sql: "(material_id is null) <> (formula_id is null)");
        }
    }
}
