using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Reference evapotranspiration from temperature alone: a check, and a stopgap to be calibrated against Penman–Monteith.</summary>
[Method("Hargreaves", Source = "Hargreaves & Samani (1985), Appl. Eng. Agric. 1: 96–99; Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 52", Check = "FAO-56 Example 20; V. K. Mehta (2006), worked example")]
public static class Hargreaves
{
    /// <summary>ET_o of a day. [mm/d]</summary>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="tMaxC">Highest temperature. [°C]</param>
    /// <param name="extraterrestrialMjPerM2">R_a, 0 to 60. [MJ m⁻² d⁻¹]</param>
    /// <param name="tMeanC">Mean temperature; null for the mean of the extremes. [°C]</param>
    /// <remarks>ET_o = 0.0023 (T_mean + 17.8) √(T_max − T_min) R_a, R_a in mm. Never below zero.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double DailyMm(double tMinC, double tMaxC, double extraterrestrialMjPerM2, double? tMeanC = null)
    {
        WeatherInput.DayExtremes(tMinC, tMaxC);
        var mean = WeatherInput.AirTemperature(tMeanC ?? ((tMinC + tMaxC) / 2), nameof(tMeanC));
        var radiation = ExtraterrestrialRadiation.MmPerMj * Require.InRange(extraterrestrialMjPerM2, 0, 60, "MJ/m²");
        return Math.Max(0, 0.0023 * (mean + 17.8) * Math.Sqrt(tMaxC - tMinC) * radiation);
    }
}
