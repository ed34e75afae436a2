using EstateWater.Data.Model;
using static EstateWater.Data.Folder.Files.WeatherColumns;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>weather-daily.csv</c>: what the stations measured.</summary>
internal static class WeatherDailyFile
{
    public const string Name = "weather-daily.csv";

    private static readonly Column[] Columns = [StationCode, Date, TMax, TMin, RhMax, RhMin, Wind, Solar, Rain];

    public static List<WeatherDay> Read(FolderScan scan)
    {
        var days = new List<WeatherDay>();
        var lines = new Dictionary<(string, DateOnly), int>();
        foreach (var row in scan.Rows(Name, Columns))
        {
            var day = new WeatherDay
            {
                StationCode = row.Code(StationCode, scan.Stations),
                Date = row.Date(Date),
                TMaxC = row.Number(TMax),
                TMinC = row.Number(TMin),
                RhMaxPct = row.NumberOrNull(RhMax),
                RhMinPct = row.NumberOrNull(RhMin),
                WindMPerS = row.NumberOrNull(Wind),
                SolarMjPerM2 = row.NumberOrNull(Solar),
                RainMm = row.NumberOrNull(Rain),
            };
            CheckOrder(row, day);
            row.Once(lines, (day.StationCode, day.Date), Date, "a station has one row a day");
            days.Add(day);
        }

        return days;
    }

    public static void Write(FolderOutput output, IReadOnlyList<WeatherDay> days) =>
        output.Csv(Name, Columns, days, (row, d) => row.Text(d.StationCode).Date(d.Date).Weather(d));
}
