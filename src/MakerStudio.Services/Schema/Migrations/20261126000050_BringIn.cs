using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace MakerStudio.Services.Schema.Migrations
{
    /// <inheritdoc />
    internal sealed partial class BringIn : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "brought_files",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    content = table.Column<byte[]>(type: "bytea", nullable: false),
                    sha256 = table.Column<byte[]>(type: "bytea", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    brought_in_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    brought_in_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    brought_in = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_brought_files", x => x.id);
                });

            migrationBuilder.CreateIndex(
                name: "ix_brought_files_at",
                table: "brought_files",
                column: "at");

            migrationBuilder.CreateIndex(
                name: "ix_brought_files_sha256",
                table: "brought_files",
                column: "sha256");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "brought_files");
        }
    }
}
