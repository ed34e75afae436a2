using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Statistics;

namespace EstateWater.Agronomy.Soil;

/// <summary>Without water, predawn tension climbs in a straight line with summed reference ET; how steeply tells how large the vine is for its soil.</summary>
/// <remarks>Holds below a fraction left of about 0.4, without rain, irrigation or supply from below.</remarks>
[Method(
    "Predawn water potential against summed reference ET",
    Source = "Gaudin, Roux & Tisseyre (2017), Agric. Water Manage. 182:13–23: straight line with a slope in proportion to Kcb∕TTSW; its factor follows from the fraction of transpirable soil water, constants from memory, to be checked",
    Check = "By hand: 0.4 over 150 mm is 0.001247 MPa for each mm, 0.0524 MPa in 42 mm")]
public static class PredawnDecline
{
    /// <summary>Fraction of the transpirable soil water below which transpiration falls in proportion to it. From memory, to be checked. [–]</summary>
    public const double FractionWhereTranspirationFalls = 0.4;

    private const double ClimbPerRatio = 1 / (FractionWhereTranspirationFalls * PredawnFromSoilWater.LogFallPerMpa);

    /// <summary>Climb of predawn tension. [MPa/mm of reference ET]</summary>
    /// <param name="basalCoefficient">Basal crop coefficient, 0–1.5. [–]</param>
    /// <param name="transpirableWaterMm">Total transpirable soil water, above 0. [mm]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Kcb ∕ (0.4 · 5.3452 · TTSW).</remarks>
    public static double ClimbMpaPerMm(double basalCoefficient, double transpirableWaterMm) =>
        ClimbPerRatio * Require.InRange(basalCoefficient, 0, 1.5, "(basal crop coefficient)") / Require.Above(transpirableWaterMm, 0, "mm");

    /// <summary>Basal coefficient over transpirable water, from a block's own readings of one dry spell. [1/mm]</summary>
    /// <param name="summedReferenceEtMm">Reference ET summed to each reading, at least three, not all alike. [mm]</param>
    /// <param name="predawnTensionsMpa">As many, 0–2. [MPa, positive]</param>
    /// <returns>0 or below where tension does not climb: the spell was not dry.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Too few, not as many, or outside their range.</exception>
    public static double RatioFromReadings(IReadOnlyList<double> summedReferenceEtMm, IReadOnlyList<double> predawnTensionsMpa)
    {
        foreach (var tension in Require.Values(predawnTensionsMpa, 3))
        {
            Require.InRange(tension, 0, 2, "MPa of predawn tension", nameof(predawnTensionsMpa));
        }

        return LeastSquares.Line(summedReferenceEtMm, predawnTensionsMpa).Coefficients[1] / ClimbPerRatio;
    }
}
