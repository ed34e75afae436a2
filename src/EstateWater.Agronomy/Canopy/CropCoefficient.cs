using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Canopy;

/// <summary>Crop coefficient of a vineyard: its water use without stress, as a share of reference ET.</summary>
[Method(
    "Crop coefficient from the shaded fraction, and for the climate",
    Source = "Williams & Ayars (2005), Agric. For. Meteorol. 132:201–211, the number from memory, to be checked; Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 62 and Table 12",
    Check = "FAO-56 Example 40; the straight line by hand")]
public static class CropCoefficient
{
    /// <summary>Crop coefficient for each unit of shaded fraction: 0.017 for each percent. [–]</summary>
    /// <remarks>Williams &amp; Ayars (2005). The straight line is published in the abstract; the number is from memory, to be checked; editable.</remarks>
    public const double WilliamsAyarsSlope = 1.7;

    /// <summary>Shaded fraction beyond which water use no longer grows. [–]</summary>
    public const double LargestShadedFraction = 0.75;

    /// <summary>FAO-56 wine grapes, Table 12, first weeks of the season. [–]</summary>
    public const double Fao56Initial = 0.30;

    /// <summary>FAO-56 wine grapes, Table 12, mid-season. [–]</summary>
    public const double Fao56Mid = 0.70;

    /// <summary>FAO-56 wine grapes, Table 12, end of season. [–]</summary>
    public const double Fao56End = 0.45;

    /// <summary>Crop coefficient from the share of the ground shaded at solar noon. [–]</summary>
    /// <param name="shadedFraction">0–1; above 0.75 it counts as 0.75. [–]</param>
    /// <param name="slope">Above 0, at most 3; the published one unless the block knows better. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Kc = 0.017 · percent shaded. Williams &amp; Ayars (2005), Agric. For. Meteorol. 132:201–211.</remarks>
    public static double FromShadedFraction(double shadedFraction, double slope = WilliamsAyarsSlope)
    {
        Require.InRange(shadedFraction, 0, 1, "(share of the ground)");
        Require.InRange(slope, 1e-6, 3, "(crop coefficient for full shade)");
        return slope * Math.Min(shadedFraction, LargestShadedFraction);
    }

    /// <summary>Table crop coefficient brought from the standard climate to the block's. [–]</summary>
    /// <param name="tableCoefficient">From a table, 0–1.5; up to 0.45 it stays as it is. [–]</param>
    /// <param name="windAt2M">Mean wind of the period, held to 1–6 as printed. [m/s]</param>
    /// <param name="rhMinPct">Mean of the daily lowest humidity, held to 20–80 as printed. [%]</param>
    /// <param name="heightM">Height of the vines, held to 0.1–10. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is negative, not finite, or a humidity above 100.</exception>
    /// <remarks>Allen et al. (1998), FAO-56, Eq. 62, 65, 70: Kc = Kc_tab + [0.04(u₂ − 2) − 0.004(RHmin − 45)](h∕3)^0.3.</remarks>
    public static double ForClimate(double tableCoefficient, double windAt2M, double rhMinPct, double heightM)
    {
        Require.InRange(tableCoefficient, 0, 1.5, "(crop coefficient)");
        return tableCoefficient <= 0.45 ? tableCoefficient : tableCoefficient + ClimateCorrection(windAt2M, rhMinPct, heightM);
    }

    internal static double ClimateCorrection(double windAt2M, double rhMinPct, double heightM)
    {
        var wind = Math.Clamp(Require.AtLeast(windAt2M, 0, "m/s"), 1, 6);
        var humidity = Math.Clamp(Require.InRange(rhMinPct, 0, 100, "%"), 20, 80);
        var height = Math.Clamp(Require.AtLeast(heightM, 0, "m"), 0.1, 10);
        return ((0.04 * (wind - 2)) - (0.004 * (humidity - 45))) * Math.Pow(height / 3, 0.3);
    }
}
