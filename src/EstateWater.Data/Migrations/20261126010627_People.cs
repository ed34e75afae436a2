using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace EstateWater.Data.Migrations
{
    /// <inheritdoc />
    public partial class People : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", nullable: false),
                    role = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    joined_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    locked_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: true),
                    last_sign_in_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: true),
                    user_name = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    normalized_user_name = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    password_hash = table.Column<string>(type: "TEXT", nullable: true),
                    security_stamp = table.Column<string>(type: "TEXT", nullable: false),
                    concurrency_stamp = table.Column<string>(type: "TEXT", nullable: true),
                    lockout_end_utc_ticks = table.Column<long>(type: "INTEGER", nullable: true),
                    lockout_enabled = table.Column<bool>(type: "INTEGER", nullable: false),
                    access_failed_count = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_people", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "invitations",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    name = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    role = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    person_id = table.Column<string>(type: "TEXT", nullable: true),
                    secret_hash = table.Column<byte[]>(type: "BLOB", nullable: false),
                    invited_by = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    invited_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    expires_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    used_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: true),
                    withdrawn_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_invitations", x => x.id);
                    table.ForeignKey(
                        name: "FK_invitations_people_person_id",
                        column: x => x.person_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "person_passkeys",
                columns: table => new
                {
                    credential_id = table.Column<byte[]>(type: "BLOB", maxLength: 1023, nullable: false),
                    user_id = table.Column<string>(type: "TEXT", nullable: false),
                    data = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_person_passkeys", x => x.credential_id);
                    table.ForeignKey(
                        name: "FK_person_passkeys_people_user_id",
                        column: x => x.user_id,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_invitations_person_id",
                table: "invitations",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "IX_invitations_secret_hash",
                table: "invitations",
                column: "secret_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_people_normalized_user_name",
                table: "people",
                column: "normalized_user_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_person_passkeys_user_id",
                table: "person_passkeys",
                column: "user_id");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "invitations");

            migrationBuilder.DropTable(
                name: "person_passkeys");

            migrationBuilder.DropTable(
                name: "people");
        }
    }
}
