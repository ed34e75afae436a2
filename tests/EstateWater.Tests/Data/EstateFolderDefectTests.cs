using System.Text;

namespace EstateWater.Tests.Data;

public sealed class EstateFolderDefectTests
{
    // File, what it says, what it is made to say, where the one defect is, and what its message must name.
    public static TheoryData<string, string, string, string, string> Spoiled => new()
    {
        // Headers.
        { "chamber-readings.csv", "tension_bar", "tension_mpa", "1: tension_mpa", "use tension_bar" },
        { "weather-daily.csv", "t_max_c", "t_max_f", "1: t_max_f", "use t_max_c" },
        { "soil-moisture.csv", "depth_cm", "depth_m", "1: depth_m", "use depth_cm" },
        { "canopy.csv", "note", "remark", "1: remark", "the columns are block, date" },
        { "canopy.csv", "visual_stress", "date", "1: date", "twice" },
        { "stages.csv", ",el_stage", "", "1: el_stage", "required" },
        { "stages.csv", "el_stage\nB1,2024-11-11,23\nB1,2024-12-20,31", "el_stage,\nB1,2024-11-11,23,\nB1,2024-12-20,31,", "1: (header)", "column 4 has no name" },
        { "valves.csv", "valve,source\nV1,dam\nV2,dam", "valve;source\nV1;dam\nV2;dam", "1: (header)", "use commas" },
        { "canopy.csv", "block,date,shoot_length_cm,shaded_fraction,growing_tips_pct,visual_stress,note", "", "1: (header)", "is empty" },

        // Rows.
        { "stages.csv", "B1,2024-11-11,23", "B1,2024-11-11", "2: (row)", "has 2 cells where the header has 3" },
        { "stages.csv", "B1,2024-11-11,23", "B1,2024-11-11,23,5", "2: (row)", "numbers use a point" },
        { "stages.csv", "B1,2024-11-11,23", "B1,2024-11-11,\"23", "2: (row)", "quotation mark" },

        // References.
        { "valves.csv", "V2,dam", "V2,river", "3: source", "unknown water source 'river'" },
        { "stages.csv", "B1,2024-12-20", "b1,2024-12-20", "3: block", "did you mean 'B1'" },
        { "targets.csv", "B2,,4", "B3,,4", "3: block", "unknown block 'B3'; use a block of blocks.geojson" },
        { "weather-daily.csv", "hill,2024-11-10", "dale,2024-11-10", "2: station", "unknown station 'dale'" },
        { "applied-water.csv", "V1,2024-11-10", "V9,2024-11-10", "2: valve", "unknown valve 'V9'" },
        { "blocks.geojson", "\"valve\": \"V1\"", "\"valve\": \"V3\"", "2: valve", "unknown valve 'V3'" },
        { "blocks.geojson", "\"station\": \"hill\", \"valve\": \"V2\"", "\"station\": \"dale\", \"valve\": \"V2\"", "6: station", "unknown station 'dale'" },

        // Keys.
        { "stations.csv", "hill,-33.9,19,140,2", "hill,-33.9,19,140,2\nhill,-33,19,1,2", "3: station", "there already" },
        { "valves.csv", "V2,dam", "V2,dam\nV2,dam", "4: valve", "there already" },
        { "blocks.geojson", "\"B2\"", "\"B1\"", "6: block", "there already" },
        { "weather-daily.csv", "2024-11-11", "2024-11-10", "3: date", "same as line 2" },
        { "forecast-daily.csv", ",m1,", ",,", "3: date", "same as line 2" },
        { "stages.csv", "2024-12-20", "2024-11-11", "3: date", "same as line 2" },
        { "chamber-readings.csv", "13:06:00+02:00,leaf,G1,2", "13:05:00+02:00,leaf,G1,1", "3: taken_at", "same as line 2" },
        { "chamber-readings.csv", "13:06:00+02:00,leaf,G1,2", "11:05:00Z,leaf,G1,1", "3: taken_at", "same as line 2" },
        { "soil-moisture.csv", "B2,2024-11-11,T1,20,0.21,,", "B1,2024-11-11,T1,20.0,0.21,,", "3: depth_cm", "same as line 2" },
        { "probe-calibration.csv", "B1,0,0.6", ",0,0.6", "3: block", "same as line 2" },
        { "canopy.csv", "B1,2024-11-11,96,0.2,80,0,", "B1,2024-11-11,96,0.2,80,0,\nB1,2024-11-11,,,,,", "3: date", "same as line 2" },
        { "applied-water.csv", "2024-11-12T20:00:00+02:00", "2024-11-10T18:00:00+00:00", "3: started_at", "same as line 2" },
        { "targets.csv", "B2,,27,35", "B2,,26,35", "4: from_el_stage", "overlaps the stages of line 3" },
        { "targets.csv", "B2,,27,35", "B2,,4,27", "4: from_el_stage", "overlaps the stages of line 3" },

        // Numbers.
        { "weather-daily.csv", "28.4", "\"28,4\"", "2: t_max_c", "use a point" },
        { "weather-daily.csv", "28.4", "NaN", "2: t_max_c", "is not a number" },
        { "weather-daily.csv", "28.4", "Infinity", "2: t_max_c", "is not a number" },
        { "weather-daily.csv", "28.4", "1e999", "2: t_max_c", "is not a number" },
        { "weather-daily.csv", "28.4", "warm", "2: t_max_c", "is not a number" },
        { "weather-daily.csv", "28.4", "", "2: t_max_c", "is required" },

        // Ranges.
        { "weather-daily.csv", "28.4", "83.1", "2: t_max_c", "-60 to 60" },
        { "weather-daily.csv", "14.2", "28.5", "2: t_min_c", "above t_max_c" },
        { "weather-daily.csv", "91", "100.1", "2: rh_max_pct", "0 to 100" },
        { "weather-daily.csv", "37", "92", "2: rh_min_pct", "above rh_max_pct" },
        { "weather-daily.csv", "2.1", "-0.1", "2: wind_m_per_s", "0 to 100" },
        { "weather-daily.csv", "24.6", "285", "2: solar_mj_per_m2", "MJ/m²" },
        { "weather-daily.csv", ",0\n", ",-0.2\n", "2: rain_mm", "0 to 2000" },
        { "forecast-daily.csv", "33,17", "17,33", "3: t_min_c", "above t_max_c" },
        { "stations.csv", "-33.9", "-90.1", "2: latitude", "-90 to 90" },
        { "stations.csv", ",19,", ",190,", "2: longitude", "-180 to 180" },
        { "stations.csv", "140,2", "140,0", "2: wind_height_m", "more than 0" },
        { "water-sources.csv", "dam,60", "dam,0", "2: max_flow_m3_per_h", "more than 0" },
        { "water-sources.csv", "90000", "-1", "2: season_allocation_m3", "0 or more" },
        { "water-sources.csv", "20:00", "8 pm", "2: daily_from", "write it like 20:00" },
        { "water-sources.csv", "06:30", "24:00", "2: daily_to", "midnight as 00:00" },
        { "stages.csv", "11,23", "11,48", "2: el_stage", "1 to 47" },
        { "stages.csv", "11,23", "11,0.5", "2: el_stage", "1 to 47" },
        { "targets.csv", "5,12", "13,12", "2: floor_bar", "above ceiling_bar" },
        { "targets.csv", "4,35", "36,35", "2: from_el_stage", "after to_el_stage" },
        { "targets.csv", "red", "rose", "2: fruit", "red, white" },
        { "targets.csv", "leaf", "Leaf", "2: measure", "leaf, stem, predawn" },
        { "chamber-readings.csv", "9.25", "-9.25", "2: tension_bar", "positive" },
        { "chamber-readings.csv", "9.25", "0", "2: tension_bar", "more than 0" },
        { "chamber-readings.csv", "9.25", "134", "2: tension_bar", "14.5 psi" },
        { "chamber-readings.csv", "sun", "dark", "2: exposure", "sun, shade" },
        { "chamber-readings.csv", ",26,", ",-26,", "2: delay_s", "0 to" },
        { "soil-moisture.csv", "0.21", "21", "3: vwc_m3_per_m3", "0.25 for 25 %" },
        { "soil-moisture.csv", "0.21", "", "3: vwc_m3_per_m3", "give vwc_m3_per_m3, or count" },
        { "soil-moisture.csv", "0.21,,", "0.21,4000,12000", "3: vwc_m3_per_m3", "either" },
        { "soil-moisture.csv", "12000", "", "2: standard_count", "standard count of its session" },
        { "soil-moisture.csv", "12000", "0", "2: standard_count", "more than 0" },
        { "soil-moisture.csv", "4354", "", "2: count", "standard count alone" },
        { "canopy.csv", "0.2,", "20,", "2: shaded_fraction", "0.35 for 35 %" },
        { "canopy.csv", "80,0", "80,4", "2: visual_stress", "0 to 3" },
        { "canopy.csv", "80,0", "80,1.5", "2: visual_stress", "whole number" },
        { "canopy.csv", "80,0", "101,0", "2: growing_tips_pct", "0 to 100" },
        { "applied-water.csv", ",5,", ",-5,", "2: hours", "0 to 744" },
        { "probe-calibration.csv", "0.62", "-0.62", "2: slope", "more than 0" },
        { "blocks.geojson", "\"priority\": 5", "\"priority\": 6", "2: priority", "1 to 5" },
        { "blocks.geojson", "\"priority\": 5", "\"priority\": 4.5", "2: priority", "whole number" },
        { "blocks.geojson", "0.9", "90", "2: emission_uniformity", "0.88 for 88 %" },
        { "blocks.geojson", "\"wetted_fraction\": 0.4", "\"wetted_fraction\": 40", "2: wetted_fraction", "0.35 for 35 %" },
        { "blocks.geojson", "\"root_depth_m\": 1.2", "\"root_depth_m\": 0", "2: root_depth_m", "more than 0" },

        // Days and instants.
        { "stages.csv", "2024-12-20", "20/12/2024", "3: date", "write it like 2026-07-14" },
        { "stages.csv", "2024-12-20", "2023-02-29", "3: date", "is not a date" },
        { "stages.csv", "2024-12-20", "0204-12-20", "3: date", "1900 to 2199" },
        { "chamber-readings.csv", "13:05:00+02:00", "13:05:00", "2: taken_at", "no offset" },
        { "chamber-readings.csv", "2024-11-11T13:05:00+02:00", "2024-11-11", "2: taken_at", "is not an instant" },
        { "chamber-readings.csv", "T13:05:00+02:00", "T25:05:00+02:00", "2: taken_at", "is not an instant" },
        { "forecast-daily.csv", "05:00:00+02:00", "05:00:00", "2: issued_at", "no offset" },
        { "applied-water.csv", "2024-11-10T20:00:00+02:00", "1824-11-10T20:00:00+02:00", "2: started_at", "1900 to 2199" },

        // The estate.
        { "estate.json", "Africa/Johannesburg", "Africa/Stellenbosch", "3: time_zone", "IANA" },
        { "estate.json", "Africa/Johannesburg", "South Africa Standard Time", "3: time_zone", "IANA" },
        { "estate.json", "\"us\"", "\"imperial\"", "5: display_units", "metric, us" },
        { "estate.json", "country", "land", "4: land", "unknown column" },
        { "estate.json", "\"name\": \"Small estate\",", "", "1: name", "is required" },
        { "estate.json", "\"Small estate\"", "\" \"", "2: name", "is required" },
        { "estate.json", "\"Small estate\"", "7", "2: name", "not a text" },
        { "estate.json", "estate\",", "estate\"", "3: (file)", "is not JSON" },

        // Outlines.
        { "blocks.geojson", "[19.003, -33.899], [19.001, -33.9]", "[19.003, -33.899], [19.001, -33.901]", "2: geometry", "not closed" },
        { "blocks.geojson", "[19.001, -33.9], [19.003, -33.9], [19.003, -33.899], [19.001, -33.9]", "", "2: geometry", "fewer than four" },
        { "blocks.geojson", "[[[19.001, -33.9], [19.003, -33.9], [19.003, -33.899], [19.001, -33.9]]]", "[]", "2: geometry", "no ring" },
        { "blocks.geojson", "[19.003, -33.9], [19.003, -33.899], ", "[19.003, -33.899], [19.003, -33.9], [19.001, -33.899], ", "2: geometry", "self-intersection near longitude 19.002" },
        { "blocks.geojson", "[19.003, -33.899]", "[19.002, -33.9]", "2: geometry", "not a simple outline" },
        { "blocks.geojson", "[19.001, -33.9]]]", "[19.001, -33.9]], [[19.1, -33.9], [19.2, -33.9], [19.2, -33.8], [19.1, -33.9]]]", "2: geometry", "hole lies outside shell" },
        { "blocks.geojson", "\"geometry\":", "\"geometry\": null, \"sketch\":", "2: geometry", "is not there" },
        { "blocks.geojson", "[19.003, -33.9]", "[-133.9, 190]", "2: geometry", "in that order" },
        { "blocks.geojson", "[19.003, -33.9]", "[262345.1, 6248123.4]", "2: geometry", "in degrees on WGS 84" },
        { "blocks.geojson", "[19.003, -33.9]", "[\"19.003\", -33.9]", "2: geometry", "not [longitude, latitude]" },
        { "blocks.geojson", "\"Polygon\"", "\"Point\"", "2: geometry", "is a Point" },
        { "blocks.geojson", "[[[[19.01, -33.9], [19.01, -33.898], [19.013, -33.898], [19.01, -33.9]]]]", "[]", "6: geometry", "no polygon" },
        { "blocks.geojson", "\"B1\"", "7", "2: block", "in quotation marks" },
        { "blocks.geojson", "2.4", "\"2.4\"", "2: row_spacing_m", "without quotation marks" },
        { "blocks.geojson", "row_spacing_m\": 2.4", "row_spacing_ft\": 8", "2: row_spacing_ft", "use row_spacing_m" },
        { "blocks.geojson", "\"vine_spacing_m\": 1,", "\"vine_spacing_m\": 1", "8: (file)", "is not JSON" },
        { "blocks.geojson", "\"Feature\"", "\"Future\"", "2: type", "is not a Feature" },
        { "blocks.geojson", "\"FeatureCollection\"", "\"Collection\"", "1: (file)", "FeatureCollection" },
        { "blocks.geojson", "\"features\"", "\"crs\": {\"type\": \"name\", \"properties\": {\"name\": \"EPSG:32734\"}}, \"features\"", "1: crs", "WGS 84" },
        { "blocks.geojson", "\"name\": null", "\"name\": \"\\ud800\"", "6: properties", "not Unicode" },
    };

    [Theory]
    [MemberData(nameof(Spoiled))]
    public void A_defect_is_found_where_it_is(string file, string from, string to, string place, string says)
    {
        using var small = new SmallEstate();
        small.Change(file, from, to);

        var (contents, defects) = small.Read();

        Assert.Null(contents);
        Assert.Contains(defects, d => d.ToString().StartsWith($"{file}:{place}: ", StringComparison.Ordinal) && d.Message.Contains(says, StringComparison.Ordinal));
        Assert.All(defects, d => Assert.Equal(file, d.File));
    }

    [Fact]
    public void Semicolons_are_one_defect_however_many_rows_there_are()
    {
        using var small = new SmallEstate();
        small.Put("stages.csv", "block;date;el_stage\n" + string.Concat(Enumerable.Repeat("B1;2024-11-11;23,5\n", 1000)));

        Assert.Single(small.Read().Defects);
    }

    [Fact]
    public void Text_that_is_not_UTF8_is_found_by_its_line()
    {
        using var small = new SmallEstate();
        small.Put("canopy.csv", [.. Encoding.ASCII.GetBytes("block,date,note\nB1,2024-11-11,\nB1,2024-11-12,gr"), 0xFC, .. Encoding.ASCII.GetBytes("n\n")]);

        var defect = Assert.Single(small.Read().Defects);

        Assert.Equal(("canopy.csv", 3), (defect.File, defect.Line));
        Assert.Contains("UTF-8", defect.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_whose_name_is_nearly_right_is_not_passed_over()
    {
        using var small = new SmallEstate();
        small.Put("Weather_Daily.csv", small.Text("weather-daily.csv"));
        small.Remove("weather-daily.csv");

        Assert.Equal("Weather_Daily.csv:1: (file): unknown file; rename it weather-daily.csv", Assert.Single(small.Read().Defects).ToString());
    }

    [Fact]
    public void A_spoiled_row_does_not_make_other_files_defective()
    {
        using var small = new SmallEstate();
        small.Change("valves.csv", "V1,dam", "V1,dam,dam");

        Assert.Equal("valves.csv", Assert.Single(small.Read().Defects).File);
    }

    [Fact]
    public void Two_leaves_of_one_vine_at_one_moment_may_differ_in_exposure()
    {
        using var small = new SmallEstate();
        small.Change("chamber-readings.csv", "13:06:00+02:00,leaf,G1,2,9.5,sun", "13:05:00+02:00,leaf,G1,1,9.5,shade");

        Assert.Empty(small.Read().Defects);
    }
}
