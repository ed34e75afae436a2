using EstateWater.Agronomy.Weather;

namespace EstateWater.Planning.Weather;

/// <summary>A run of days without holes.</summary>
internal static class FilledDays
{
    /// <summary>
    /// Measured days from the first one at or after <paramref name="from"/> to the day before <paramref name="until"/>.
    /// A day that was not measured takes the forecast that was last issued for it, else the same day of the year before
    /// it that has one, else the measured day nearest to it.
    /// </summary>
    public static IReadOnlyList<DailyWeather> Between(IReadOnlyList<DailyWeather> measured, IReadOnlyList<IssuedForecast> forecasts, DateOnly from, DateOnly until)
    {
        var inside = measured.Where(d => d.Date >= from && d.Date < until).ToDictionary(d => d.Date);
        if (inside.Count == 0)
        {
            return [];
        }

        var first = inside.Keys.Min();

        // A past season ends with its last measured day; the present one is filled up to yesterday.
        var last = forecasts.Count > 0 || until.DayNumber - inside.Keys.Max().DayNumber <= 31 ? until.AddDays(-1) : inside.Keys.Max();
        var expected = Expected(forecasts);
        var all = measured.ToDictionary(d => d.Date);
        var days = new List<DailyWeather>(last.DayNumber - first.DayNumber + 1);
        for (var day = first; day <= last; day = day.AddDays(1))
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
