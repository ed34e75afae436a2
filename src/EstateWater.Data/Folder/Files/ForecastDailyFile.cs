using EstateWater.Data.Model;
using static EstateWater.Data.Folder.Files.WeatherColumns;

namespace EstateWater.Data.Folder.Files;

/// <summary><c>forecast-daily.csv</c>: forecasts as they were issued.</summary>
internal static class ForecastDailyFile
{
    public const string Name = "forecast-daily.csv";

    private static readonly Column IssuedAt = new("issued_at") { IsRequired = true };
    private static readonly Column Member = new("member");
    private static readonly Column[] Columns = [StationCode, IssuedAt, Date, Member, TMax, TMin, RhMax, RhMin, Wind, Solar, Rain];

    public static List<ForecastDay> Read(FolderScan scan)
    {
        var days = new List<ForecastDay>();
        var lines = new Dictionary<(string, DateTimeOffset, DateOnly, string?), int>();
        foreach (var row in scan.Rows(Name, Columns))
        {
            var day = new ForecastDay
            {
                StationCode = row.Code(StationCode, scan.Stations),
                IssuedAt = row.Instant(IssuedAt),
                Date = row.Date(Date),
                Member = row.TextOrNull(Member),
                TMaxC = row.Number(TMax),
                TMinC = row.Number(TMin),
                RhMaxPct = row.NumberOrNull(RhMax),
                RhMinPct = row.NumberOrNull(RhMin),
                WindMPerS = row.NumberOrNull(Wind),
                SolarMjPerM2 = row.NumberOrNull(Solar),
                RainMm = row.NumberOrNull(Rain),
            };
            CheckOrder(row, day);
            row.Once(lines, (day.StationCode, day.IssuedAt, day.Date, day.Member), Date, "a forecast has one row a day and member");
            days.Add(day);
        }

        return days;
    }

    public static void Write(FolderOutput output, IReadOnlyList<ForecastDay> days) =>
        output.Csv(Name, Columns, days, (row, d) => row
            .Text(d.StationCode).Instant(d.IssuedAt).Date(d.Date).Text(d.Member).Weather(d));
}
