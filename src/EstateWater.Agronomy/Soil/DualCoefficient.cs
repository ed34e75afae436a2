using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>The dual crop coefficient: what the vine transpires and what the bare, wetted ground evaporates, apart.</summary>
[Method(
    "Dual crop coefficient with drip",
    Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 7, Eq. 71–79",
    Check = "FAO-56 Examples 31, 32, 33, 34, and 35 recomputed without rounding (its print has errors)")]
public static class DualCoefficient
{
    /// <summary>Largest crop coefficient after wetting. [–]</summary>
    /// <param name="basal">Basal crop coefficient, 0–1.5. [–]</param>
    /// <param name="windAt2M">Held to 1–6. [m/s]</param>
    /// <param name="rhMinPct">Held to 20–80. [%]</param>
    /// <param name="heightM">Above 0. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 72: max(1.2 + climate, Kcb + 0.05).</remarks>
    public static double Largest(double basal, double windAt2M, double rhMinPct, double heightM) =>
        Math.Max(
            1.2 + Canopy.CropCoefficient.ClimateCorrection(windAt2M, rhMinPct, heightM),
            Require.InRange(basal, 0, 1.5, "(basal crop coefficient)") + 0.05);

    /// <summary>Share of the ground under leaves. [–]</summary>
    /// <param name="basal">Basal crop coefficient, 0–1.5. [–]</param>
    /// <param name="largest">Above the one of bare ground. [–]</param>
    /// <param name="heightM">Above 0. [m]</param>
    /// <param name="bareGround">0–0.5. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 76: ((Kcb − Kcmin)∕(Kcmax − Kcmin))^(1 + 0.5h), not below 0.01 nor above 0.99.</remarks>
    public static double Cover(double basal, double largest, double heightM, double bareGround = Canopy.DensityCoefficient.BareGround)
    {
        Require.InRange(basal, 0, 1.5, "(basal crop coefficient)");
        Require.InRange(bareGround, 0, 0.5, "(crop coefficient)");
        Require.Above(largest, bareGround, "(crop coefficient)");
        var density = Math.Max(basal - bareGround, 0.01) / (largest - bareGround);
        return Math.Clamp(Math.Pow(density, 1 + (0.5 * Require.Above(heightM, 0, "m"))), 0.01, 0.99);
    }

    /// <summary>Share of the ground that is both bare and wetted. [–]</summary>
    /// <param name="cover">Share of the ground under leaves, 0 to below 1. [–]</param>
    /// <param name="wetted">Share of the ground that the last water wetted, above 0 to 1. [–]</param>
    /// <param name="isDrip">Whether drippers wetted it, mostly under the leaves.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 75: min(1 − fc, fw); for drip fw counts as fw(1 − ⅔fc).</remarks>
    public static double BareAndWetted(double cover, double wetted, bool isDrip)
    {
        Require.InRange(cover, 0, 0.99, "(share of the ground)");
        Require.InRange(wetted, 0.01, 1, "(share of the ground)");
        return Math.Min(1 - cover, isDrip ? wetted * (1 - (2.0 / 3 * cover)) : wetted);
    }

    /// <summary>Evaporation coefficient. [–]</summary>
    /// <param name="reduction">Reduction by dryness of the top soil, 0–1, see <see cref="EvaporationLayer.Reduction"/>. [–]</param>
    /// <param name="largest">Largest crop coefficient. [–]</param>
    /// <param name="basal">Basal crop coefficient, 0 to the largest. [–]</param>
    /// <param name="bareAndWetted">Share of the ground, 0–1. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 71: Ke = min(Kr(Kcmax − Kcb), few·Kcmax).</remarks>
    public static double Evaporation(double reduction, double largest, double basal, double bareAndWetted)
    {
        Require.InRange(reduction, 0, 1, "(share)");
        Require.InRange(largest, 0, 2, "(crop coefficient)");
        Require.InRange(basal, 0, largest, "(crop coefficient, not above the largest)");
        Require.InRange(bareAndWetted, 0, 1, "(share of the ground)");
        return Math.Min(reduction * (largest - basal), bareAndWetted * largest);
    }
}
