using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>Restates a midday reading to a reference day, so that readings of a hot and a mild day compare. Show both; the reading itself stays.</summary>
/// <remarks>
/// <para>Dry vines answer the air much less than wet ones: 0.08 against 0.02 MPa for each kPa. The published change is at a leaf tension of 1.2 MPa;
/// here it runs from 1.0 to 1.2 MPa (stem 0.8 to 1.0), so that two readings that are close stay close. That ramp is ours.</para>
/// </remarks>
[Method(
    "Reading restated to a reference vapour pressure deficit",
    Source = "Slopes of Williams & Baeza (2007), in Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, p. 159: wet soil 0.08, deficit 0.02 MPa/kPa for leaves; the ramp between is ours",
    Check = "By hand: 0.95 MPa at 4.5 kPa and 0.067 MPa/kPa is 0.8495 MPa at 3 kPa")]
public static class ReferenceVpd
{
    /// <summary>The reference day. [kPa]</summary>
    public const double ReferenceKpa = 3;

    /// <summary>Slope of a vine under deficit, leaf or stem. [MPa/kPa]</summary>
    public const double DeficitSlopeMpaPerKpa = 0.02;

    /// <summary>How much the tension of such a vine moves with the air. [MPa/kPa]</summary>
    /// <param name="measure">Leaf or stem.</param>
    /// <param name="tensionMpa">0–10. [MPa, positive]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double SlopeMpaPerKpa(WaterPotentialMeasure measure, double tensionMpa)
    {
        var wet = NonStressedBaseline.For(measure).SlopeMpaPerKpa;
        var rampFrom = measure == WaterPotentialMeasure.Leaf ? 1.0 : 0.8;
        var dryness = Math.Clamp((Require.InRange(tensionMpa, 0, 10, "MPa of tension") - rampFrom) / 0.2, 0, 1);
        return wet + (dryness * (DeficitSlopeMpaPerKpa - wet));
    }

    /// <summary>The reading as it would have been on a day of the reference vapour pressure deficit. [MPa, positive]</summary>
    /// <param name="measure">Leaf or stem.</param>
    /// <param name="tensionMpa">As read, 0–10. [MPa, positive]</param>
    /// <param name="vpdKpa">At the time of the reading, 0–12. [kPa]</param>
    /// <param name="referenceKpa">0–12. [kPa]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double Restate(WaterPotentialMeasure measure, double tensionMpa, double vpdKpa, double referenceKpa = ReferenceKpa) =>
        WithSlope(tensionMpa, vpdKpa, SlopeMpaPerKpa(measure, tensionMpa), referenceKpa);

    /// <summary>The same with the block's own slope. [MPa, positive]</summary>
    /// <param name="tensionMpa">As read, 0–10. [MPa, positive]</param>
    /// <param name="vpdKpa">At the time of the reading, 0–12. [kPa]</param>
    /// <param name="slopeMpaPerKpa">0–1. [MPa/kPa]</param>
    /// <param name="referenceKpa">0–12. [kPa]</param>
    /// <returns>Not below 0.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static double WithSlope(double tensionMpa, double vpdKpa, double slopeMpaPerKpa, double referenceKpa = ReferenceKpa)
    {
        Require.InRange(tensionMpa, 0, 10, "MPa of tension");
        Require.InRange(vpdKpa, 0, 12, "kPa");
        Require.InRange(slopeMpaPerKpa, 0, 1, "MPa/kPa");
        Require.InRange(referenceKpa, 0, 12, "kPa");
        return Math.Max(0, tensionMpa - (slopeMpaPerKpa * (vpdKpa - referenceKpa)));
    }
}
