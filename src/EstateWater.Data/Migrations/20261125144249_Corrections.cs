using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace EstateWater.Data.Migrations
{
    /// <inheritdoc />
    public partial class Corrections : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_set_confirmations_set_id",
                table: "set_confirmations");

            migrationBuilder.AddColumn<double>(
                name: "meter_after_m3",
                table: "set_confirmations",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "meter_before_m3",
                table: "set_confirmations",
                type: "REAL",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "not_run",
                table: "set_confirmations",
                type: "TEXT",
                maxLength: 20,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "replaces",
                table: "set_confirmations",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "started_at_utc_ticks",
                table: "set_confirmations",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0L);

            migrationBuilder.AddColumn<long>(
                name: "withdrawn_at_utc_ticks",
                table: "published_plans",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "withdrawn_by",
                table: "published_plans",
                type: "TEXT",
                maxLength: 100,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "changes",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    by = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    kind = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    what = table.Column<string>(type: "TEXT", maxLength: 500, nullable: false),
                    before = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true),
                    plan_id = table.Column<int>(type: "INTEGER", nullable: true),
                    entry_id = table.Column<Guid>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_changes", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "set_photos",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    confirmation_id = table.Column<int>(type: "INTEGER", nullable: false),
                    jpeg = table.Column<byte[]>(type: "BLOB", nullable: false),
                    received_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_set_photos", x => x.id);
                    table.ForeignKey(
                        name: "FK_set_photos_set_confirmations_confirmation_id",
                        column: x => x.confirmation_id,
                        principalTable: "set_confirmations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            // What was confirmed before was taken to have begun as planned.
            migrationBuilder.Sql("UPDATE set_confirmations SET started_at_utc_ticks = (SELECT s.start_utc_ticks FROM published_sets s WHERE s.id = set_confirmations.set_id)");
            migrationBuilder.Sql("""
                INSERT INTO changes (at_utc_ticks, by, kind, what, plan_id)
                SELECT p.published_at_utc_ticks, p.published_by, 'Publication', 'Published ' || (SELECT count(*) FROM published_sets s WHERE s.plan_id = p.id) || ' sets', p.id
                FROM published_plans p
                """);
            migrationBuilder.Sql("""
                INSERT INTO changes (at_utc_ticks, by, kind, what, entry_id)
                SELECT c.received_at_utc_ticks, c.confirmed_by, 'Confirmation', s.valve_code || ': ' || round(c.hours, 2) || ' h', c.entry_id
                FROM set_confirmations c JOIN published_sets s ON s.id = c.set_id
                """);

            migrationBuilder.CreateIndex(
                name: "IX_set_confirmations_replaces",
                table: "set_confirmations",
                column: "replaces",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_set_confirmations_set_id",
                table: "set_confirmations",
                column: "set_id",
                unique: true,
                filter: "replaces IS NULL");

            migrationBuilder.CreateIndex(
                name: "IX_changes_at_utc_ticks",
                table: "changes",
                column: "at_utc_ticks");

            migrationBuilder.CreateIndex(
                name: "IX_set_photos_confirmation_id",
                table: "set_photos",
                column: "confirmation_id",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "changes");

            migrationBuilder.DropTable(
                name: "set_photos");

            migrationBuilder.DropIndex(
                name: "IX_set_confirmations_replaces",
                table: "set_confirmations");

            migrationBuilder.DropIndex(
                name: "IX_set_confirmations_set_id",
                table: "set_confirmations");

            migrationBuilder.DropColumn(
                name: "meter_after_m3",
                table: "set_confirmations");

            migrationBuilder.DropColumn(
                name: "meter_before_m3",
                table: "set_confirmations");

            migrationBuilder.DropColumn(
                name: "not_run",
                table: "set_confirmations");

            migrationBuilder.DropColumn(
                name: "replaces",
                table: "set_confirmations");

            migrationBuilder.DropColumn(
                name: "started_at_utc_ticks",
                table: "set_confirmations");

            migrationBuilder.DropColumn(
                name: "withdrawn_at_utc_ticks",
                table: "published_plans");

            migrationBuilder.DropColumn(
                name: "withdrawn_by",
                table: "published_plans");

            migrationBuilder.CreateIndex(
                name: "IX_set_confirmations_set_id",
                table: "set_confirmations",
                column: "set_id",
                unique: true);
        }
    }
}
