using EstateWater.Agronomy.Weather;

namespace EstateWater.Planning.Weather;

/// <summary>Weather of the same time of the year as the station has seen it, for days that no forecast reaches.</summary>
internal sealed class OtherYears
{
    private readonly Dictionary<DateOnly, DailyWeather> days;
    private readonly List<int> shifts = [];
    private readonly DailyWeather? latest;

    public OtherYears(IReadOnlyList<DailyWeather> past, DateOnly today, string station)
    {
        days = past.ToDictionary(d => d.Date);
        latest = past.Count > 0 ? past[^1] : null;
        Station = station;
        for (var years = 1; years <= 40; years++)
        {
            // The same days of another year, moved by up to a week either way.
            foreach (var moved in (int[])[0, -5, 5, -2, 2, -7, 7])
            {
                var shift = (int)Math.Round(365.2425 * years) + moved;
                if (days.ContainsKey(today.AddDays(-shift)) && days.ContainsKey(today.AddDays(14 - shift)))
                {
                    shifts.Add(shift);
                }
            }
        }

        // No other year: the last three weeks stand in.
        if (shifts.Count == 0 && past.Count > 0)
        {
            shifts.AddRange(Enumerable.Range(1, Math.Min(21, past.Count)).Select(back => -back));
        }
    }

    private string Station { get; }

    /// <summary>Mean of the same week of the other years; null where the station has none. [°C]</summary>
    /// <param name="day">The day.</param>
    public (double TMaxC, double TMinC)? Normal(DateOnly day)
    {
        var same = Same(day).ToList();
        return same.Count > 0 ? (same.Average(d => d.TMaxC), same.Average(d => d.TMinC)) : null;
    }

    // The days of other years that count for one.
    private IEnumerable<DailyWeather> Same(DateOnly day) => shifts.Where(s => s > 0).Select(s => days.GetValueOrDefault(day.AddDays(-s))).OfType<DailyWeather>();

    /// <summary>Standard deviation of the highest temperature about <see cref="Normal"/>, in the fortnight that begins with a day; null where the station has no other year. [°C]</summary>
    /// <param name="first">The day.</param>
    public double? SpreadC(DateOnly first)
    {
        var off = Enumerable.Range(0, 14).Select(first.AddDays).SelectMany(day => Normal(day) is var (byDayC, _) ? Same(day).Select(d => d.TMaxC - byDayC) : []).ToList();
        return off.Count > 0 ? Math.Sqrt(off.Average(e => e * e)) : null;
    }

    /// <summary>A day that no forecast reaches.</summary>
    /// <param name="day">The day.</param>
    /// <param name="version">Which version of the coming days asks.</param>
    /// <param name="forecast">What the version knows; its last day stands in where the station has no weather of its own.</param>
    public DailyWeather Day(DateOnly day, int version, DailyWeather[] forecast)
    {
        if (latest is null)
        {
            return forecast.Length > 0
                ? forecast[^1] with { Date = day }
                : throw new InvalidOperationException($"Station {Station} has neither weather nor a forecast for {day:yyyy-MM-dd}; import weather-daily.csv or forecast-daily.csv for it.");
        }

        var shift = shifts[version % shifts.Count];
        var from = shift < 0 ? latest.Date.AddDays(shift + 1) : day.AddDays(-shift);
        return (days.GetValueOrDefault(from) ?? latest) with { Date = day };
    }
}
