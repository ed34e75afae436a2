using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>The day's course of temperature from its extremes alone, by Campbell and Norman.</summary>
[Method("Hourly temperature from daily extremes (Campbell & Norman)", Source = "Campbell & Norman (1998), Environmental Biophysics, Eq. 2.2–2.3", Check = "Independent recomputation of eight hours of a day")]
public static class CampbellNorman
{
    /// <summary>Temperature at an hour. [°C]</summary>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="tMaxC">Highest temperature. [°C]</param>
    /// <param name="solarHour">Hours after solar midnight, 0 to 24. [h]</param>
    /// <remarks>T = T_max Γ + T_min (1 − Γ), Γ = 0.44 − 0.46 sin(0.9 + πt/12) + 0.11 sin(0.9 + πt/6). The mean of Γ over a day is 0.44.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double TemperatureC(double tMinC, double tMaxC, double solarHour)
    {
        WeatherInput.DayExtremes(tMinC, tMaxC);
        Require.InRange(solarHour, 0, 24, "h");
        var gamma = 0.44
            - (0.46 * Math.Sin(0.9 + (Math.PI * solarHour / 12)))
            + (0.11 * Math.Sin(0.9 + (Math.PI * solarHour / 6)));
        return (tMaxC * gamma) + (tMinC * (1 - gamma));
    }
}
