using EstateWater.Agronomy.Outlook;
using EstateWater.Agronomy.Weather;
using MathNet.Numerics.Distributions;

namespace EstateWater.Planning.Weather;

/// <summary>Versions of one forecast, on every day evenly spread over what it may be wrong by.</summary>
/// <remarks>
/// A version's error lasts from day to day as past errors did: an autoregressive course (Box and Jenkins), brought to even
/// spread on each day by rank, which keeps the courses together (Iman and Conover 1982, Communications in Statistics B
/// 11:311–334; both from memory). Errors that last too long make a fortnight look too uncertain: they add up in the soil.
/// </remarks>
internal static class WidenedForecast
{
    // Of an error of the day's highest temperature that the night's lowest shares. Ours.
    private const double NightShare = 0.6;

    /// <summary>Each from today to the forecast's last day, as likely as the other.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="errors">What it may be wrong by.</param>
    /// <param name="today">First day of the versions.</param>
    /// <param name="station">Whose it is: each draws its own courses, the same every day.</param>
    /// <param name="versions">How many; even, for a warm one stands beside each cold one.</param>
    public static List<DailyWeather[]> Versions(IssuedForecast forecast, ForecastError errors, DateOnly today, string station, int versions)
    {
        var days = forecast.Days.Where(d => d.Date >= today).OrderBy(d => d.Date).ToArray();
        return [.. Courses(station, versions, errors.Persistence).Select(course => days.Select(d => Warmer(d, errors, course, forecast.LeadDays(d.Date))).ToArray())];
    }

    private static DailyWeather Warmer(DailyWeather day, ForecastError errors, double[] course, int leadDays)
    {
        var warmer = errors.SigmaC(leadDays) * course[Math.Clamp(leadDays, 0, ForecastError.LongestLead)];
        return ForecastError.Warmer(day, warmer, NightShare * warmer);
    }

    private static double[][] Courses(string station, int versions, double persistence)
    {
        var draw = new NormalNumbers($"forecast errors of {station}");
        var courses = new double[versions][];
        for (var v = 0; v < versions; v += 2)
        {
            var course = new double[ForecastError.LongestLead + 1];
            course[0] = draw.Next();
            for (var lead = 1; lead <= ForecastError.LongestLead; lead++)
            {
                course[lead] = (persistence * course[lead - 1]) + (Math.Sqrt(1 - (persistence * persistence)) * draw.Next());
            }

            courses[v] = course;
            courses[v + 1] = [.. course.Select(z => -z)];
        }

        for (var lead = 0; lead <= ForecastError.LongestLead; lead++)
        {
            var ranked = courses.OrderBy(c => c[lead]).ToArray();
            for (var rank = 0; rank < versions; rank++)
            {
                ranked[rank][lead] = Normal.InvCDF(0, 1, (rank + 0.5) / versions);
            }
        }

        return courses;
    }
}
