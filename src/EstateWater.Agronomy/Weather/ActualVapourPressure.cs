using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Vapour pressure of the air as it is, from whatever was measured. [kPa]</summary>
[Method("Actual vapour pressure", Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 14–19 and 48", Check = "FAO-56 Examples 4, 5 and 20")]
public static class ActualVapourPressure
{
    /// <summary>From the dew point. [kPa]</summary>
    /// <param name="dewPointC">Dew point, −60 to 60. [°C]</param>
    /// <remarks>e_a = e°(T_dew). Allen et al. (1998) Eq. 14.</remarks>
    public static double FromDewPointKpa(double dewPointC) => SaturationVapourPressure.AtKpa(dewPointC);

    /// <summary>From a dry and a wet bulb. [kPa]</summary>
    /// <param name="dryC">Dry bulb. [°C]</param>
    /// <param name="wetC">Wet bulb, not above the dry one. [°C]</param>
    /// <param name="pressureKpa">Air pressure, 30 to 110. [kPa]</param>
    /// <param name="instrument">a_psy: 0.000662 aspirated, 0.000800 naturally ventilated, 0.001200 indoors. [1/°C]</param>
    /// <remarks>e_a = e°(T_wet) − a_psy P (T_dry − T_wet). Allen et al. (1998) Eq. 15–16.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double FromPsychrometerKpa(double dryC, double wetC, double pressureKpa, double instrument = 0.000662)
    {
        WeatherInput.AirTemperature(dryC);
        Require.InRange(wetC, -60, dryC, "°C");
        Require.InRange(pressureKpa, 30, 110, "kPa");
        Require.InRange(instrument, 0.0005, 0.0015, "1/°C");
        return Math.Max(0, SaturationVapourPressure.AtKpa(wetC) - (instrument * pressureKpa * (dryC - wetC)));
    }

    /// <summary>From both extremes of relative humidity: the form to prefer. [kPa]</summary>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="tMaxC">Highest temperature. [°C]</param>
    /// <param name="rhMaxPct">Highest relative humidity, 0–100. [%]</param>
    /// <param name="rhMinPct">Lowest relative humidity, 0–100. [%]</param>
    /// <remarks>e_a = ½ [e°(T_min) RH_max/100 + e°(T_max) RH_min/100]. Allen et al. (1998) Eq. 17.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double FromExtremesKpa(double tMinC, double tMaxC, double rhMaxPct, double rhMinPct)
    {
        Require.InRange(rhMinPct, 0, WeatherInput.Humidity(rhMaxPct), "%, the day's highest being the most");
        return (FromMaximumHumidityKpa(tMinC, rhMaxPct) + FromMinimumHumidityKpa(tMaxC, rhMinPct)) / 2;
    }

    /// <summary>From the highest relative humidity alone. [kPa]</summary>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="rhMaxPct">Highest relative humidity, 0–100. [%]</param>
    /// <remarks>e_a = e°(T_min) RH_max/100. Allen et al. (1998) Eq. 18.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double FromMaximumHumidityKpa(double tMinC, double rhMaxPct) =>
        SaturationVapourPressure.AtKpa(tMinC) * WeatherInput.Humidity(rhMaxPct) / 100;

    /// <summary>From the lowest relative humidity alone. [kPa]</summary>
    /// <param name="tMaxC">Highest temperature. [°C]</param>
    /// <param name="rhMinPct">Lowest relative humidity, 0–100. [%]</param>
    /// <remarks>e_a = e°(T_max) RH_min/100: the second half of Allen et al. (1998) Eq. 17 on its own; no published source recommends it, none gives another.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double FromMinimumHumidityKpa(double tMaxC, double rhMinPct) =>
        SaturationVapourPressure.AtKpa(tMaxC) * WeatherInput.Humidity(rhMinPct) / 100;

    /// <summary>From the mean relative humidity. [kPa]</summary>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="tMaxC">Highest temperature. [°C]</param>
    /// <param name="rhMeanPct">Mean relative humidity, 0–100. [%]</param>
    /// <remarks>e_a = RH_mean/100 · e_s. Allen et al. (1998) Eq. 19.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double FromMeanHumidityKpa(double tMinC, double tMaxC, double rhMeanPct) =>
        SaturationVapourPressure.DailyMeanKpa(tMinC, tMaxC) * WeatherInput.Humidity(rhMeanPct) / 100;

    /// <summary>A day's vapour pressure from the best its record holds: both humidities, the highest, the lowest, or the lowest temperature as dew point. [kPa]</summary>
    /// <param name="day">The day.</param>
    /// <param name="origin">Whether humidity was measured or estimated.</param>
    /// <remarks>The estimate is e°(T_min), Allen et al. (1998) Eq. 48; in arid places it reads too humid by 2–3 °C of dew point.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value of the day is outside its range.</exception>
    public static double OfDayKpa(DailyWeather day, out InputOrigin origin)
    {
        ArgumentNullException.ThrowIfNull(day);
        WeatherInput.DayExtremes(day.TMinC, day.TMaxC);
        origin = day.RhMaxPct is null && day.RhMinPct is null ? InputOrigin.Estimated : InputOrigin.Measured;
        return (day.RhMaxPct, day.RhMinPct) switch
        {
            ({ } high, { } low) => FromExtremesKpa(day.TMinC, day.TMaxC, high, low),
            ({ } high, null) => FromMaximumHumidityKpa(day.TMinC, high),
            (null, { } low) => FromMinimumHumidityKpa(day.TMaxC, low),
            _ => FromDewPointKpa(day.TMinC),
        };
    }
}
