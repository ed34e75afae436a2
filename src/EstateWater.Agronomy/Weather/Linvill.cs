using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>The course of temperature from sunrise to sunrise: a sine by day, a logarithm by night. The form to prefer.</summary>
/// <remarks>Keeps both extremes, is continuous, and runs into tomorrow's lowest.</remarks>
[Method("Hourly temperature from daily extremes (Linvill)", Source = "Linvill (1990), HortScience 25: 14–16", Check = "Independent recomputation of eight hours of a day; both extremes met")]
public static class Linvill
{
    /// <summary>Temperature at a time after sunrise. [°C]</summary>
    /// <param name="tMinC">Lowest, at sunrise. [°C]</param>
    /// <param name="tMaxC">Highest, two hours after solar noon. [°C]</param>
    /// <param name="nextTMinC">Lowest at the next sunrise. [°C]</param>
    /// <param name="dayLengthH">Y: from rise to set, 4 to 20. [h]</param>
    /// <param name="hoursAfterSunrise">0 to 24. [h]</param>
    /// <remarks>
    /// <para>Day: T = T_min + (T_max − T_min) sin[π t ∕ (Y + 4)]. Night: T = T_s − (T_s − T_min,next) ln(n + 1) ∕ ln(24 − Y + 1), n hours since sunset.</para>
    /// <para>The shortest day is 4 h because the sine must reach its top before sunset.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double TemperatureC(double tMinC, double tMaxC, double nextTMinC, double dayLengthH, double hoursAfterSunrise)
    {
        WeatherInput.DayExtremes(tMinC, tMaxC);
        WeatherInput.AirTemperature(nextTMinC);
        Require.InRange(dayLengthH, 4, 20, "h");
        Require.InRange(hoursAfterSunrise, 0, 24, "h");
        if (hoursAfterSunrise <= dayLengthH)
        {
            return Day(tMinC, tMaxC, dayLengthH, hoursAfterSunrise);
        }

        var sunset = Day(tMinC, tMaxC, dayLengthH, dayLengthH);
        var fallen = Math.Log(hoursAfterSunrise - dayLengthH + 1) / Math.Log(24 - dayLengthH + 1);
        return sunset - ((sunset - nextTMinC) * fallen);
    }

    private static double Day(double tMin, double tMax, double dayLength, double hours) =>
        tMin + ((tMax - tMin) * Math.Sin(Math.PI * hours / (dayLength + 4)));
}
