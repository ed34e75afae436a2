using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>stations.csv</c>: the weather stations.</summary>
internal static class StationsFile
{
    public const string Name = "stations.csv";

    private static readonly Column Station = new("station") { IsRequired = true };
    private static readonly Column Latitude = new("latitude") { IsRequired = true, Min = -90, Max = 90 };
    private static readonly Column Longitude = new("longitude") { IsRequired = true, Min = -180, Max = 180 };
    private static readonly Column Elevation = new("elevation_m") { IsRequired = true, Min = -450, Max = 9000 };
    private static readonly Column WindHeight = new("wind_height_m") { Min = 0, MinExcluded = true, Max = 200 };
    private static readonly Column[] Columns = [Station, Latitude, Longitude, Elevation, WindHeight];

    public static List<Station> Read(FolderScan scan) =>
        [.. scan.Rows(Name, Columns, scan.Stations).Select(row => new Station
        {
            Code = row.NewCode(Station, scan.Stations),
            LatitudeDegrees = row.Number(Latitude),
            LongitudeDegrees = row.Number(Longitude),
            ElevationM = row.Number(Elevation),
            WindHeightM = row.NumberOrNull(WindHeight) ?? 2,
        })];

    public static void Write(FolderOutput output, IReadOnlyList<Station> stations) =>
        output.Csv(Name, Columns, stations, (row, s) => row
            .Text(s.Code).Number(s.LatitudeDegrees).Number(s.LongitudeDegrees).Number(s.ElevationM).Number(s.WindHeightM));
}
