using System.Text;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Folder;
using EstateWater.Data.Model;

namespace EstateWater.Tests.Data;

public sealed class EstateFolderTests
{
    [Fact]
    public void A_folder_is_read_whole()
    {
        using var small = new SmallEstate();

        var (estate, defects) = small.Read();

        Assert.Empty(defects);
        Assert.Equal(new Estate { Name = "Small estate", TimeZone = "Africa/Johannesburg", Country = "South Africa", DisplayUnits = DisplayUnits.Us }, estate!.Estate);
        Assert.Equal(new TimeOnly(6, 30), Assert.Single(estate.Sources).DailyTo);
        Assert.Equal(
            [1, 2, 2, 2, 3, 2, 2, 5, 2, 2, 1, 2],
            [estate.Stations.Count, estate.Valves.Count, estate.Blocks.Count, estate.Stages.Count, estate.Targets.Count, estate.Weather.Count, estate.Forecasts.Count,
                estate.ChamberReadings.Count, estate.SoilMoistures.Count, estate.ProbeCalibrations.Count, estate.CanopyVisits.Count, estate.AppliedWaters.Count]);
    }

    [Fact]
    public void An_empty_cell_is_not_measured()
    {
        using var small = new SmallEstate();

        var estate = small.Read().Contents!;

        Assert.Null(estate.Weather[1].RainMm);
        Assert.Equal(0, estate.Weather[0].RainMm);
        Assert.Null(estate.Targets[0].BlockCode);
        Assert.Null(estate.Forecasts[0].Member);
        Assert.Null(estate.ChamberReadings[2].Exposure);
        Assert.Null(estate.Blocks[1].Name);
        Assert.Equal(3, estate.Blocks[1].Priority);
    }

    [Fact]
    public void A_reading_keeps_its_every_cell()
    {
        using var small = new SmallEstate();
        small.Put("chamber-readings.csv", """"
            note,observer,delay_s,bagged_min,exposure,tension_bar,vine,group,measure,taken_at,block
            "damp, ""cold""",Anna,26,45,shade,9.25,7,G1,stem,2024-11-11T11:05:30Z,B1

            """");

        var reading = Assert.Single(small.Read().Contents!.ChamberReadings);

        Assert.Equal(
            new ChamberReading
            {
                BlockCode = "B1",
                TakenAt = new DateTimeOffset(2024, 11, 11, 13, 5, 30, TimeSpan.FromHours(2)),
                Measure = WaterPotentialMeasure.Stem,
                Group = "G1",
                Vine = "7",
                TensionBar = 9.25,
                Exposure = LeafExposure.Shade,
                BaggedMin = 45,
                DelayS = 26,
                Observer = "Anna",
                Note = "damp, \"cold\"",
            },
            reading);
        Assert.Equal(TimeSpan.FromHours(2), reading.TakenAt.Offset);
    }

    [Theory]
    [InlineData("stations.csv")]
    [InlineData("blocks.geojson")]
    [InlineData("estate.json")]
    public void A_byte_order_mark_and_Windows_line_ends_change_nothing(string file)
    {
        using var small = new SmallEstate();
        small.Put(file, [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(small.Text(file).Replace("\n", "\r\n", StringComparison.Ordinal))]);

        Assert.Empty(small.Read().Defects);
    }

    [Fact]
    public void Every_file_but_two_may_be_missing()
    {
        using var small = new SmallEstate();
        foreach (var file in SmallEstate.FileNames.Where(f => f is not "estate.json" and not "blocks.geojson"))
        {
            small.Remove(file);
        }

        small.Put("blocks.geojson", """{"type": "FeatureCollection", "features": []}""");

        Assert.Empty(small.Read().Defects);
    }

    [Fact]
    public void Missing_files_that_must_be_there_are_named()
    {
        using var small = new SmallEstate();
        small.Remove("estate.json");
        small.Remove("blocks.geojson");

        Assert.Equal(["estate.json", "blocks.geojson"], small.Read().Defects.Select(d => d.File));
    }

    [Fact]
    public void A_folder_that_is_not_there_is_a_defect()
    {
        Assert.Contains("is not a folder", Assert.Single(EstateFolder.Read("/no/such/folder").Defects).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Outlines_are_turned_by_the_right_hand_rule_and_measured()
    {
        using var small = new SmallEstate();

        var blocks = small.Read().Contents!.Blocks;

        // B2 is written clockwise. A third of a minute of arc is some 0.6 km: the triangles are half of 185 m × 111 m and of 277 m × 222 m.
        Assert.All(blocks, b => Assert.Equal(4326, b.Outline.SRID));
        Assert.True(((NetTopologySuite.Geometries.Polygon)blocks[1].Outline.GetGeometryN(0)).Shell.IsCCW);
        Assert.Equal(0.5 * 185 * 111, blocks[0].AreaM2, 0.01 * 0.5 * 185 * 111);
        Assert.Equal(0.5 * 277 * 222, blocks[1].AreaM2, 0.01 * 0.5 * 277 * 222);
    }

    [Fact]
    public void Lines_count_on_through_line_breaks_in_quotation_marks()
    {
        using var small = new SmallEstate();
        small.Put("canopy.csv", "block,date,note\r\nB1,2024-11-11,\"two\r\nlines\"\r\n\r\nB9,2024-11-12,\"three\n\nlines\"\r\nB1,2024-11-35,\r\n");

        Assert.Equal(
            [("canopy.csv", 5, "block"), ("canopy.csv", 8, "date")],
            small.Read().Defects.Select(d => (d.File, d.Line, d.Column)));
    }

    [Fact]
    public void All_defects_of_all_files_come_in_one_go()
    {
        using var small = new SmallEstate();
        small.Change("stations.csv", "-33.9", "-133.9");
        small.Change("weather-daily.csv", "28.4", "82.4");
        small.Change("weather-daily.csv", ",0\n", ",-1\n");
        small.Change("applied-water.csv", "146.3", "lots");

        Assert.Equal(
            ["stations.csv:2: latitude", "weather-daily.csv:2: t_max_c", "weather-daily.csv:2: rain_mm", "applied-water.csv:2: meter_m3"],
            small.Read().Defects.Select(d => $"{d.File}:{d.Line}: {d.Column}"));
    }
}
