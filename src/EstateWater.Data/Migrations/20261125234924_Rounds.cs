using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace EstateWater.Data.Migrations
{
    /// <inheritdoc />
    public partial class Rounds : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "planned_rounds",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    made_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    changed_by = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    document = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_planned_rounds", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "taken_entries",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    entry_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    kind = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    block_code = table.Column<string>(type: "TEXT", nullable: false),
                    content = table.Column<string>(type: "TEXT", nullable: false),
                    replaces = table.Column<Guid>(type: "TEXT", nullable: true),
                    taken_by = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    entered_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    received_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    row_ids = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_taken_entries", x => x.id);
                    table.ForeignKey(
                        name: "FK_taken_entries_blocks_block_code",
                        column: x => x.block_code,
                        principalTable: "blocks",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_planned_rounds_date",
                table: "planned_rounds",
                column: "date",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_taken_entries_block_code",
                table: "taken_entries",
                column: "block_code");

            migrationBuilder.CreateIndex(
                name: "IX_taken_entries_entered_at_utc_ticks",
                table: "taken_entries",
                column: "entered_at_utc_ticks");

            migrationBuilder.CreateIndex(
                name: "IX_taken_entries_entry_id",
                table: "taken_entries",
                column: "entry_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_taken_entries_replaces",
                table: "taken_entries",
                column: "replaces",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "planned_rounds");

            migrationBuilder.DropTable(
                name: "taken_entries");
        }
    }
}
