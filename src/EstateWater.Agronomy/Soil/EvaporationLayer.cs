using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Soil;

/// <summary>The top soil that dries by evaporation.</summary>
/// <remarks>Allen et al. (1998), FAO-56, Eq. 73–79; water counts early in the day.</remarks>
[Method(
    "Evaporation from the top soil",
    Source = "Allen et al. (1998), FAO Irrigation and Drainage Paper 56, Eq. 73–79",
    Check = "FAO-56 Example 31, and 35 recomputed without rounding")]
public sealed record EvaporationLayer
{
    /// <summary>Water that evaporates between wet and air-dry, above 0. [mm]</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range.</exception>
    public required double TotalEvaporableMm { get; init => field = Require.InRange(value, 0.1, 100, "mm", nameof(TotalEvaporableMm)); }

    /// <summary>The first part of it, which evaporates without hindrance; below the total. [mm]</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range.</exception>
    public required double ReadilyEvaporableMm { get; init => field = Require.InRange(value, 0, 50, "mm", nameof(ReadilyEvaporableMm)); }

    /// <summary>Evaporable water of a top soil. [mm]</summary>
    /// <param name="fieldCapacity">0–1. [m³/m³]</param>
    /// <param name="wiltingPoint">0 to field capacity. [m³/m³]</param>
    /// <param name="depthM">0.10–0.15 as printed; 0.05–0.3 taken. [m]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 73: TEW = 1000(θFC − 0.5θWP)Ze.</remarks>
    public static double TotalMm(double fieldCapacity, double wiltingPoint, double depthM)
    {
        Require.InRange(fieldCapacity, 0, 1, "m³/m³");
        Require.InRange(wiltingPoint, 0, fieldCapacity, "m³/m³ (not above field capacity)");
        return 1000 * (fieldCapacity - (0.5 * wiltingPoint)) * Require.InRange(depthM, 0.05, 0.3, "m");
    }

    /// <summary>Reduction of evaporation by dryness, 0–1. [–]</summary>
    /// <param name="depletionMm">0 to the total. [mm]</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside its range, or a readily evaporable water that is not below the total.</exception>
    /// <remarks>Eq. 74: Kr = (TEW − De)∕(TEW − REW), 1 up to REW.</remarks>
    public double Reduction(double depletionMm)
    {
        Require.InRange(depletionMm, 0, TotalEvaporableMm, "mm (not above the total)");
        Require.Above(TotalEvaporableMm, ReadilyEvaporableMm, "mm (readily evaporable)", nameof(TotalEvaporableMm));
        return Math.Min(1, (TotalEvaporableMm - depletionMm) / (TotalEvaporableMm - ReadilyEvaporableMm));
    }

    /// <summary>One day of the bare, wetted ground.</summary>
    /// <param name="startDepletionMm">When the day starts, 0 to the total. [mm]</param>
    /// <param name="ground">What covers and wets it.</param>
    /// <param name="referenceEtMm">0 or more. [mm]</param>
    /// <param name="rainMm">0 or more. [mm]</param>
    /// <param name="irrigationMm">As depth over the whole ground, 0 or more. [mm]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>Eq. 77–79: De = De,start − P − I∕fw + E∕few + DPe, no transpiration from the top soil.</remarks>
    public EvaporationDay Step(double startDepletionMm, EvaporatingGround ground, double referenceEtMm, double rainMm = 0, double irrigationMm = 0)
    {
        ArgumentNullException.ThrowIfNull(ground);
        Require.AtLeast(referenceEtMm, 0, "mm");
        var waterMm = Require.AtLeast(rainMm, 0, "mm") + (Require.AtLeast(irrigationMm, 0, "mm") / Require.InRange(ground.Wetted, 0.01, 1, "(share of the ground)"));
        Require.InRange(startDepletionMm, 0, TotalEvaporableMm, "mm (not above the total)");
        var depletion = Math.Max(0, startDepletionMm - waterMm);
        var reduction = Reduction(depletion);
        var share = DualCoefficient.BareAndWetted(ground.Cover, ground.Wetted, ground.IsDrip);
        var coefficient = DualCoefficient.Evaporation(reduction, ground.LargestCoefficient, ground.BasalCoefficient, share);

        // The ground cannot give more than it holds.
        coefficient = referenceEtMm > 0 ? Math.Min(coefficient, (TotalEvaporableMm - depletion) * share / referenceEtMm) : coefficient;
        return new EvaporationDay(
            depletion + (coefficient * referenceEtMm / share),
            reduction,
            coefficient,
            (coefficient + ground.BasalCoefficient) * referenceEtMm,
            Math.Max(0, waterMm - startDepletionMm));
    }
}

/// <summary>Ground that evaporates between vines.</summary>
/// <param name="BasalCoefficient">Basal crop coefficient. [–]</param>
/// <param name="LargestCoefficient">Largest crop coefficient after wetting. [–]</param>
/// <param name="Cover">Share of the ground under leaves, 0 to below 1. [–]</param>
/// <param name="Wetted">Share of the ground that the last water wetted, above 0 to 1; 1 after rain. [–]</param>
/// <param name="IsDrip">Whether drippers wetted it.</param>
public sealed record EvaporatingGround(double BasalCoefficient, double LargestCoefficient, double Cover, double Wetted, bool IsDrip = false);

/// <summary>A day of the evaporating ground.</summary>
/// <param name="EndDepletionMm">Missing from its top soil when the day ends. [mm]</param>
/// <param name="Reduction">Kr. [–]</param>
/// <param name="EvaporationCoefficient">Ke. [–]</param>
/// <param name="CropEtMm">Basal transpiration and evaporation. [mm]</param>
/// <param name="PercolationMm">Out of the top soil. [mm]</param>
public readonly record struct EvaporationDay(double EndDepletionMm, double Reduction, double EvaporationCoefficient, double CropEtMm, double PercolationMm);
