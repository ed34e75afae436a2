using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Drip;

/// <summary>Amounts and hours of one set.</summary>
[Method(
    "Set length, leaching and water lost below the roots",
    Source = "Water balance of the wetted soil; gross amount with leaching after Keller & Bliesner (1990), Sprinkle and Trickle Irrigation (from memory, to be checked)",
    Check = "By hand: 84.28 L of room at 1 gal/h is 22.3 h; 12 mm at 0.9 and a leaching requirement of 0.1538 is 15.7576 mm")]
public static class SetLength
{
    /// <summary>Longest set before water passes below the roots. [h]</summary>
    /// <param name="wettedFraction">Share of the ground that drippers wet, above 0 to 1. [–]</param>
    /// <param name="groundPerVineM2">Above 0. [m²]</param>
    /// <param name="rootDepthM">Above 0. [m]</param>
    /// <param name="missingWaterContent">Field capacity less the water content now, 0–0.6. [m³/m³]</param>
    /// <param name="flowPerVineLPerH">Above 0. [L/h]</param>
    /// <param name="efficiency">Above 0 to 1. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double LongestUsefulH(
        double wettedFraction, double groundPerVineM2, double rootDepthM, double missingWaterContent, double flowPerVineLPerH, double efficiency = 1)
    {
        Require.InRange(wettedFraction, 0.01, 1, "(share)");
        Require.Above(groundPerVineM2, 0, "m²");
        Require.InRange(rootDepthM, 0.01, 10, "m");
        Require.InRange(missingWaterContent, 0, 0.6, "m³/m³");
        var roomL = 1000 * wettedFraction * groundPerVineM2 * rootDepthM * missingWaterContent;
        return roomL / (Require.Above(flowPerVineLPerH, 0, "L/h") * Require.InRange(efficiency, 0.01, 1, "(share)"));
    }

    /// <summary>Depth to apply so that a net depth reaches the roots and salt is carried below them. [mm]</summary>
    /// <param name="netMm">0 or more. [mm]</param>
    /// <param name="uniformity">Emission uniformity, above 0 to 1. [–]</param>
    /// <param name="leachingRequirement">0 to 0.9. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Up to a requirement of 0.1 what passes below the roots by unevenness leaches enough: net∕EU; above, net∕(EU(1 − LR)).</remarks>
    public static double GrossWithLeachingMm(double netMm, double uniformity, double leachingRequirement)
    {
        Require.InRange(leachingRequirement, 0, 0.9, "(share)");
        return DripLine.GrossMm(netMm, uniformity) / (leachingRequirement <= 0.1 ? 1 : 1 - leachingRequirement);
    }
}
