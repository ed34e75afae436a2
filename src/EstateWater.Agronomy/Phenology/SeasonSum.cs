using EstateWater.Agronomy.Weather;

namespace EstateWater.Agronomy.Phenology;

/// <summary>A sum over part of a season, and how many of its days are not in the record.</summary>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="DegreeDays">Sum over the days that are there. [°C·d]</param>
/// <param name="MissingDays">Days of the window without weather; they add nothing. [d]</param>
public sealed record SeasonSum(DateOnly From, DateOnly To, double DegreeDays, int MissingDays)
{
    /// <summary>Adds up a window, each date once.</summary>
    internal static SeasonSum Of(IEnumerable<DailyWeather> days, DateOnly from, DateOnly to, Func<DailyWeather, double> degreeDays)
    {
        ArgumentNullException.ThrowIfNull(days);
        var byDate = new Dictionary<DateOnly, double>();
        foreach (var day in days.Where(d => d.Date >= from && d.Date <= to))
        {
            WeatherInput.DayExtremes(day.TMinC, day.TMaxC);
            if (!byDate.TryAdd(day.Date, degreeDays(day)))
            {
                throw new ArgumentException($"{day.Date:O} is given twice.", nameof(days));
            }
        }

        return new SeasonSum(from, to, byDate.Values.Sum(), to.DayNumber - from.DayNumber + 1 - byDate.Count);
    }
}
