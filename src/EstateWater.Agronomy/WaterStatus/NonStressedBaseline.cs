using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>Midday tension of a vine with all the water it wants, which rises with the dryness of the air. A reference, not a target.</summary>
/// <param name="InterceptMpa">Tension at no vapour pressure deficit. [MPa, positive]</param>
/// <param name="SlopeMpaPerKpa">Rise for each kPa of vapour pressure deficit. [MPa/kPa]</param>
[Method(
    "Baseline of midday water potential in vapour pressure deficit",
    Source = "Williams & Baeza (2007), Am. J. Enol. Vitic. 58:173; stem quoted by Williams (2019); leaf slope in Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, p. 159. The leaf intercept is from memory, to be checked",
    Check = "Stem 0.37 MPa at 2 kPa and 0.57 MPa at 5 kPa; leaf slope 0.08 MPa/kPa")]
public sealed record NonStressedBaseline(double InterceptMpa, double SlopeMpaPerKpa)
{
    /// <summary>Stem: 0.37 MPa at 2 kPa, 0.57 MPa at 5 kPa.</summary>
    public static NonStressedBaseline Stem { get; } = new(0.237, 0.0667);

    /// <summary>Leaf: the slope is published, the intercept from memory, to be checked.</summary>
    public static NonStressedBaseline Leaf { get; } = new(0.42, 0.08);

    /// <summary>The shipped baseline of a midday measure.</summary>
    /// <param name="measure">Leaf or stem; before dawn the air's dryness does not set the tension.</param>
    /// <exception cref="ArgumentOutOfRangeException">Neither leaf nor stem.</exception>
    public static NonStressedBaseline For(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf => Leaf,
        WaterPotentialMeasure.Stem => Stem,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Expected Leaf or Stem: there is no baseline in vapour pressure deficit before dawn."),
    };

    /// <summary>Tension at a vapour pressure deficit. [MPa, positive]</summary>
    /// <param name="vpdKpa">At the time of the reading, 0–12. [kPa]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range.</exception>
    public double TensionMpa(double vpdKpa) => InterceptMpa + (SlopeMpaPerKpa * Require.InRange(vpdKpa, 0, 12, "kPa"));
}
