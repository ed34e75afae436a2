using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Global radiation at the ground: under a clear sky, from sunshine hours, or from the day's temperature range. [MJ m⁻² d⁻¹]</summary>
[Method("Global radiation, clear sky, from sunshine and from temperature", Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 35, 37 and 50; ASCE-EWRI (2005), App. D, for the clear sky with turbidity", Check = "FAO-56 Examples 10, 15 and 18; Fallon, Nevada, 1 July 2015 (Bureau of Reclamation record, RefET test constants)")]
public static class SolarRadiation
{
    /// <summary>k_Rs inland. [°C^−0.5]</summary>
    public const double InteriorCoefficient = 0.16;

    /// <summary>R_s from hours of sunshine. [MJ m⁻² d⁻¹]</summary>
    /// <param name="extraterrestrialMjPerM2">R_a. [MJ m⁻² d⁻¹]</param>
    /// <param name="sunshineH">n, 0 to the daylight hours. [h]</param>
    /// <param name="daylightH">N, 0 to 24. [h]</param>
    /// <remarks>R_s = (0.25 + 0.50 n/N) R_a. Allen et al. (1998) Eq. 35.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double FromSunshineMjPerM2(double extraterrestrialMjPerM2, double sunshineH, double daylightH)
    {
        Extraterrestrial(extraterrestrialMjPerM2);
        Require.InRange(sunshineH, 0, Require.InRange(daylightH, 0, 24, "h"), "h, the daylight being the most");
        return daylightH > 0 ? (0.25 + (0.50 * sunshineH / daylightH)) * extraterrestrialMjPerM2 : 0;
    }

    /// <summary>R_so: the most that a clear sky lets through. [MJ m⁻² d⁻¹]</summary>
    /// <param name="extraterrestrialMjPerM2">R_a. [MJ m⁻² d⁻¹]</param>
    /// <param name="elevationM">Above sea level, −500 to 6000. [m]</param>
    /// <remarks>R_so = (0.75 + 2×10⁻⁵ z) R_a. Allen et al. (1998) Eq. 37.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double ClearSkyMjPerM2(double extraterrestrialMjPerM2, double elevationM)
    {
        Require.InRange(elevationM, -500, 6000, "m");
        return (0.75 + (2e-5 * elevationM)) * Extraterrestrial(extraterrestrialMjPerM2);
    }

    /// <summary>R_so of a day with the water vapour and the sun's height taken into account. [MJ m⁻² d⁻¹]</summary>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <param name="pressureKpa">Air pressure, 30 to 110. [kPa]</param>
    /// <param name="vapourKpa">Actual vapour pressure, 0 to 20. [kPa]</param>
    /// <remarks>
    /// <para>R_so = (K_B + K_D) R_a; K_B = 0.98 exp[−0.00146 P ∕ sin β − 0.075 (W ∕ sin β)^0.4]; W = 0.14 e_a P + 2.1; K_D = 0.35 − 0.36 K_B;
    /// sin β = sin[0.85 + 0.3 φ sin(2πJ/365 − 1.39) − 0.42 φ²]. ASCE-EWRI (2005), App. D, clear air (K_t = 1), K_B of at least 0.15.</para>
    /// <para>The simple form differs from it by up to about 0.1 mm of a day's evapotranspiration.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double ClearSkyWithVapourMjPerM2(double latitudeDegrees, int dayOfYear, double pressureKpa, double vapourKpa)
    {
        Require.InRange(pressureKpa, 30, 110, "kPa");
        Require.InRange(vapourKpa, 0, 20, "kPa");
        var phi = double.DegreesToRadians(WeatherInput.Latitude(latitudeDegrees));
        var seasonal = Math.Sin((2 * Math.PI * WeatherInput.DayOfYear(dayOfYear) / 365) - 1.39);
        var sinElevation = Math.Max(0.01, Math.Sin(0.85 + (0.3 * phi * seasonal) - (0.42 * phi * phi)));
        var water = (0.14 * vapourKpa * pressureKpa) + 2.1;
        var beam = 0.98 * Math.Exp((-0.00146 * pressureKpa / sinElevation) - (0.075 * Math.Pow(water / sinElevation, 0.4)));
        beam = Math.Max(0.15, beam);
        return (beam + 0.35 - (0.36 * beam)) * ExtraterrestrialRadiation.DailyMjPerM2(latitudeDegrees, dayOfYear);
    }

    /// <summary>R_s estimated from how far the day warmed; never above the clear sky. [MJ m⁻² d⁻¹]</summary>
    /// <param name="extraterrestrialMjPerM2">R_a. [MJ m⁻² d⁻¹]</param>
    /// <param name="clearSkyMjPerM2">R_so, the cap. [MJ m⁻² d⁻¹]</param>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="tMaxC">Highest temperature. [°C]</param>
    /// <param name="coefficient">k_Rs, 0.10 to 0.25: 0.16 inland, 0.19 near a coast. [°C^−0.5]</param>
    /// <remarks>R_s = k_Rs √(T_max − T_min) R_a. Hargreaves and Samani; Allen et al. (1998) Eq. 50.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double FromTemperatureRangeMjPerM2(
        double extraterrestrialMjPerM2, double clearSkyMjPerM2, double tMinC, double tMaxC, double coefficient = InteriorCoefficient)
    {
        Extraterrestrial(extraterrestrialMjPerM2);
        Extraterrestrial(clearSkyMjPerM2);
        WeatherInput.DayExtremes(tMinC, tMaxC);
        Require.InRange(coefficient, 0.10, 0.25, "°C^−0.5");
        return Math.Min(clearSkyMjPerM2, coefficient * Math.Sqrt(tMaxC - tMinC) * extraterrestrialMjPerM2);
    }

    private static double Extraterrestrial(double mjPerM2) => Require.InRange(mjPerM2, 0, 60, "MJ/m²", "radiation");
}
