namespace EstateWater.Simulation.Vine;

/// <summary>How the vines of a block behave: water conduction, stomata, vigour and pace.</summary>
public sealed record VineTraits
{
    /// <summary>Stomatal conductance of open leaves in dim, humid air. [mol/m²/s]</summary>
    public double OpenConductance { get; init; } = 0.31;

    /// <summary>Deficit at which open stomata have closed by half. [kPa]</summary>
    public double HalfClosedVpdKPa { get; init; } = 3.0;

    /// <summary>Leaf potential at which stomata have closed by half. [MPa]</summary>
    public double HalfClosedMpa { get; init; } = -1.5;

    /// <summary>How sharply they close about it: high is near isohydric.</summary>
    public double Sharpness { get; init; } = 4;

    /// <summary>Conductance of all roots in wet soil. [mm/h/MPa of ground]</summary>
    public double RootConductance { get; init; } = 1.2;

    /// <summary>Conductance of trunk and shoots. [mm/h/MPa of ground]</summary>
    public double StemConductance { get; init; } = 1.6;

    /// <summary>Potential lost inside a leaf. [MPa per mm/h through the leaf]</summary>
    public double LeafResistance { get; init; } = 0.95;

    /// <summary>Leaf area of the full canopy. [m²/m² of ground]</summary>
    public double FullLeafArea { get; init; } = 1.2;

    /// <summary>Share of the ground the full canopy shades at noon.</summary>
    public double FullShade { get; init; } = 0.35;

    /// <summary>Shoot length at which shoots are trimmed. [cm]</summary>
    public double TrimmedAtCm { get; init; } = 125;

    /// <summary>Growth of an unstressed shoot. [cm per degree day]</summary>
    public double ShootCmPerDegreeDay { get; init; } = 0.19;

    /// <summary>Pace of the growth stages; above 1 is early.</summary>
    public double Pace { get; init; } = 1;
}
