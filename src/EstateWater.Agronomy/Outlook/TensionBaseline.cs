using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Agronomy.Outlook;

/// <summary>Tension at solar noon from the air and the soil: a wet-soil baseline in VPD, and a climb with depletion.</summary>
/// <remarks>
/// <para>tension = light · (intercept + slope · VPD) + climb · (1 − f)ᵇ, f the share of available water left where the roots drink,
/// light from <see cref="Weather.MiddayLight"/> (1 before dawn).</para>
/// <para>
/// Leaf and stem begin at <see cref="NonStressedBaseline"/>; before dawn nothing but the soil sets it. Linear in soil water: Myburgh 2018, p. 156 (stem falls linearly with depletion, slope common to four varieties,
/// intercept the block's own); Williams et al. (midday leaf linear in volumetric soil water). The line may bend, by b = 1 before
/// any reading and more where soil holds its water and then gives out: tension stays low, then rises fast. The size of
/// the climb is a starting value of ours that the readings correct.
/// </para>
/// </remarks>
[Method(
    "Midday tension from soil water and air",
    Source = "Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, p. 156, for the straight line in soil water; the size of the climb is a starting value of this program that the readings correct",
    Check = "More water never raises tension and drier air never lowers it, for every member")]
public static class TensionBaseline
{
    /// <summary>Rise of tension from full to empty, before fitting. [MPa]</summary>
    public const double ClimbMpa = 0.75;

    /// <summary>Tension of a full root zone in saturated air. [MPa]</summary>
    public static double InterceptMpa(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf or WaterPotentialMeasure.Stem => NonStressedBaseline.For(measure).InterceptMpa,
        WaterPotentialMeasure.Predawn => 0.05,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "leaf, stem or predawn"),
    };

    /// <summary>Rise of tension with the air's dryness. [MPa/kPa]</summary>
    /// <remarks>None before dawn, when stomata are shut.</remarks>
    public static double VpdSlopeMpaPerKpa(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf or WaterPotentialMeasure.Stem => NonStressedBaseline.For(measure).SlopeMpaPerKpa,
        WaterPotentialMeasure.Predawn => 0,
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "leaf, stem or predawn"),
    };

    /// <summary>Share of the climb that shows in a measure: midday potential falls about 1.2 times as far as predawn (σ in vine practice, ours).</summary>
    public static double ClimbShare(WaterPotentialMeasure measure) => measure == WaterPotentialMeasure.Predawn ? 1 / 1.2 : 1;
}
