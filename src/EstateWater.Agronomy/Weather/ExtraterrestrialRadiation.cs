using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Radiation above the atmosphere and length of day, as FAO-56 computes them for evapotranspiration.</summary>
/// <remarks>Good to a day's sums. For clock times of noon, rise and set use <see cref="Sun.SolarDay"/>.</remarks>
[Method("Extraterrestrial radiation and daylight hours", Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 21–25 and 34", Check = "FAO-56 Examples 7–10")]
public static class ExtraterrestrialRadiation
{
    /// <summary>G_sc: the solar constant. [MJ m⁻² min⁻¹]</summary>
    public const double SolarConstantMjPerM2Min = 0.0820;

    /// <summary>Evaporation that one megajoule pays for. [mm per MJ/m²]</summary>
    /// <remarks>1/λ with λ = 2.45 MJ/kg, Allen et al. (1998) Eq. 20.</remarks>
    public const double MmPerMj = 0.408;

    /// <summary>d_r: inverse relative distance of earth and sun, squared. [–]</summary>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <remarks>d_r = 1 + 0.033 cos(2πJ/365). Allen et al. (1998) Eq. 23; 365 in leap years too, as printed.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public static double InverseRelativeDistance(int dayOfYear) => 1 + (0.033 * Math.Cos(YearAngle(dayOfYear)));

    /// <summary>δ: the sun's declination. [rad]</summary>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <remarks>δ = 0.409 sin(2πJ/365 − 1.39). Allen et al. (1998) Eq. 24.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public static double DeclinationRad(int dayOfYear) => 0.409 * Math.Sin(YearAngle(dayOfYear) - 1.39);

    /// <summary>ω_s: hour angle of sunset. [rad]</summary>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <remarks>ω_s = acos(−tan φ tan δ). Allen et al. (1998) Eq. 25; 0 in polar night, π in polar day.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double SunsetHourAngleRad(double latitudeDegrees, int dayOfYear)
    {
        var phi = double.DegreesToRadians(WeatherInput.Latitude(latitudeDegrees));
        return Math.Acos(Math.Clamp(-Math.Tan(phi) * Math.Tan(DeclinationRad(dayOfYear)), -1, 1));
    }

    /// <summary>R_a of a day. [MJ m⁻² d⁻¹]</summary>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <remarks>R_a = (24·60/π) G_sc d_r [ω_s sin φ sin δ + cos φ cos δ sin ω_s]. Allen et al. (1998) Eq. 21.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double DailyMjPerM2(double latitudeDegrees, int dayOfYear)
    {
        var sunset = SunsetHourAngleRad(latitudeDegrees, dayOfYear);
        var phi = double.DegreesToRadians(latitudeDegrees);
        var delta = DeclinationRad(dayOfYear);
        var geometry = (sunset * Math.Sin(phi) * Math.Sin(delta)) + (Math.Cos(phi) * Math.Cos(delta) * Math.Sin(sunset));
        return Math.Max(0, 24 * 60 / Math.PI * SolarConstantMjPerM2Min * InverseRelativeDistance(dayOfYear) * geometry);
    }

    /// <summary>N: daylight hours. [h]</summary>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <remarks>N = 24 ω_s/π. Allen et al. (1998) Eq. 34.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double DaylightHours(double latitudeDegrees, int dayOfYear) =>
        24 / Math.PI * SunsetHourAngleRad(latitudeDegrees, dayOfYear);

    private static double YearAngle(int dayOfYear) => 2 * Math.PI * WeatherInput.DayOfYear(dayOfYear) / 365;
}
