namespace EstateWater.Agronomy.WaterStatus;

/// <summary>What is known of a block when somebody asks whether to water it. What is not known is <see langword="null"/> and says nothing.</summary>
public sealed record WateringEvidence
{
    /// <summary>Mean tension of the last set. [MPa, positive]</summary>
    public double? TensionMpa { get; init; }

    /// <summary>Half the width of its confidence interval. [MPa]</summary>
    public double? TensionHalfWidthMpa { get; init; }

    /// <summary>Driest tension wanted, same measure. [MPa, positive]</summary>
    public double? CeilingMpa { get; init; }

    /// <summary>Tension never to be passed, same measure. [MPa, positive]</summary>
    public double? LimitMpa { get; init; }

    /// <summary>Whether the set failed its checks.</summary>
    public bool ReadingRejected { get; init; }

    /// <summary>Vapour pressure deficit at the reading. [kPa]</summary>
    public double? VpdKpa { get; init; }

    /// <summary>Depletion of the wetted root zone. [mm]</summary>
    public double? DepletionMm { get; init; }

    /// <summary>Depletion at which it is refilled. [mm]</summary>
    public double? RefillDepletionMm { get; init; }

    /// <summary>Growing-tips index, 0–1. [–]</summary>
    public double? TipIndex { get; init; }

    /// <summary>Growing-tips index wanted at this stage, 0–1. [–]</summary>
    public double? TipIndexWanted { get; init; }

    /// <summary>Modified Eichhorn–Lorenz number.</summary>
    public double? ElStage { get; init; }

    /// <summary>Rain expected before water could be put on, as it enters the ground. [mm]</summary>
    public double? RainAheadMm { get; init; }

    /// <summary>Whether a heat spell is forecast.</summary>
    public bool HeatAhead { get; init; }

    /// <summary>Days to harvest. [d]</summary>
    public int? DaysToHarvest { get; init; }

    /// <summary>Hours since the last set ended. [h]</summary>
    public double? HoursSinceIrrigation { get; init; }

    /// <summary>Emission uniformity, 0–1. [–]</summary>
    public double? EmissionUniformity { get; init; }

    /// <summary>Whether a leak is known.</summary>
    public bool LeakKnown { get; init; }
}
