using EstateWater.Data.Model;

namespace EstateWater.Data.Folder.Files;

/// <summary>The weather columns that measured days and forecast days share.</summary>
internal static class WeatherColumns
{
    public static readonly Column StationCode = new("station") { IsRequired = true };
    public static readonly Column Date = new("date") { IsRequired = true };
    public static readonly Column TMax = new("t_max_c") { IsRequired = true, Min = -60, Max = 60, Hint = "in °C" };
    public static readonly Column TMin = new("t_min_c") { IsRequired = true, Min = -60, Max = 60, Hint = "in °C" };
    public static readonly Column RhMax = new("rh_max_pct") { Min = 0, Max = 100 };
    public static readonly Column RhMin = new("rh_min_pct") { Min = 0, Max = 100 };
    public static readonly Column Wind = new("wind_m_per_s") { Min = 0, Max = 100, Hint = "in m/s" };
    public static readonly Column Solar = new("solar_mj_per_m2") { Min = 0, Max = 50, Hint = "in MJ/m² for the day" };
    public static readonly Column Rain = new("rain_mm") { Min = 0, Max = 2000 };

    public static void CheckOrder(CsvRow row, WeatherDayBase day)
    {
        if (day.TMinC > day.TMaxC)
        {
            row.Report(TMin, "is above t_max_c; are they swapped?");
        }

        if (day.RhMinPct > day.RhMaxPct)
        {
            row.Report(RhMin, "is above rh_max_pct; are they swapped?");
        }
    }

    public static CsvOutputRow Weather(this CsvOutputRow row, WeatherDayBase day) => row
        .Number(day.TMaxC).Number(day.TMinC).Number(day.RhMaxPct).Number(day.RhMinPct)
        .Number(day.WindMPerS).Number(day.SolarMjPerM2).Number(day.RainMm);
}
