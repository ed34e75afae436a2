using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Saturation vapour pressure of air over water. [kPa]</summary>
[Method("Saturation vapour pressure", Source = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56, Eq. 11–13", Check = "FAO-56 Examples 3, 5 and 18")]
public static class SaturationVapourPressure
{
    /// <summary>e°(T): the most vapour that air at one temperature can hold. [kPa]</summary>
    /// <param name="tempC">Air temperature, −60 to 60. [°C]</param>
    /// <remarks>
    /// <para>e°(T) = 0.6108 · exp(17.27·T ∕ (T + 237.3)). Allen et al. (1998) Eq. 11, constants as printed.</para>
    /// <para>Over water at every temperature: below freezing it reads above the ice curve (4.8 % at −5 °C).</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public static double AtKpa(double tempC)
    {
        WeatherInput.AirTemperature(tempC);
        return 0.6108 * Math.Exp(17.27 * tempC / (tempC + 237.3));
    }

    /// <summary>e_s: the day's mean from its extremes. [kPa]</summary>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="tMaxC">Highest temperature, not below the lowest. [°C]</param>
    /// <remarks>Allen et al. (1998) Eq. 12. Not e° of the mean temperature: e° is convex, so that would be too low.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside −60 to 60 °C, or in the wrong order.</exception>
    public static double DailyMeanKpa(double tMinC, double tMaxC)
    {
        WeatherInput.DayExtremes(tMinC, tMaxC);
        return (AtKpa(tMaxC) + AtKpa(tMinC)) / 2;
    }

    /// <summary>Δ: the slope of the saturation curve. [kPa/°C]</summary>
    /// <param name="tempC">Air temperature, −60 to 60. [°C]</param>
    /// <remarks>Δ = 4098 e°(T) ∕ (T + 237.3)². Allen et al. (1998) Eq. 13.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public static double SlopeKpaPerC(double tempC) => 4098 * AtKpa(tempC) / Math.Pow(tempC + 237.3, 2);
}
