using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Radiation that stays at the reference surface, and the heat that goes into the ground.</summary>
[Method("Net radiation and soil heat flux", Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 38–40, 43–46", Check = "FAO-56 Examples 11–13, 16–19")]
public static class NetRadiation
{
    /// <summary>α: share of the sun's radiation that the grass reference reflects. [–]</summary>
    public const double Albedo = 0.23;

    private const double StefanBoltzmannDaily = 4.903e-9;
    private const double StefanBoltzmannHourly = 2.043e-10;
    private const double KelvinOffset = 273.16;

    /// <summary>R_ns: net shortwave. [MJ/m² over the period of the input]</summary>
    /// <param name="solarMjPerM2">R_s, 0 to 60. [MJ/m²]</param>
    /// <remarks>R_ns = 0.77 R_s. Allen et al. (1998) Eq. 38.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range, or not a number.</exception>
    public static double ShortwaveMjPerM2(double solarMjPerM2) => (1 - Albedo) * Require.InRange(solarMjPerM2, 0, 60, "MJ/m²");

    /// <summary>R_nl of a day: longwave lost to the sky. [MJ m⁻² d⁻¹]</summary>
    /// <param name="tMinC">Lowest temperature. [°C]</param>
    /// <param name="tMaxC">Highest temperature. [°C]</param>
    /// <param name="vapourKpa">Actual vapour pressure, 0 to 20. [kPa]</param>
    /// <param name="clearness">R_s/R_so; taken as 0.3 below that and as 1 above. [–]</param>
    /// <remarks>
    /// <para>R_nl = σ ½(T_max,K⁴ + T_min,K⁴)(0.34 − 0.14 √e_a)(1.35 R_s/R_so − 0.35). Allen et al. (1998) Eq. 39.</para>
    /// <para>FAO-56 names the upper limit of R_s/R_so only; the lower one is of ASCE-EWRI (2005): a dark sky does not warm the ground.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double LongwaveDailyMjPerM2(double tMinC, double tMaxC, double vapourKpa, double clearness)
    {
        WeatherInput.DayExtremes(tMinC, tMaxC);
        var emission = StefanBoltzmannDaily * (Math.Pow(tMaxC + KelvinOffset, 4) + Math.Pow(tMinC + KelvinOffset, 4)) / 2;
        return emission * NetEmissivity(vapourKpa) * Cloudiness(clearness);
    }

    /// <summary>R_nl of an hour. [MJ m⁻² h⁻¹]</summary>
    /// <param name="tempC">Mean of the hour. [°C]</param>
    /// <param name="vapourKpa">Actual vapour pressure, 0 to 20. [kPa]</param>
    /// <param name="clearness">R_s/R_so, at night that of the hours before sunset; held within 0.3 to 1. [–]</param>
    /// <remarks>Allen et al. (1998) Eq. 39 with σ = 2.043×10⁻¹⁰ MJ K⁻⁴ m⁻² h⁻¹ and the hour's temperature.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double LongwaveHourlyMjPerM2(double tempC, double vapourKpa, double clearness) =>
        StefanBoltzmannHourly * Math.Pow(WeatherInput.AirTemperature(tempC) + KelvinOffset, 4) * NetEmissivity(vapourKpa) * Cloudiness(clearness);

    /// <summary>R_s/R_so; 1 where the sun does not rise. [–]</summary>
    /// <param name="solarMjPerM2">R_s. [MJ/m²]</param>
    /// <param name="clearSkyMjPerM2">R_so. [MJ/m²]</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside 0 to 60 MJ/m².</exception>
    public static double Clearness(double solarMjPerM2, double clearSkyMjPerM2)
    {
        Require.InRange(solarMjPerM2, 0, 60, "MJ/m²");
        Require.InRange(clearSkyMjPerM2, 0, 60, "MJ/m²");
        return clearSkyMjPerM2 > 0 ? solarMjPerM2 / clearSkyMjPerM2 : 1;
    }

    /// <summary>G of a month: heat into the ground. [MJ m⁻² d⁻¹]</summary>
    /// <param name="previousMonthC">Mean of the month before. [°C]</param>
    /// <param name="nextMonthC">Mean of the month after. [°C]</param>
    /// <remarks>G = 0.07 (T_i+1 − T_i−1). Allen et al. (1998) Eq. 43. A day's G is taken as zero (Eq. 42).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double SoilHeatMonthlyMjPerM2(double previousMonthC, double nextMonthC) =>
        0.07 * (WeatherInput.AirTemperature(nextMonthC) - WeatherInput.AirTemperature(previousMonthC));

    /// <summary>G of a month while the next is not known yet. [MJ m⁻² d⁻¹]</summary>
    /// <param name="previousMonthC">Mean of the month before. [°C]</param>
    /// <param name="monthC">Mean of the month. [°C]</param>
    /// <remarks>G = 0.14 (T_i − T_i−1). Allen et al. (1998) Eq. 44.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double SoilHeatMonthlySoFarMjPerM2(double previousMonthC, double monthC) =>
        0.14 * (WeatherInput.AirTemperature(monthC) - WeatherInput.AirTemperature(previousMonthC));

    /// <summary>How much of its own emission the surface loses through the vapour above it. [–]</summary>
    private static double NetEmissivity(double vapourKpa) => Math.Max(0, 0.34 - (0.14 * Math.Sqrt(Require.InRange(vapourKpa, 0, 20, "kPa"))));

    /// <summary>How much the clouds leave of that loss. [–]</summary>
    private static double Cloudiness(double clearness) => (1.35 * Math.Clamp(Require.InRange(clearness, 0, double.MaxValue, "as R_s/R_so"), 0.3, 1)) - 0.35;
}
