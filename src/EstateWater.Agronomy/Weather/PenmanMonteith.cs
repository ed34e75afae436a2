using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>The FAO-56 Penman–Monteith equation itself, for the grass reference.</summary>
[Method("FAO-56 Penman–Monteith", Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 6 and 53", Check = "FAO-56 Examples 17, 18 and 20; Fallon, Nevada, 2015 (University of Idaho reference-ET calculator)")]
public static class PenmanMonteith
{
    /// <summary>ET_o of a day, or of a mean day of a month. [mm/d]</summary>
    /// <param name="tMeanC">(T_max + T_min)/2. [°C]</param>
    /// <param name="netRadiationMjPerM2">R_n. [MJ m⁻² d⁻¹]</param>
    /// <param name="soilHeatMjPerM2">G. [MJ m⁻² d⁻¹]</param>
    /// <param name="psychrometricKpaPerC">γ. [kPa/°C]</param>
    /// <param name="wind2MMPerS">u₂, 0 to 75. [m/s]</param>
    /// <param name="deficitKpa">e_s − e_a, 0 to 20. [kPa]</param>
    /// <remarks>
    /// <para>ET_o = [0.408 Δ (R_n − G) + γ 900 ∕ (T + 273) u₂ (e_s − e_a)] ∕ [Δ + γ (1 + 0.34 u₂)]. Allen et al. (1998) Eq. 6.</para>
    /// <para>Never below zero: dew is not counted as water given to the vine.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double DailyMm(
        double tMeanC, double netRadiationMjPerM2, double soilHeatMjPerM2, double psychrometricKpaPerC, double wind2MMPerS, double deficitKpa)
    {
        Require.InRange(netRadiationMjPerM2, -30, 60, "MJ/m²");
        Require.InRange(soilHeatMjPerM2, -20, 20, "MJ/m²");
        return Mm(900, tMeanC, netRadiationMjPerM2 - soilHeatMjPerM2, psychrometricKpaPerC, wind2MMPerS, deficitKpa);
    }

    /// <summary>ET_o of an hour. [mm/h]</summary>
    /// <param name="tempC">Mean of the hour. [°C]</param>
    /// <param name="netRadiationMjPerM2">R_n. [MJ m⁻² h⁻¹]</param>
    /// <param name="soilHeatMjPerM2">G. [MJ m⁻² h⁻¹]</param>
    /// <param name="psychrometricKpaPerC">γ. [kPa/°C]</param>
    /// <param name="wind2MMPerS">u₂, 0 to 75. [m/s]</param>
    /// <param name="deficitKpa">e°(T) − e_a, 0 to 20. [kPa]</param>
    /// <remarks>As Eq. 6 with 37 in place of 900. Allen et al. (1998) Eq. 53. Never below zero.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double HourlyMm(
        double tempC, double netRadiationMjPerM2, double soilHeatMjPerM2, double psychrometricKpaPerC, double wind2MMPerS, double deficitKpa)
    {
        Require.InRange(netRadiationMjPerM2, -2, 5, "MJ/m²");
        Require.InRange(soilHeatMjPerM2, -2, 5, "MJ/m²");
        return Mm(37, tempC, netRadiationMjPerM2 - soilHeatMjPerM2, psychrometricKpaPerC, wind2MMPerS, deficitKpa);
    }

    private static double Mm(double numerator, double tempC, double available, double gamma, double wind2M, double deficit)
    {
        Require.InRange(gamma, 0.02, 0.08, "kPa/°C", "psychrometricKpaPerC");
        Require.InRange(wind2M, 0, 75, "m/s", "wind2MMPerS");
        Require.InRange(deficit, 0, 20, "kPa", "deficitKpa");
        var slope = SaturationVapourPressure.SlopeKpaPerC(tempC);
        var radiative = ExtraterrestrialRadiation.MmPerMj * slope * available;
        var aerodynamic = gamma * numerator / (tempC + 273) * wind2M * deficit;
        return Math.Max(0, (radiative + aerodynamic) / (slope + (gamma * (1 + (0.34 * wind2M)))));
    }
}
