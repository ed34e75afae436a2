using EstateWater.Data.Folder.Files;
using EstateWater.Data.Model;

namespace EstateWater.Data.Folder;

/// <summary>An estate as one folder of open formats (CSV, GeoJSON): read whole or not at all.</summary>
public static class EstateFolder
{
    private static readonly string[] FileNames =
    [
        EstateFile.Name, StationsFile.Name, WaterSourcesFile.Name, ValvesFile.Name, BlocksFile.Name, StagesFile.Name,
        TargetsFile.Name, WeatherDailyFile.Name, ForecastDailyFile.Name, ChamberReadingsFile.Name, SoilMoistureFile.Name,
        ProbeCalibrationFile.Name, CanopyFile.Name, AppliedWaterFile.Name,
    ];

    /// <summary>Reads a folder, and finds every defect of every file in one go.</summary>
    public static EstateFolderReading Read(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        if (!Directory.Exists(folder))
        {
            return new(null, [new(folder, 1, Defect.WholeFile, "is not a folder; name the folder that holds estate.json and blocks.geojson")]);
        }

        var scan = new FolderScan(folder);
        MisnamedFiles.Report(scan, folder, FileNames);

        // The order matters: the zone first, and what defines a code before what refers to it.
        var estate = EstateFile.Read(scan);
        var contents = new EstateContents
        {
            Estate = estate ?? new() { Name = "", TimeZone = "" },
            Stations = StationsFile.Read(scan),
            Sources = WaterSourcesFile.Read(scan),
            Valves = ValvesFile.Read(scan),
            Blocks = BlocksFile.Read(scan),
            Stages = StagesFile.Read(scan),
            Targets = TargetsFile.Read(scan),
            Weather = WeatherDailyFile.Read(scan),
            Forecasts = ForecastDailyFile.Read(scan),
            ChamberReadings = ChamberReadingsFile.Read(scan),
            SoilMoistures = SoilMoistureFile.Read(scan),
            ProbeCalibrations = ProbeCalibrationFile.Read(scan),
            CanopyVisits = CanopyFile.Read(scan),
            AppliedWaters = AppliedWaterFile.Read(scan),
        };
        return scan.Defects.Count == 0 ? new(contents.InOrder(), []) : new(null, scan.Defects);
    }

    /// <summary>Writes a folder that <see cref="Read"/> reads back to the same estate.</summary>
    /// <exception cref="IOException">The folder holds something else than an estate, or cannot be written.</exception>
    public static void Write(EstateContents contents, string folder)
    {
        ArgumentNullException.ThrowIfNull(contents);
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        FolderSwap.Write(folder, FileNames, into => WriteFiles(contents.InOrder(), into));
    }

    private static void WriteFiles(EstateContents contents, string folder)
    {
        var output = new FolderOutput(folder, TimeZoneInfo.FindSystemTimeZoneById(contents.Estate.TimeZone));
        EstateFile.Write(output, contents.Estate);
        StationsFile.Write(output, contents.Stations);
        WaterSourcesFile.Write(output, contents.Sources);
        ValvesFile.Write(output, contents.Valves);
        BlocksFile.Write(output, contents.Blocks);
        StagesFile.Write(output, contents.Stages);
        TargetsFile.Write(output, contents.Targets);
        WeatherDailyFile.Write(output, contents.Weather);
        ForecastDailyFile.Write(output, contents.Forecasts);
        ChamberReadingsFile.Write(output, contents.ChamberReadings);
        SoilMoistureFile.Write(output, contents.SoilMoistures);
        ProbeCalibrationFile.Write(output, contents.ProbeCalibrations);
        CanopyFile.Write(output, contents.CanopyVisits);
        AppliedWaterFile.Write(output, contents.AppliedWaters);
    }
}
