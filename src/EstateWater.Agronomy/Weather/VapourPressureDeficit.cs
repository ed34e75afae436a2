using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>How much more vapour the air could hold. [kPa], never negative.</summary>
/// <remarks>A day's mean and the midday value differ by a factor of nearly two: show neither without saying which.</remarks>
[Method("Vapour pressure deficit", Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 11–19; Campbell & Norman (1998), Environmental Biophysics, Eq. 2.2–2.3 for the midday hours", Check = "FAO-56 Examples 5 and 6; published test values of a public weather service (25 °C, dew point 13.8 °C: 1.5898 kPa)")]
public static class VapourPressureDeficit
{
    private static readonly double[] MiddaySolarHours = [12, 13, 14];

    /// <summary>At one moment, from temperature and relative humidity. [kPa]</summary>
    /// <param name="tempC">Air temperature, −60 to 60. [°C]</param>
    /// <param name="rhPct">Relative humidity, 0–100. [%]</param>
    /// <remarks>VPD = e°(T) (1 − RH/100).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double AtKpa(double tempC, double rhPct) =>
        SaturationVapourPressure.AtKpa(tempC) * (1 - (WeatherInput.Humidity(rhPct) / 100));

    /// <summary>At one moment, from temperature and vapour pressure; 0 when the air is saturated. [kPa]</summary>
    /// <param name="tempC">Air temperature, −60 to 60. [°C]</param>
    /// <param name="vapourKpa">Actual vapour pressure, 0 to 20. [kPa]</param>
    /// <remarks>VPD = e°(T) − e_a, not below 0.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double FromVapourKpa(double tempC, double vapourKpa) =>
        Math.Max(0, SaturationVapourPressure.AtKpa(tempC) - Require.InRange(vapourKpa, 0, 20, "kPa"));

    /// <summary>FAO's mean of a day, as it enters evapotranspiration. [kPa]</summary>
    /// <param name="day">The day; without humidity the lowest temperature is the dew point.</param>
    /// <remarks>e_s − e_a with Allen et al. (1998) Eq. 12 and the humidity rules of <see cref="ActualVapourPressure.OfDayKpa"/>; not below 0.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value of the day is outside its range.</exception>
    public static double DailyKpa(DailyWeather day)
    {
        var vapour = ActualVapourPressure.OfDayKpa(day, out _);
        return Math.Max(0, SaturationVapourPressure.DailyMeanKpa(day.TMinC, day.TMaxC) - vapour);
    }

    /// <summary>At midday, when leaves are read: the mean of 12, 13 and 14 h solar time. [kPa]</summary>
    /// <param name="day">The day; without humidity the lowest temperature is the dew point.</param>
    /// <remarks>
    /// <para>The temperature of each hour is rebuilt from the day's extremes by <see cref="AtSolarHourKpa"/>: T_min plus 89, 97 and 99.7 %
    /// of the day's range. The vapour pressure is held at the day's value. The three hours span the usual time of midday readings.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value of the day is outside its range.</exception>
    public static double NearSolarNoonKpa(DailyWeather day) => MiddaySolarHours.Average(hour => AtSolarHourKpa(day, hour));

    /// <summary>At an hour of the day, rebuilt from the day's extremes and its humidity. [kPa]</summary>
    /// <param name="day">The day.</param>
    /// <param name="solarHour">Hours after solar midnight, 0 to 24; 12 is solar noon. [h]</param>
    /// <remarks>
    /// <para>T = T_max Γ + T_min (1 − Γ), Γ = 0.44 − 0.46 sin(0.9 + πt/12) + 0.11 sin(0.9 + πt/6). Campbell &amp; Norman (1998) Eq. 2.2–2.3.</para>
    /// <para>Needs no length of day; misses the extremes themselves by up to 2.5 % of the range.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The hour or a value of the day is outside its range.</exception>
    public static double AtSolarHourKpa(DailyWeather day, double solarHour)
    {
        ArgumentNullException.ThrowIfNull(day);
        return FromVapourKpa(CampbellNorman.TemperatureC(day.TMinC, day.TMaxC, solarHour), ActualVapourPressure.OfDayKpa(day, out _));
    }
}
