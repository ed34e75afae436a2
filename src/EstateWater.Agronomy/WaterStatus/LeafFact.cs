namespace EstateWater.Agronomy.WaterStatus;

/// <summary>One leaf in the pressure chamber.</summary>
/// <param name="TakenAt">When it was read.</param>
/// <param name="Measure">Which water potential it stands for.</param>
/// <param name="TensionMpa">Balancing pressure. [MPa, positive]</param>
/// <param name="Exposure">Sun or shade; <see langword="null"/> when not noted.</param>
/// <param name="BaggedMin">Minutes in the bag before cutting; <see langword="null"/> when not noted. [min]</param>
/// <param name="DelayS">From the cut to the chamber; <see langword="null"/> when not noted. [s]</param>
/// <param name="Group">Group of vines along the block; <see langword="null"/> when not noted.</param>
/// <param name="Vine">The vine; <see langword="null"/> when not noted.</param>
public sealed record LeafFact(
    DateTimeOffset TakenAt,
    WaterPotentialMeasure Measure,
    double TensionMpa,
    LeafExposure? Exposure = null,
    double? BaggedMin = null,
    double? DelayS = null,
    string? Group = null,
    string? Vine = null);
