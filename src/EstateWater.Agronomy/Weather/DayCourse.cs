using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Sun;

namespace EstateWater.Agronomy.Weather;

/// <summary>An hour of a day as rebuilt from the day's extremes.</summary>
/// <param name="At">The instant. UTC.</param>
/// <param name="TempC">Air temperature. [°C]</param>
/// <param name="RhPct">Relative humidity, at most 100. [%]</param>
/// <param name="DeficitKpa">Vapour pressure deficit. [kPa]</param>
public sealed record HourOfDay(DateTimeOffset At, double TempC, double RhPct, double DeficitKpa);

/// <summary>Temperature, humidity and deficit through a civil day, where only its extremes are known.</summary>
[Method("Hourly humidity and deficit from daily values", Source = "Linvill (1990), HortScience 25: 14–16, with the day's vapour pressure held steady (FAO-56 Eq. 17–19, 48)", Check = "Deficit of 35/15 °C with dew point 10 °C at 12 and 15 h, recomputed independently")]
public static class DayCourse
{
    /// <summary>Every full hour of the civil day: 24, or 23 and 25 when the clock changes.</summary>
    /// <param name="day">The day.</param>
    /// <param name="previous">The day before, for the hours until sunrise; null when not known.</param>
    /// <param name="next">The day after, for the night's lowest; null when not known.</param>
    /// <param name="sun">The sun of the day.</param>
    /// <param name="zone">The civil time.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value of a day outside its range, or a day shorter than 4 h or longer than 20 h.</exception>
    public static IReadOnlyList<HourOfDay> Hours(DailyWeather day, DailyWeather? previous, DailyWeather? next, SolarDay sun, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(sun);
        ArgumentNullException.ThrowIfNull(zone);
        var vapour = ActualVapourPressure.OfDayKpa(day, out _);
        var hours = new List<HourOfDay>();
        for (var at = Midnight(day.Date, zone); at < Midnight(day.Date.AddDays(1), zone); at = at.AddHours(1))
        {
            var celsius = TemperatureC(at, day, previous, next, sun);
            var humidity = Math.Min(100, 100 * vapour / SaturationVapourPressure.AtKpa(celsius));
            hours.Add(new HourOfDay(at, celsius, humidity, VapourPressureDeficit.FromVapourKpa(celsius, vapour)));
        }

        return hours;
    }

    private static double TemperatureC(DateTimeOffset at, DailyWeather day, DailyWeather? previous, DailyWeather? next, SolarDay sun)
    {
        var length = sun.DayLength.TotalHours;
        var afterSunrise = (at - sun.Noon).TotalHours + (length / 2);
        if (afterSunrise >= 0)
        {
            return Linvill.TemperatureC(day.TMinC, day.TMaxC, next?.TMinC ?? day.TMinC, length, Math.Min(24, afterSunrise));
        }

        var eve = previous ?? day;
        return Linvill.TemperatureC(eve.TMinC, eve.TMaxC, day.TMinC, length, afterSunrise + 24);
    }

    private static DateTimeOffset Midnight(DateOnly date, TimeZoneInfo zone)
    {
        var clock = date.ToDateTime(TimeOnly.MinValue);
        return new DateTimeOffset(clock, zone.GetUtcOffset(clock)).ToUniversalTime();
    }
}
