using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>What salt in the root zone costs, and the water that carries it away. Allen et al. (1998), FAO-56, chapter 8.</summary>
[Method(
    "Salt stress and leaching requirement",
    Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 89–93, Tables 23 and 24, p. 180",
    Check = "FAO-56 Examples 39 and 44")]
public static class SaltStress
{
    /// <summary>FAO-56 Table 23, grapes: salinity of the saturation extract from which yield falls. [dS/m]</summary>
    public const double GrapeThresholdDsPerM = 1.5;

    /// <summary>FAO-56 Table 23, grapes: yield lost for each dS/m above the threshold. [%/(dS/m)]</summary>
    public const double GrapeSlopePct = 9.6;

    /// <summary>FAO-56 Table 24, grapes: yield response factor of the season. [–]</summary>
    public const double GrapeYieldResponse = 0.85;

    /// <summary>Yield as a share of what it were without salt, 0–1. [–]</summary>
    /// <param name="soilEcDsPerM">Salinity of the saturation extract, 0 or more. [dS/m]</param>
    /// <param name="thresholdDsPerM">0 or more. [dS/m]</param>
    /// <param name="slopePct">Above 0. [%/(dS/m)]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 89: Ya∕Ym = 1 − (ECe − threshold)·b∕100.</remarks>
    public static double RelativeYield(double soilEcDsPerM, double thresholdDsPerM = GrapeThresholdDsPerM, double slopePct = GrapeSlopePct) =>
        Math.Clamp(1 - (Excess(soilEcDsPerM, thresholdDsPerM) * Require.Above(slopePct, 0, "%/(dS/m)") / 100), 0, 1);

    /// <summary>Stress coefficient of salt, 0–1; multiply it with the one of water (Eq. 92). [–]</summary>
    /// <param name="soilEcDsPerM">Salinity of the saturation extract, 0 or more. [dS/m]</param>
    /// <param name="thresholdDsPerM">0 or more. [dS/m]</param>
    /// <param name="slopePct">Above 0. [%/(dS/m)]</param>
    /// <param name="yieldResponse">Ky, above 0. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 91: Ks = 1 − b(ECe − threshold) ∕ (100Ky).</remarks>
    public static double Coefficient(
        double soilEcDsPerM,
        double thresholdDsPerM = GrapeThresholdDsPerM,
        double slopePct = GrapeSlopePct,
        double yieldResponse = GrapeYieldResponse)
    {
        Require.Above(slopePct, 0, "%/(dS/m)");
        return Math.Clamp(1 - (slopePct * Excess(soilEcDsPerM, thresholdDsPerM) / (100 * Require.Above(yieldResponse, 0, "(yield response)"))), 0, 1);
    }

    /// <summary>Crop ET as a share of the full one that goes with a share of the yield. [–]</summary>
    /// <param name="relativeYield">0–1. [–]</param>
    /// <param name="yieldResponse">Ky, above 0. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 90 solved for ET: 1 − (1 − Ya∕Ym)∕Ky, not below 0.</remarks>
    public static double RelativeEtFromYield(double relativeYield, double yieldResponse = GrapeYieldResponse) =>
        Math.Max(0, 1 - ((1 - Require.InRange(relativeYield, 0, 1, "(share)")) / Require.Above(yieldResponse, 0, "(yield response)")));

    /// <summary>Share of the water that must pass below the roots to hold the salt. [–]</summary>
    /// <param name="waterEcDsPerM">Salinity of the irrigation water, 0 to below 5·<paramref name="wantedSoilEcDsPerM"/>∕2. [dS/m]</param>
    /// <param name="wantedSoilEcDsPerM">Salinity of the saturation extract that is accepted, above 0. [dS/m]</param>
    /// <returns>0 to below 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range, or no amount of such water could hold the salt.</exception>
    /// <remarks>LR = ECw ∕ (5·ECe − ECw), quoted in FAO-56, p. 180; assumes roots take 40, 30, 20 and 10 % from the four quarters of the root zone.</remarks>
    public static double LeachingRequirement(double waterEcDsPerM, double wantedSoilEcDsPerM = GrapeThresholdDsPerM)
    {
        Require.Above(wantedSoilEcDsPerM, 0, "dS/m");
        Require.InRange(waterEcDsPerM, 0, 2.475 * wantedSoilEcDsPerM, "dS/m (saltier water cannot hold the soil there)");
        return waterEcDsPerM / ((5 * wantedSoilEcDsPerM) - waterEcDsPerM);
    }

    /// <summary>Salinity of the saturation extract in the long run. [dS/m]</summary>
    /// <param name="waterEcDsPerM">Salinity of the irrigation water, 0 or more. [dS/m]</param>
    /// <param name="leachingFraction">Share of the water that passes below the roots, above 0 to 1. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 93: ECe = (1 + LF)∕LF · ECw∕5.</remarks>
    public static double SteadySoilEc(double waterEcDsPerM, double leachingFraction)
    {
        Require.InRange(leachingFraction, 0.01, 1, "(share)");
        return (1 + leachingFraction) / leachingFraction * Require.AtLeast(waterEcDsPerM, 0, "dS/m") / 5;
    }

    private static double Excess(double soilEcDsPerM, double thresholdDsPerM) =>
        Math.Max(0, Require.AtLeast(soilEcDsPerM, 0, "dS/m") - Require.AtLeast(thresholdDsPerM, 0, "dS/m"));
}
