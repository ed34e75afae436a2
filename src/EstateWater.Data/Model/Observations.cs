using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Data.Model;

/// <summary>An observed growth stage.</summary>
public sealed record StageObservation
{
    public int Id { get; init; }

    public required string BlockCode { get; init; }

    public required DateOnly Date { get; init; }

    /// <summary>Modified Eichhorn–Lorenz number, 1–47.</summary>
    public required double ElStage { get; init; }
}

/// <summary>The tension wanted in a part of the season.</summary>
public sealed record Target
{
    public int Id { get; init; }

    /// <summary>The block; <see langword="null"/> for every block.</summary>
    public string? BlockCode { get; init; }

    /// <summary>The fruit; <see langword="null"/> for both.</summary>
    public FruitColour? Fruit { get; init; }

    /// <summary>First modified Eichhorn–Lorenz stage it holds for.</summary>
    public required double FromElStage { get; init; }

    /// <summary>Stage at which it ends.</summary>
    public required double ToElStage { get; init; }

    public required WaterPotentialMeasure Measure { get; init; }

    /// <summary>Wettest tension wanted. [bar, positive]</summary>
    public required double FloorBar { get; init; }

    /// <summary>Driest tension wanted. [bar, positive]</summary>
    public required double CeilingBar { get; init; }
}

/// <summary>One leaf in the pressure chamber.</summary>
public sealed record ChamberReading
{
    public int Id { get; init; }

    public required string BlockCode { get; init; }

    public required DateTimeOffset TakenAt { get; init; }

    public required WaterPotentialMeasure Measure { get; init; }

    public string? Group { get; init; }

    public string? Vine { get; init; }

    /// <summary>Balancing pressure. [bar, positive]</summary>
    public required double TensionBar { get; init; }

    public LeafExposure? Exposure { get; init; }

    /// <summary>Minutes in the bag before cutting. [min]</summary>
    public double? BaggedMin { get; init; }

    /// <summary>From the cut to the chamber. [s]</summary>
    public double? DelayS { get; init; }

    public string? Observer { get; init; }

    public string? Note { get; init; }
}

/// <summary>One depth of one soil tube on one day.</summary>
public sealed record SoilMoisture
{
    public int Id { get; init; }

    public required string BlockCode { get; init; }

    public required DateOnly Date { get; init; }

    public required string Tube { get; init; }

    /// <summary>Depth of the measurement. [cm]</summary>
    public required double DepthCm { get; init; }

    /// <summary>Volumetric water content, where measured directly. [m³/m³]</summary>
    public double? VwcM3PerM3 { get; init; }

    /// <summary>Neutron count.</summary>
    public double? Count { get; init; }

    /// <summary>Standard count of the same session.</summary>
    public double? StandardCount { get; init; }
}

/// <summary>A neutron-probe calibration: vwc = intercept + slope × count ratio.</summary>
public sealed record ProbeCalibration
{
    public int Id { get; init; }

    /// <summary>The block; <see langword="null"/> for every block.</summary>
    public string? BlockCode { get; init; }

    /// <summary>[m³/m³]</summary>
    public required double Intercept { get; init; }

    /// <summary>[m³/m³ per unit of count ratio]</summary>
    public required double Slope { get; init; }
}

/// <summary>A look at the canopy.</summary>
public sealed record CanopyVisit
{
    public int Id { get; init; }

    public required string BlockCode { get; init; }

    public required DateOnly Date { get; init; }

    /// <summary>[cm]</summary>
    public double? ShootLengthCm { get; init; }

    /// <summary>Share of the ground shaded at solar noon, 0–1.</summary>
    public double? ShadedFraction { get; init; }

    /// <summary>Shoots whose tips still grow. [%]</summary>
    public double? GrowingTipsPct { get; init; }

    /// <summary>0 none, 1 tips slowing, 2 leaves dull or drooping at midday, 3 leaves yellowing or lost.</summary>
    public int? VisualStress { get; init; }

    public string? Note { get; init; }
}

/// <summary>Water put on through a valve.</summary>
public sealed record AppliedWater
{
    public int Id { get; init; }

    public required string ValveCode { get; init; }

    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>[h]</summary>
    public required double Hours { get; init; }

    /// <summary>Meter difference. [m³]</summary>
    public double? MeterM3 { get; init; }

    public string? ConfirmedBy { get; init; }

    public string? Note { get; init; }
}
