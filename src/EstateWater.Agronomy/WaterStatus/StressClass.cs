namespace EstateWater.Agronomy.WaterStatus;

/// <summary>How short of water a vine is, as a class.</summary>
/// <param name="Level">0, no constraint, to 4, the driest. [–]</param>
/// <param name="Words">The class in words.</param>
public readonly record struct StressClass(int Level, string Words);
