using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>The sun over one hour, as FAO-56 computes it for evapotranspiration.</summary>
/// <param name="DayOfYear">Of the place's own solar date, 1 to 366.</param>
/// <param name="MidAngleRad">ω in the middle of the hour; 0 at solar noon. [rad]</param>
/// <param name="SinElevation">Sine of the sun's height then. [–]</param>
/// <param name="ExtraterrestrialMjPerM2">R_a of the hour. [MJ/m²]</param>
[Method("Extraterrestrial radiation of an hour", Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 28–33", Check = "FAO-56 Example 19; Fallon, Nevada, 1 July 2015 (RefET test constants)")]
public sealed record HourlySun(int DayOfYear, double MidAngleRad, double SinElevation, double ExtraterrestrialMjPerM2)
{
    /// <summary>The sun over an hour.</summary>
    /// <param name="start">Start of the hour, any offset.</param>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <param name="longitudeDegrees">East positive. [degrees]</param>
    /// <remarks>
    /// <para>R_a = (12·60/π) G_sc d_r [(ω₂ − ω₁) sin φ sin δ + cos φ cos δ (sin ω₂ − sin ω₁)], ω = (π/12)[t + S_c − 12], ω₁,₂ = ω ∓ π/24, held
    /// within sunrise and sunset.</para>
    /// <para>FAO-56 writes t from standard time and the longitudes west of zone and place; the zone cancels out when t is taken from UTC, and with it
    /// summer time and half-hour zones: t = UTC + λ_east/15.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static HourlySun Of(DateTimeOffset start, double latitudeDegrees, double longitudeDegrees)
    {
        var phi = double.DegreesToRadians(WeatherInput.Latitude(latitudeDegrees));
        var meanSolar = start.UtcDateTime.AddHours(0.5 + (WeatherInput.Longitude(longitudeDegrees) / 15));
        var day = meanSolar.DayOfYear;
        var angle = Math.PI / 12 * (meanSolar.TimeOfDay.TotalHours + SeasonalCorrectionH(day) - 12);
        var delta = ExtraterrestrialRadiation.DeclinationRad(day);
        var (steady, swinging) = (Math.Sin(phi) * Math.Sin(delta), Math.Cos(phi) * Math.Cos(delta));
        var sunset = ExtraterrestrialRadiation.SunsetHourAngleRad(latitudeDegrees, day);
        var from = Math.Clamp(angle - (Math.PI / 24), -sunset, sunset);
        var to = Math.Clamp(angle + (Math.PI / 24), -sunset, sunset);
        var geometry = ((to - from) * steady) + (swinging * (Math.Sin(to) - Math.Sin(from)));
        var radiation = 12 * 60 / Math.PI * ExtraterrestrialRadiation.SolarConstantMjPerM2Min * ExtraterrestrialRadiation.InverseRelativeDistance(day) * geometry;
        return new HourlySun(day, angle, steady + (swinging * Math.Cos(angle)), Math.Max(0, radiation));
    }

    /// <summary>S_c: seasonal correction of solar time. [h]</summary>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <remarks>S_c = 0.1645 sin 2b − 0.1255 cos b − 0.025 sin b, b = 2π(J − 81)/364. Allen et al. (1998) Eq. 32–33.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public static double SeasonalCorrectionH(int dayOfYear)
    {
        var b = 2 * Math.PI * (WeatherInput.DayOfYear(dayOfYear) - 81) / 364;
        return (0.1645 * Math.Sin(2 * b)) - (0.1255 * Math.Cos(b)) - (0.025 * Math.Sin(b));
    }
}
