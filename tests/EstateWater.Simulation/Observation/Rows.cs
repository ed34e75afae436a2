using EstateWater.Simulation.Estate;

namespace EstateWater.Simulation.Observation;

/// <summary>One leaf in the chamber.</summary>
public sealed record ReadingRow(
    string Block,
    DateTimeOffset TakenAt,
    Measure Measure,
    string Group,
    string Vine,
    double TensionBar,
    string Exposure,
    int BaggedMin,
    int DelayS,
    string Observer,
    string? Note);

/// <summary>One depth of one tube.</summary>
public sealed record SoilRow(string Block, DateOnly Date, string Tube, int DepthCm, int Count, int StandardCount);

/// <summary>A canopy visit.</summary>
public sealed record CanopyRow(string Block, DateOnly Date, int ShootCm, double Shade, int GrowingTipsPct, int VisualStress);

/// <summary>A growth stage seen.</summary>
public sealed record StageRow(string Block, DateOnly Date, int Stage);
