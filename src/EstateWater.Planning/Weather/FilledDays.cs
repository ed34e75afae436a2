using EstateWater.Agronomy.Weather;

namespace EstateWater.Planning.Weather;

/// <summary>A run of days without holes.</summary>
internal static class FilledDays
{
    /// <summary>
    /// The present season: from the first day measured at or after <paramref name="from"/> to the day before
    /// <paramref name="today"/>; empty when none was. A day that was not measured takes the forecast that was last issued
    /// for it, else the same day of the last year that has one, else the measured day nearest to it.
    /// </summary>
    public static IReadOnlyList<DailyWeather> ThisSeason(IReadOnlyList<DailyWeather> measured, IReadOnlyList<IssuedForecast> forecasts, DateOnly from, DateOnly today) =>
        Fill(measured, Expected(forecasts), from, today, last: today.AddDays(-1));

    /// <summary>A season that is over: it ends with its last measured day before <paramref name="until"/>; empty when none was measured.</summary>
    public static IReadOnlyList<DailyWeather> PastSeason(IReadOnlyList<DailyWeather> measured, DateOnly from, DateOnly until) =>
        Fill(measured, [], from, until, last: null);

    private static List<DailyWeather> Fill(IReadOnlyList<DailyWeather> measured, Dictionary<DateOnly, DailyWeather> expected, DateOnly from, DateOnly until, DateOnly? last)
    {
        var inside = measured.Where(d => d.Date >= from && d.Date < until).ToDictionary(d => d.Date);
        if (inside.Count == 0)
        {
            return [];
        }

        var all = measured.ToDictionary(d => d.Date);
        var end = last ?? inside.Keys.Max();
        var days = new List<DailyWeather>();
        for (var day = inside.Keys.Min(); day <= end; day = day.AddDays(1))
        {
            days.Add(inside.GetValueOrDefault(day) ?? expected.GetValueOrDefault(day) ?? (EarlierYear(all, day) ?? Nearest(inside, day)) with { Date = day });
        }

        return days;
    }

    private static Dictionary<DateOnly, DailyWeather> Expected(IReadOnlyList<IssuedForecast> forecasts)
    {
        var expected = new Dictionary<DateOnly, DailyWeather>();
        foreach (var day in forecasts.OrderBy(f => f.IssuedAt).ThenByDescending(f => f.Member, StringComparer.Ordinal).SelectMany(f => f.Days))
        {
            expected[day.Date] = day;
        }

        return expected;
    }

    private static DailyWeather? EarlierYear(Dictionary<DateOnly, DailyWeather> days, DateOnly day) =>
        Enumerable.Range(1, 10).Select(years => days.GetValueOrDefault(day.AddYears(-years))).FirstOrDefault(d => d is not null);

    private static DailyWeather Nearest(Dictionary<DateOnly, DailyWeather> days, DateOnly day)
    {
        for (var away = 1; ; away++)
        {
            if (days.TryGetValue(day.AddDays(-away), out var before))
            {
                return before;
            }

            if (days.TryGetValue(day.AddDays(away), out var after))
            {
                return after;
            }
        }
    }
}
