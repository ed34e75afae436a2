using NetTopologySuite.Geometries;

namespace EstateWater.Data.Model;

/// <summary>Colour of the fruit, which decides default targets.</summary>
public enum FruitColour
{
    /// <summary>Red fruit.</summary>
    Red,

    /// <summary>White fruit.</summary>
    White,
}

/// <summary>A block of vines: one soil, one valve, one target.</summary>
public sealed record Block
{
    /// <summary>Code, unique on the estate.</summary>
    public required string Code { get; init; }

    /// <summary>Name as people say it.</summary>
    public string? Name { get; init; }

    /// <summary>Grape variety.</summary>
    public string? Variety { get; init; }

    /// <summary>Rootstock.</summary>
    public string? Rootstock { get; init; }

    /// <summary>Fruit colour.</summary>
    public required FruitColour Fruit { get; init; }

    /// <summary>Year of planting.</summary>
    public int? PlantedYear { get; init; }

    /// <summary>The weather station it follows.</summary>
    public required string StationCode { get; init; }

    /// <summary>The valve that waters it.</summary>
    public required string ValveCode { get; init; }

    /// <summary>Distance between rows. [m]</summary>
    public required double RowSpacingM { get; init; }

    /// <summary>Distance between vines in the row. [m]</summary>
    public required double VineSpacingM { get; init; }

    /// <summary>Emitters at each vine.</summary>
    public required double EmittersPerVine { get; init; }

    /// <summary>Flow of one emitter. [L/h]</summary>
    public required double EmitterFlowLPerH { get; init; }

    /// <summary>Emission uniformity, 0–1.</summary>
    public double? EmissionUniformity { get; init; }

    /// <summary>Depth of the root zone. [m]</summary>
    public required double RootDepthM { get; init; }

    /// <summary>Water the soil holds for the vine. [mm/m]</summary>
    public required double AvailableWaterMmPerM { get; init; }

    /// <summary>Share of the root zone that the drippers wet, 0–1.</summary>
    public double? WettedFraction { get; init; }

    /// <summary>Share of the ground shaded at solar noon under full canopy, 0–1.</summary>
    public double? ShadedFraction { get; init; }

    /// <summary>Shoot length wanted at ripening. [cm]</summary>
    public double? TargetShootLengthCm { get; init; }

    /// <summary>Who is watered first when water is short: 1 lowest to 5 highest.</summary>
    public int Priority { get; init; } = 3;

    /// <summary>Outline on WGS 84: longitude, latitude. Degrees are for drawing; areas come from <see cref="AreaM2"/>.</summary>
    public required Geometry Outline { get; init; }

    /// <summary>Geodesic area of the outline. [m²]</summary>
    public required double AreaM2 { get; init; }
}
