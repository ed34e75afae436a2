using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Agronomy.Sun;

/// <summary>Solar noon, rise and set of one civil day at one place, as UTC instants.</summary>
/// <param name="Date">The local civil day.</param>
/// <param name="Noon">When the sun stands highest. UTC.</param>
/// <param name="Sunrise">Upper limb at the horizon; null when the sun does not rise, or does not go under. UTC.</param>
/// <param name="Sunset">Upper limb at the horizon; null when the sun does not set, or does not rise. UTC.</param>
/// <param name="DayLength">From rise to set; 0 in polar night, 24 h in polar day. [h]</param>
/// <param name="EquationOfTimeMin">Apparent minus mean solar time at noon. [min]</param>
/// <param name="NoonElevationDegrees">Height of the sun's centre at noon without refraction. [degrees]</param>
[Method("Solar noon, sunrise and sunset", Source = "NOAA Global Monitoring Laboratory, Solar Calculator, after Meeus (1998), Astronomical Algorithms", Check = "NREL SPA worked example (Reda & Andreas 2004) within 5 s at noon and 15 s at rise and set; a year of days and places against npm astronomy-engine")]
public sealed record SolarDay(
    DateOnly Date,
    DateTimeOffset Noon,
    DateTimeOffset? Sunrise,
    DateTimeOffset? Sunset,
    TimeSpan DayLength,
    double EquationOfTimeMin,
    double NoonElevationDegrees)
{
    // 0.833° below the horizon: 34′ of refraction and the sun's half-diameter.
    private const double HorizonZenithDegrees = 90.833;

    /// <summary>The sun of a civil day.</summary>
    /// <param name="date">The local civil day, years 1901 to 2099.</param>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <param name="longitudeDegrees">East positive. [degrees]</param>
    /// <param name="zone">The place's civil time; it decides which noon belongs to the date, not when it is.</param>
    /// <remarks>
    /// <para>Noon [min UTC] = 720 − 4 λ_east − EoT; cos H₀ = cos 90.833° ∕ (cos φ cos δ) − tan φ tan δ; rise and set = noon ∓ 4 H₀ with δ and EoT
    /// taken at the event. The source states a minute within 72° of the equator, ten beyond.</para>
    /// <para>The rise before and the set after that noon are given, whatever their UTC dates.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static SolarDay For(DateOnly date, double latitudeDegrees, double longitudeDegrees, TimeZoneInfo zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        Require.InRange(date.Year, 1901, 2099, "as the year", nameof(date));
        WeatherInput.Latitude(latitudeDegrees);
        WeatherInput.Longitude(longitudeDegrees);
        var noon = NoonOf(date, longitudeDegrees, zone);
        var sun = SolarGeometry.At(noon);
        var rise = EventOf(noon, latitudeDegrees, sun, -1);
        var set = EventOf(noon, latitudeDegrees, sun, +1);
        var length = rise is { } from && set is { } to ? to - from : TimeSpan.FromHours(HourAngleDegrees(latitudeDegrees, sun) * 2 / 15);
        var elevation = 90 - Math.Abs(latitudeDegrees - double.RadiansToDegrees(sun.DeclinationRad));
        return new SolarDay(date, noon, rise, set, length, sun.EquationOfTimeMin, elevation);
    }

    private static DateTimeOffset NoonOf(DateOnly date, double longitudeDegrees, TimeZoneInfo zone)
    {
        // Far from Greenwich the UTC date of noon may not be the civil date: start from the clock's noon and take the nearest solar one.
        var clockNoon = date.ToDateTime(new TimeOnly(12, 0));
        var clockNoonUtc = new DateTimeOffset(clockNoon, zone.GetUtcOffset(clockNoon)).ToUniversalTime();
        var noon = clockNoonUtc;
        for (var pass = 0; pass < 3; pass++)
        {
            noon = NoonNearest(noon, longitudeDegrees, SolarGeometry.At(noon).EquationOfTimeMin);
        }

        return noon;
    }

    private static DateTimeOffset NoonNearest(DateTimeOffset instant, double longitudeDegrees, double equationOfTimeMin)
    {
        var solarMinutes = instant.TimeOfDay.TotalMinutes + (4 * longitudeDegrees) + equationOfTimeMin;
        return instant.AddMinutes(-Math.IEEERemainder(solarMinutes - 720, 1440));
    }

    private static DateTimeOffset? EventOf(DateTimeOffset noon, double latitudeDegrees, SolarGeometry atNoon, int side)
    {
        var sun = atNoon;
        var instant = noon;
        for (var pass = 0; pass < 4; pass++)
        {
            if (!Rises(latitudeDegrees, sun))
            {
                return null;
            }

            var equationDrift = atNoon.EquationOfTimeMin - sun.EquationOfTimeMin;
            instant = noon.AddMinutes(equationDrift + (side * 4 * HourAngleDegrees(latitudeDegrees, sun)));
            sun = SolarGeometry.At(instant);
        }

        return instant;
    }

    private static bool Rises(double latitudeDegrees, SolarGeometry sun) => Math.Abs(CosineOfHourAngle(latitudeDegrees, sun)) <= 1;

    private static double HourAngleDegrees(double latitudeDegrees, SolarGeometry sun) =>
        double.RadiansToDegrees(Math.Acos(Math.Clamp(CosineOfHourAngle(latitudeDegrees, sun), -1, 1)));

    private static double CosineOfHourAngle(double latitudeDegrees, SolarGeometry sun)
    {
        // At a pole itself the cosine is zero; a hair beside it the answer is the same.
        var phi = double.DegreesToRadians(Math.Clamp(latitudeDegrees, -89.999, 89.999));
        return (Math.Cos(double.DegreesToRadians(HorizonZenithDegrees)) / (Math.Cos(phi) * Math.Cos(sun.DeclinationRad)))
            - (Math.Tan(phi) * Math.Tan(sun.DeclinationRad));
    }
}
