using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Agronomy.Outlook;

/// <summary>Tension at solar noon from the air and the soil: a wet-soil baseline in VPD, and a climb with depletion.</summary>
/// <remarks>
/// <para>tension = intercept + slope · VPD + climb · (1 − f), f the share of available water left where the roots drink.</para>
/// <para>
/// Baselines: stem −0.237 − 0.0667 VPD (two points of Williams and Baeza 2007, quoted in Williams 2019); leaf slope
/// 0.08 MPa/kPa on wet soil (Myburgh 2018, p. 159), intercept −0.42 from memory, to be checked and refitted anyway.
/// Linear in soil water: Myburgh 2018, p. 156 (stem falls linearly with depletion, slope common to four varieties,
/// intercept the block's own); Williams et al. (midday leaf linear in volumetric soil water). The size of the climb is a
/// starting value of ours that the readings correct.
/// </para>
/// </remarks>
public static class TensionBaseline
{
    /// <summary>Rise of tension from full to empty, before fitting. [MPa]</summary>
    public const double ClimbMpa = 0.75;

    /// <summary>Tension of a full root zone in dry-free air. [MPa]</summary>
    public static double InterceptMpa(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf => 0.42,
        WaterPotentialMeasure.Stem => 0.237,
        WaterPotentialMeasure.Predawn => 0.05,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "leaf, stem or predawn"),
    };

    /// <summary>Rise of tension with the air's dryness. [MPa/kPa]</summary>
    /// <remarks>None before dawn, when stomata are shut.</remarks>
    public static double VpdSlopeMpaPerKpa(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf => 0.08,
        WaterPotentialMeasure.Stem => 0.0667,
        WaterPotentialMeasure.Predawn => 0,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "leaf, stem or predawn"),
    };

    /// <summary>Share of the climb that shows in a measure: midday potential falls about 1.2 times as far as predawn (σ in vine practice, ours).</summary>
    public static double ClimbShare(WaterPotentialMeasure measure) => measure == WaterPotentialMeasure.Predawn ? 1 / 1.2 : 1;
}
