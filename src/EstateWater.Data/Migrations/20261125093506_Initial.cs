using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace EstateWater.Data.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "estate",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false),
                    name = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    time_zone = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    country = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    display_units = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_estate", x => x.id);
                    table.CheckConstraint("one_estate", "id = 1");
                });

            migrationBuilder.CreateTable(
                name: "published_plans",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    as_of_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    published_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    published_by = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    plan_json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_published_plans", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "stations",
                columns: table => new
                {
                    code = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    latitude_degrees = table.Column<double>(type: "REAL", nullable: false),
                    longitude_degrees = table.Column<double>(type: "REAL", nullable: false),
                    elevation_m = table.Column<double>(type: "REAL", nullable: false),
                    wind_height_m = table.Column<double>(type: "REAL", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_stations", x => x.code);
                });

            migrationBuilder.CreateTable(
                name: "water_sources",
                columns: table => new
                {
                    code = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    max_flow_m3_per_h = table.Column<double>(type: "REAL", nullable: false),
                    daily_from = table.Column<TimeOnly>(type: "TEXT", nullable: false),
                    daily_to = table.Column<TimeOnly>(type: "TEXT", nullable: false),
                    season_allocation_m3 = table.Column<double>(type: "REAL", nullable: true),
                    water_ec_ds_per_m = table.Column<double>(type: "REAL", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_water_sources", x => x.code);
                });

            migrationBuilder.CreateTable(
                name: "forecast_days",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    issued_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    member = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    station_code = table.Column<string>(type: "TEXT", nullable: false),
                    date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    t_max_c = table.Column<double>(type: "REAL", nullable: false),
                    t_min_c = table.Column<double>(type: "REAL", nullable: false),
                    rh_max_pct = table.Column<double>(type: "REAL", nullable: true),
                    rh_min_pct = table.Column<double>(type: "REAL", nullable: true),
                    wind_m_per_s = table.Column<double>(type: "REAL", nullable: true),
                    solar_mj_per_m2 = table.Column<double>(type: "REAL", nullable: true),
                    rain_mm = table.Column<double>(type: "REAL", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_forecast_days", x => x.id);
                    table.ForeignKey(
                        name: "FK_forecast_days_stations_station_code",
                        column: x => x.station_code,
                        principalTable: "stations",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "weather_days",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    station_code = table.Column<string>(type: "TEXT", nullable: false),
                    date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    t_max_c = table.Column<double>(type: "REAL", nullable: false),
                    t_min_c = table.Column<double>(type: "REAL", nullable: false),
                    rh_max_pct = table.Column<double>(type: "REAL", nullable: true),
                    rh_min_pct = table.Column<double>(type: "REAL", nullable: true),
                    wind_m_per_s = table.Column<double>(type: "REAL", nullable: true),
                    solar_mj_per_m2 = table.Column<double>(type: "REAL", nullable: true),
                    rain_mm = table.Column<double>(type: "REAL", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_weather_days", x => x.id);
                    table.ForeignKey(
                        name: "FK_weather_days_stations_station_code",
                        column: x => x.station_code,
                        principalTable: "stations",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "valves",
                columns: table => new
                {
                    code = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    source_code = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_valves", x => x.code);
                    table.ForeignKey(
                        name: "FK_valves_water_sources_source_code",
                        column: x => x.source_code,
                        principalTable: "water_sources",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "applied_waters",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    valve_code = table.Column<string>(type: "TEXT", nullable: false),
                    started_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    hours = table.Column<double>(type: "REAL", nullable: false),
                    meter_m3 = table.Column<double>(type: "REAL", nullable: true),
                    confirmed_by = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_applied_waters", x => x.id);
                    table.ForeignKey(
                        name: "FK_applied_waters_valves_valve_code",
                        column: x => x.valve_code,
                        principalTable: "valves",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "blocks",
                columns: table => new
                {
                    code = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    name = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    variety = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    rootstock = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    fruit = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    planted_year = table.Column<int>(type: "INTEGER", nullable: true),
                    station_code = table.Column<string>(type: "TEXT", nullable: false),
                    valve_code = table.Column<string>(type: "TEXT", nullable: false),
                    row_spacing_m = table.Column<double>(type: "REAL", nullable: false),
                    vine_spacing_m = table.Column<double>(type: "REAL", nullable: false),
                    emitters_per_vine = table.Column<double>(type: "REAL", nullable: false),
                    emitter_flow_l_per_h = table.Column<double>(type: "REAL", nullable: false),
                    emission_uniformity = table.Column<double>(type: "REAL", nullable: true),
                    root_depth_m = table.Column<double>(type: "REAL", nullable: false),
                    available_water_mm_per_m = table.Column<double>(type: "REAL", nullable: false),
                    wetted_fraction = table.Column<double>(type: "REAL", nullable: true),
                    shaded_fraction = table.Column<double>(type: "REAL", nullable: true),
                    target_shoot_length_cm = table.Column<double>(type: "REAL", nullable: true),
                    priority = table.Column<int>(type: "INTEGER", nullable: false),
                    outline_wgs84_wkb = table.Column<byte[]>(type: "BLOB", nullable: false),
                    area_m2 = table.Column<double>(type: "REAL", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_blocks", x => x.code);
                    table.ForeignKey(
                        name: "FK_blocks_stations_station_code",
                        column: x => x.station_code,
                        principalTable: "stations",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_blocks_valves_valve_code",
                        column: x => x.valve_code,
                        principalTable: "valves",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "published_sets",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    plan_id = table.Column<int>(type: "INTEGER", nullable: false),
                    valve_code = table.Column<string>(type: "TEXT", nullable: false),
                    source_code = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    start_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    end_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    hours = table.Column<double>(type: "REAL", nullable: false),
                    flow_m3_per_h = table.Column<double>(type: "REAL", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_published_sets", x => x.id);
                    table.ForeignKey(
                        name: "FK_published_sets_published_plans_plan_id",
                        column: x => x.plan_id,
                        principalTable: "published_plans",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_published_sets_valves_valve_code",
                        column: x => x.valve_code,
                        principalTable: "valves",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "canopy_visits",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    block_code = table.Column<string>(type: "TEXT", nullable: false),
                    date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    shoot_length_cm = table.Column<double>(type: "REAL", nullable: true),
                    shaded_fraction = table.Column<double>(type: "REAL", nullable: true),
                    growing_tips_pct = table.Column<double>(type: "REAL", nullable: true),
                    visual_stress = table.Column<int>(type: "INTEGER", nullable: true),
                    note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_canopy_visits", x => x.id);
                    table.ForeignKey(
                        name: "FK_canopy_visits_blocks_block_code",
                        column: x => x.block_code,
                        principalTable: "blocks",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "chamber_readings",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    block_code = table.Column<string>(type: "TEXT", nullable: false),
                    taken_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    measure = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    group = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    vine = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    tension_bar = table.Column<double>(type: "REAL", nullable: false),
                    exposure = table.Column<string>(type: "TEXT", maxLength: 20, nullable: true),
                    bagged_min = table.Column<double>(type: "REAL", nullable: true),
                    delay_s = table.Column<double>(type: "REAL", nullable: true),
                    observer = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_chamber_readings", x => x.id);
                    table.ForeignKey(
                        name: "FK_chamber_readings_blocks_block_code",
                        column: x => x.block_code,
                        principalTable: "blocks",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "probe_calibrations",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    block_code = table.Column<string>(type: "TEXT", nullable: true),
                    intercept = table.Column<double>(type: "REAL", nullable: false),
                    slope = table.Column<double>(type: "REAL", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_probe_calibrations", x => x.id);
                    table.ForeignKey(
                        name: "FK_probe_calibrations_blocks_block_code",
                        column: x => x.block_code,
                        principalTable: "blocks",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "soil_moistures",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    block_code = table.Column<string>(type: "TEXT", nullable: false),
                    date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    tube = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    depth_cm = table.Column<double>(type: "REAL", nullable: false),
                    vwc_m3_per_m3 = table.Column<double>(type: "REAL", nullable: true),
                    count = table.Column<double>(type: "REAL", nullable: true),
                    standard_count = table.Column<double>(type: "REAL", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_soil_moistures", x => x.id);
                    table.ForeignKey(
                        name: "FK_soil_moistures_blocks_block_code",
                        column: x => x.block_code,
                        principalTable: "blocks",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "stages",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    block_code = table.Column<string>(type: "TEXT", nullable: false),
                    date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    el_stage = table.Column<double>(type: "REAL", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_stages", x => x.id);
                    table.ForeignKey(
                        name: "FK_stages_blocks_block_code",
                        column: x => x.block_code,
                        principalTable: "blocks",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "targets",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    block_code = table.Column<string>(type: "TEXT", nullable: true),
                    fruit = table.Column<string>(type: "TEXT", maxLength: 20, nullable: true),
                    from_el_stage = table.Column<double>(type: "REAL", nullable: false),
                    to_el_stage = table.Column<double>(type: "REAL", nullable: false),
                    measure = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    floor_bar = table.Column<double>(type: "REAL", nullable: false),
                    ceiling_bar = table.Column<double>(type: "REAL", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_targets", x => x.id);
                    table.ForeignKey(
                        name: "FK_targets_blocks_block_code",
                        column: x => x.block_code,
                        principalTable: "blocks",
                        principalColumn: "code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "set_confirmations",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    entry_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    set_id = table.Column<int>(type: "INTEGER", nullable: false),
                    hours = table.Column<double>(type: "REAL", nullable: false),
                    meter_m3 = table.Column<double>(type: "REAL", nullable: true),
                    confirmed_by = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    entered_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    received_at_utc_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    applied_water_id = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_set_confirmations", x => x.id);
                    table.ForeignKey(
                        name: "FK_set_confirmations_applied_waters_applied_water_id",
                        column: x => x.applied_water_id,
                        principalTable: "applied_waters",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_set_confirmations_published_sets_set_id",
                        column: x => x.set_id,
                        principalTable: "published_sets",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_applied_waters_valve_code_started_at_utc_ticks",
                table: "applied_waters",
                columns: new[] { "valve_code", "started_at_utc_ticks" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_blocks_station_code",
                table: "blocks",
                column: "station_code");

            migrationBuilder.CreateIndex(
                name: "IX_blocks_valve_code",
                table: "blocks",
                column: "valve_code");

            migrationBuilder.CreateIndex(
                name: "IX_canopy_visits_block_code_date",
                table: "canopy_visits",
                columns: new[] { "block_code", "date" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_chamber_readings_block_code_taken_at_utc_ticks",
                table: "chamber_readings",
                columns: new[] { "block_code", "taken_at_utc_ticks" });

            migrationBuilder.CreateIndex(
                name: "IX_forecast_days_station_code_issued_at_utc_ticks_member_date",
                table: "forecast_days",
                columns: new[] { "station_code", "issued_at_utc_ticks", "member", "date" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_probe_calibrations_block_code",
                table: "probe_calibrations",
                column: "block_code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_published_plans_published_at_utc_ticks",
                table: "published_plans",
                column: "published_at_utc_ticks");

            migrationBuilder.CreateIndex(
                name: "IX_published_sets_plan_id",
                table: "published_sets",
                column: "plan_id");

            migrationBuilder.CreateIndex(
                name: "IX_published_sets_start_utc_ticks",
                table: "published_sets",
                column: "start_utc_ticks");

            migrationBuilder.CreateIndex(
                name: "IX_published_sets_valve_code",
                table: "published_sets",
                column: "valve_code");

            migrationBuilder.CreateIndex(
                name: "IX_set_confirmations_applied_water_id",
                table: "set_confirmations",
                column: "applied_water_id");

            migrationBuilder.CreateIndex(
                name: "IX_set_confirmations_entry_id",
                table: "set_confirmations",
                column: "entry_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_set_confirmations_set_id",
                table: "set_confirmations",
                column: "set_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_soil_moistures_block_code_date_tube_depth_cm",
                table: "soil_moistures",
                columns: new[] { "block_code", "date", "tube", "depth_cm" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_stages_block_code_date",
                table: "stages",
                columns: new[] { "block_code", "date" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_targets_block_code",
                table: "targets",
                column: "block_code");

            migrationBuilder.CreateIndex(
                name: "IX_valves_source_code",
                table: "valves",
                column: "source_code");

            migrationBuilder.CreateIndex(
                name: "IX_weather_days_station_code_date",
                table: "weather_days",
                columns: new[] { "station_code", "date" },
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "canopy_visits");

            migrationBuilder.DropTable(
                name: "chamber_readings");

            migrationBuilder.DropTable(
                name: "estate");

            migrationBuilder.DropTable(
                name: "forecast_days");

            migrationBuilder.DropTable(
                name: "probe_calibrations");

            migrationBuilder.DropTable(
                name: "set_confirmations");

            migrationBuilder.DropTable(
                name: "soil_moistures");

            migrationBuilder.DropTable(
                name: "stages");

            migrationBuilder.DropTable(
                name: "targets");

            migrationBuilder.DropTable(
                name: "weather_days");

            migrationBuilder.DropTable(
                name: "applied_waters");

            migrationBuilder.DropTable(
                name: "published_sets");

            migrationBuilder.DropTable(
                name: "blocks");

            migrationBuilder.DropTable(
                name: "published_plans");

            migrationBuilder.DropTable(
                name: "stations");

            migrationBuilder.DropTable(
                name: "valves");

            migrationBuilder.DropTable(
                name: "water_sources");
        }
    }
}
