using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>Water that a root zone holds for the vine, and how the vine feels its lack. Allen et al. (1998), FAO-56, chapter 8.</summary>
[Method(
    "Available water, depletion fraction and stress coefficient",
    Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 82–84 and Table 22",
    Check = "FAO-56 Examples 36 and 39")]
public static class RootZone
{
    /// <summary>FAO-56 Table 22, wine grapes: share of the total available water used before stress, at 5 mm a day. [–]</summary>
    public const double WineGrapeDepletionFraction = 0.45;

    /// <summary>Total available water. [mm]</summary>
    /// <param name="fieldCapacity">0–1. [m³/m³]</param>
    /// <param name="wiltingPoint">0 to field capacity. [m³/m³]</param>
    /// <param name="rootDepthM">Above 0, at most 10. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 82: TAW = 1000(θFC − θWP)Zr.</remarks>
    public static double TotalAvailableMm(double fieldCapacity, double wiltingPoint, double rootDepthM)
    {
        Require.InRange(fieldCapacity, 0, 1, "m³/m³");
        Require.InRange(wiltingPoint, 0, fieldCapacity, "m³/m³ (not above field capacity)");
        return 1000 * (fieldCapacity - wiltingPoint) * Require.InRange(rootDepthM, 0.01, 10, "m");
    }

    /// <summary>Readily available water: what may be used before stress. [mm]</summary>
    /// <param name="totalAvailableMm">Above 0. [mm]</param>
    /// <param name="depletionFraction">0–1. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 83: RAW = p·TAW.</remarks>
    public static double ReadilyAvailableMm(double totalAvailableMm, double depletionFraction) =>
        Require.Above(totalAvailableMm, 0, "mm") * Require.InRange(depletionFraction, 0, 1, "(share)");

    /// <summary>Depletion fraction on a day of other crop ET than 5 mm. [–]</summary>
    /// <param name="tableFraction">Table value, at 5 mm a day, 0–1. [–]</param>
    /// <param name="cropEtMm">Crop ET without stress, 0 or more. [mm/d]</param>
    /// <returns>Held to 0.1–0.8, as printed.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Table 22, footnote: p = p_tab + 0.04(5 − ETc).</remarks>
    public static double AdjustedDepletionFraction(double tableFraction, double cropEtMm)
    {
        Require.InRange(tableFraction, 0, 1, "(share)");
        return Math.Clamp(tableFraction + (0.04 * (5 - Require.AtLeast(cropEtMm, 0, "mm/d"))), 0.1, 0.8);
    }

    /// <summary>Stress coefficient: crop ET as a share of what it were without stress, 0–1. [–]</summary>
    /// <param name="depletionMm">Root zone depletion, 0 to the total available water. [mm]</param>
    /// <param name="totalAvailableMm">Above 0. [mm]</param>
    /// <param name="depletionFraction">0 to below 1. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 84: Ks = (TAW − Dr) ∕ ((1 − p)TAW) for Dr above RAW, else 1.</remarks>
    public static double StressCoefficient(double depletionMm, double totalAvailableMm, double depletionFraction)
    {
        Require.Above(totalAvailableMm, 0, "mm");
        Require.InRange(depletionMm, 0, totalAvailableMm, "mm (not above the total available water)");
        Require.InRange(depletionFraction, 0, 0.999, "(share)");
        return Math.Min(1, (totalAvailableMm - depletionMm) / ((1 - depletionFraction) * totalAvailableMm));
    }
}
