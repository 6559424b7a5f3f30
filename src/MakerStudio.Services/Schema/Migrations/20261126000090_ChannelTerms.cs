using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace MakerStudio.Services.Schema.Migrations
{
    /// <inheritdoc />
    internal sealed partial class ChannelTerms : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "channel_terms",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    sales_channel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    tax_rate = table.Column<decimal>(type: "numeric", nullable: false),
                    tax_basis = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    cost_per_unit = table.Column<decimal>(type: "numeric", nullable: false),
                    our_share = table.Column<decimal>(type: "numeric", nullable: false),
                    fees = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_channel_terms", x => x.id);
                    table.ForeignKey(
                        name: "fk_channel_terms_sales_channels_sales_channel_id",
                        column: x => x.sales_channel_id,
                        principalTable: "sales_channels",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_channel_terms_sales_channel_id",
                table: "channel_terms",
                column: "sales_channel_id");

            // Nothing older is known than how each channel stands now.
            migrationBuilder.Sql("""
                insert into channel_terms (sales_channel_id, at, tax_rate, tax_basis, cost_per_unit, our_share, fees)
                select c.id, c.created_at, c.tax_rate, c.tax_basis, c.cost_per_unit, c.our_share,
                    coalesce((select jsonb_agg(jsonb_build_object('name', f.name, 'rate', f.rate, 'fixed', f.fixed, 'basis', f.basis) order by f.position)
                        from sales_channel_fees f where f.sales_channel_id = c.id), '[]'::jsonb)
                from sales_channels c;
                create trigger channel_terms_append_only before update or delete on channel_terms for each row execute function refuse_change();
                create trigger channel_terms_no_truncate before truncate on channel_terms for each statement execute function refuse_change();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "channel_terms");
        }
    }
}
