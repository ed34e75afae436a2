using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>A root zone as the daily balance sees it.</summary>
public sealed record RootZoneSettings
{
    /// <summary>Total available water of the whole root zone, above 0. [mm]</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not above 0 and finite.</exception>
    public required double TotalAvailableWaterMm { get; init => field = Require.Above(value, 0, "mm", nameof(TotalAvailableWaterMm)); }

    /// <summary>Share of it that is used before stress, at a crop ET of 5 mm a day, 0 to below 1. [–]</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0–0.999.</exception>
    public double DepletionFraction { get; init => field = Require.InRange(value, 0, 0.999, "(share)", nameof(DepletionFraction)); } = RootZone.WineGrapeDepletionFraction;

    /// <summary>Whether that share follows the day's crop ET (FAO-56, Table 22, footnote).</summary>
    public bool AdjustDepletionFraction { get; init; } = true;

    /// <summary>Share of the root zone that irrigation wets, above 0 to 1. [–]</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0.01–1.</exception>
    public double WettedFraction { get; init => field = Require.InRange(value, 0.01, 1, "(share)", nameof(WettedFraction)); } = 1;

    /// <summary>When in the day rain and irrigation count.</summary>
    public WaterEventTiming EventTiming { get; init; }

    /// <summary>Stress by salt, multiplied with the stress by lack of water, 0–1 (FAO-56, Eq. 91–92). [–]</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0–1.</exception>
    public double SaltStressCoefficient { get; init => field = Require.InRange(value, 0, 1, "(share)", nameof(SaltStressCoefficient)); } = 1;

    /// <summary>A depletion spread evenly over the wetted and the other part.</summary>
    /// <param name="depletionMm">0 to the total available water. [mm]</param>
    /// <exception cref="ArgumentOutOfRangeException">The depletion is outside its range.</exception>
    public RootZoneDepletion Even(double depletionMm)
    {
        Require.InRange(depletionMm, 0, TotalAvailableWaterMm, "mm (not above the total available water)");
        return new RootZoneDepletion(depletionMm * WettedFraction, depletionMm * (1 - WettedFraction));
    }

    /// <summary>Fraction of the transpirable soil water that is left, 0–1. [–]</summary>
    /// <param name="depletion">A depletion of this root zone.</param>
    public double FractionLeft(RootZoneDepletion depletion) => Math.Clamp(1 - (depletion.TotalMm / TotalAvailableWaterMm), 0, 1);
}

/// <summary>When in the day water counts.</summary>
/// <remarks>FAO-56 uses both: Eq. 88 at the end of the day, Example 38 "early in the day".</remarks>
public enum WaterEventTiming
{
    /// <summary>Before the day's ET: what the root zone cannot hold percolates at once.</summary>
    StartOfDay,

    /// <summary>After the day's ET.</summary>
    EndOfDay,
}

/// <summary>Water missing from the root zone, as depth over the whole ground.</summary>
/// <param name="WettedMm">Missing from the part that drippers wet; everything when all is wetted. [mm]</param>
/// <param name="OtherMm">Missing from the rest. [mm]</param>
public readonly record struct RootZoneDepletion(double WettedMm, double OtherMm = 0)
{
    /// <summary>Root zone depletion. [mm]</summary>
    public double TotalMm => WettedMm + OtherMm;
}

/// <summary>What a day brings.</summary>
/// <param name="ReferenceEtMm">0 or more. [mm]</param>
/// <param name="CropCoefficient">0 or more. [–]</param>
/// <param name="RainMm">That enters the ground, 0 or more. [mm]</param>
/// <param name="IrrigationMm">That enters the ground, as depth over the whole ground, 0 or more. [mm]</param>
public readonly record struct BalanceInputs(double ReferenceEtMm, double CropCoefficient, double RainMm = 0, double IrrigationMm = 0)
{
    internal void Validate()
    {
        Require.AtLeast(ReferenceEtMm, 0, "mm");
        Require.AtLeast(CropCoefficient, 0, "(crop coefficient)");
        Require.AtLeast(RainMm, 0, "mm");
        Require.AtLeast(IrrigationMm, 0, "mm");
    }
}

/// <summary>What a day left.</summary>
/// <param name="End">Depletion when it ends.</param>
/// <param name="CropEtMm">Crop ET without stress. [mm]</param>
/// <param name="ActualEtMm">Crop ET with stress. [mm]</param>
/// <param name="StressCoefficient">1 without stress, 0 with no water. [–]</param>
/// <param name="DepletionFraction">Share used before stress, as it held that day. [–]</param>
/// <param name="DeepPercolationMm">Lost below the roots. [mm]</param>
public readonly record struct BalanceDay(
    RootZoneDepletion End,
    double CropEtMm,
    double ActualEtMm,
    double StressCoefficient,
    double DepletionFraction,
    double DeepPercolationMm);
