using System.Globalization;
using System.Text;
using EstateWater.Data.Model;
using EstateWater.Data.Store;
using EstateWater.SystemTests.Journeys;

namespace EstateWater.SystemTests.RealWeather;

/// <summary>
/// An invented block under four real years of weather, brought in by the program's own import. The weather is NOAA's daily data
/// of a Seattle station, 2012 to 2015, as npm's vega-datasets carries it: rain, temperatures and wind, no humidity and no radiation.
/// </summary>
public sealed class SeattleEstate : IAsyncLifetime
{
    private const string Station = "airport";

    private readonly DirectoryInfo workplace = Directory.CreateTempSubdirectory("estate-water-");

    /// <summary>The estate folder.</summary>
    public string Folder => Path.Combine(workplace.FullName, "estate");

    /// <summary>What the database gives back after the import.</summary>
    public EstateContents Contents { get; private set; } = null!;

    private string Database => Path.Combine(workplace.FullName, "estate.db");

    public async ValueTask InitializeAsync()
    {
        var packages = Path.Combine(AppContext.BaseDirectory, "RealWeather");
        MustPass(await Tool.RunAsync(packages, "npm", ["ci", "--no-audit", "--no-fund"], CancellationToken.None));
        Directory.CreateDirectory(Folder);
        await WriteAsync("weather-daily.csv", Weather(await File.ReadAllLinesAsync(Path.Combine(packages, "node_modules", "vega-datasets", "data", "seattle-weather.csv"))));
        await WriteAsync("stations.csv", $"station,latitude,longitude,elevation_m,wind_height_m\n{Station},47.45,-122.31,130,10\n");
        await WriteAsync("estate.json", """{ "name": "Four years of weather", "time_zone": "America/Los_Angeles" }""");
        await WriteAsync("water-sources.csv", "source,max_flow_m3_per_h,daily_from,daily_to\nwell,40,20:00,08:00\n");
        await WriteAsync("valves.csv", "valve,source\nV1,well\n");
        await WriteAsync("blocks.geojson", OneBlock);
        MustPass(await RunAsync("import", "--data", Folder, "--database", Database));
        await using var db = DatabaseSetup.Open(Database);
        Contents = (await EstateStore.LoadAsync(db))!;
    }

    /// <summary>Runs a command of the program, as built, in a process of its own.</summary>
    internal Task<Tool> RunAsync(params string[] arguments) =>
        Tool.RunAsync(workplace.FullName, "dotnet", [Repository.Program, .. arguments], CancellationToken.None);

    public ValueTask DisposeAsync()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        workplace.Delete(recursive: true);
        return ValueTask.CompletedTask;
    }

    private static string Weather(string[] lines)
    {
        var columns = lines[0].Split(',').Index().ToDictionary(c => c.Item, c => c.Index);
        var text = new StringBuilder("station,date,t_max_c,t_min_c,rh_max_pct,rh_min_pct,wind_m_per_s,solar_mj_per_m2,rain_mm\n");
        foreach (var cells in lines.Skip(1).Where(line => line.Length > 0).Select(line => line.Split(',')))
        {
            text.Append(CultureInfo.InvariantCulture, $"{Station},{Cell("date")},{Cell("temp_max")},{Cell("temp_min")},,,{Cell("wind")},,{Cell("precipitation")}\n");
            string Cell(string name) => cells[columns[name]];
        }

        return text.ToString();
    }

    private Task WriteAsync(string name, string text) => File.WriteAllTextAsync(Path.Combine(Folder, name), text);

    private static void MustPass(Tool tool)
    {
        if (tool.ExitCode != 0)
        {
            throw new InvalidOperationException($"Ended with {tool.ExitCode}: {tool.Errors}{tool.Output}");
        }
    }

    private const string OneBlock = """
        { "type": "FeatureCollection", "features": [{
          "type": "Feature",
          "geometry": { "type": "Polygon", "coordinates": [[[-122.312, 47.449], [-122.310, 47.449], [-122.310, 47.451], [-122.312, 47.451], [-122.312, 47.449]]] },
          "properties": { "block": "B1", "variety": "Chardonnay", "fruit": "white", "station": "airport", "valve": "V1",
            "row_spacing_m": 2.4, "vine_spacing_m": 1.5, "emitters_per_vine": 2, "emitter_flow_l_per_h": 2.3,
            "root_depth_m": 1.0, "available_water_mm_per_m": 130 } }] }
        """;
}
