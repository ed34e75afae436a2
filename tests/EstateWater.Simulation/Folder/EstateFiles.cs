using System.Text.Json;
using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Observation;
using static EstateWater.Simulation.Folder.CsvFile;

namespace EstateWater.Simulation.Folder;

/// <summary>The files that say what the estate has: itself, stations, sources, valves, targets, the probe's calibration.</summary>
internal static class EstateFiles
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, NewLine = "\n" };

    public static void Write(EstateSpec spec, string folder)
    {
        var estate = new { name = spec.Name, time_zone = spec.Site.TimeZone.Id, country = spec.Country, display_units = "metric" };
        File.WriteAllText(Path.Combine(folder, "estate.json"), JsonSerializer.Serialize(estate, Indented) + "\n");
        Stations(spec).Save(folder, "stations.csv");
        Sources(spec).Save(folder, "water-sources.csv");
        Valves(spec).Save(folder, "valves.csv");
        Targets(spec).Save(folder, "targets.csv");
        var calibration = new CsvFile("block,intercept,slope");
        calibration.Row(null, SoilRound.Intercept, SoilRound.Slope);
        calibration.Save(folder, "probe-calibration.csv");
    }

    private static CsvFile Stations(EstateSpec spec)
    {
        var file = new CsvFile("station,latitude,longitude,elevation_m,wind_height_m");
        foreach (var station in spec.Stations)
        {
            var (longitude, latitude) = Outline.Degrees(new Point(station.EastM, station.NorthM), spec.Site);
            file.Row(station.Code, latitude, longitude, station.ElevationM, station.WindHeightM);
        }

        return file;
    }

    private static CsvFile Sources(EstateSpec spec)
    {
        var file = new CsvFile("source,max_flow_m3_per_h,daily_from,daily_to,season_allocation_m3,water_ec_ds_per_m");
        foreach (var source in spec.Sources)
        {
            file.Row(source.Code, source.MaxFlowM3PerH, source.DailyFrom, source.DailyTo, source.AllocationM3, source.EcDsPerM);
        }

        return file;
    }

    private static CsvFile Valves(EstateSpec spec)
    {
        var file = new CsvFile("valve,source");
        foreach (var valve in spec.Valves)
        {
            file.Row(valve.Code, valve.Source);
        }

        return file;
    }

    private static CsvFile Targets(EstateSpec spec)
    {
        var file = new CsvFile("block,fruit,from_el_stage,to_el_stage,measure,floor_bar,ceiling_bar");
        foreach (var t in spec.Targets)
        {
            file.Row(t.Block, t.Fruit, t.FromStage, t.ToStage, Word(t.Measure), Number(t.FloorBar, 1), Number(t.CeilingBar, 1));
        }

        return file;
    }

    /// <summary>A measure as files spell it.</summary>
    public static string Word(Measure measure) => measure switch
    {
        Measure.Leaf => "leaf",
        Measure.Stem => "stem",
        _ => "predawn",
    };
}
