using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Weather;
using static EstateWater.Simulation.Folder.CsvFile;

namespace EstateWater.Simulation.Folder;

/// <summary>Measured days, and forecasts as they were issued on Tuesdays and Fridays; members for the latest issue only.</summary>
internal static class WeatherFiles
{
    private const double IssueHour = 5;
    private const int DaysAhead = 14;
    private const int DaysKept = 10;
    private const string Columns = "t_max_c,t_min_c,rh_max_pct,rh_min_pct,wind_m_per_s,solar_mj_per_m2,rain_mm";

    public static void Write(SimulatedEstate estate, string folder, DateTimeOffset asOf, int members)
    {
        var measured = new CsvFile("station,date," + Columns);
        var forecast = new CsvFile("station,issued_at,date,member," + Columns);
        foreach (var station in estate.Spec.Stations)
        {
            foreach (var day in estate.Weather(station.Code).Where(d => estate.Spec.Site.At(d.Date, 24) <= asOf))
            {
                measured.Row([station.Code, day.Date, .. Cells(day)]);
            }

            Forecasts(estate, station.Code, asOf, members, forecast);
        }

        measured.Save(folder, "weather-daily.csv");
        forecast.Save(folder, "forecast-daily.csv");
    }

    private static void Forecasts(SimulatedEstate estate, string station, DateTimeOffset asOf, int members, CsvFile file)
    {
        var site = estate.Spec.Site;
        var office = new ForecastOffice(site, estate.Spec.Climate, estate.Seed, estate.Spec.ForecastErrorScale);
        var truth = estate.Weather(station).ToList();
        var issues = truth.Select((day, index) => (day.Date, index, At: site.At(day.Date, IssueHour)))
            .Where(i => i.Date.DayOfWeek is DayOfWeek.Tuesday or DayOfWeek.Friday)
            .Where(i => i.Date >= estate.Spec.From && i.At <= asOf && InGrowth(site, i.Date))
            .ToList();
        foreach (var (date, index, at) in issues)
        {
            var latest = date == issues[^1].Date;
            var ahead = truth.Skip(index).Take(latest ? DaysAhead : DaysKept).ToList();
            foreach (var issued in office.Issue(ahead, at, latest ? members : 0, station))
            {
                foreach (var day in issued.Days)
                {
                    file.Row([station, issued.IssuedAt, day.Date, issued.Member, .. Cells(day)]);
                }
            }
        }
    }

    /// <summary>Forecasts are kept for the six months about summer.</summary>
    private static bool InGrowth(Site site, DateOnly date) => Climate.Warmth(date, site.IsSouthern) > 0;

    private static object[] Cells(DayWeather day) =>
    [
        Number(day.TMaxC, 1), Number(day.TMinC, 1), Number(day.RhMaxPct, 0), Number(day.RhMinPct, 0),
        Number(day.WindMPerS, 1), Number(day.SolarMjPerM2, 1), Number(day.RainMm, 1),
    ];
}
