namespace EstateWater.Data.Model;

/// <summary>A weather station whose days and forecasts serve the blocks that name it.</summary>
public sealed record Station
{
    /// <summary>Code, unique on the estate.</summary>
    public required string Code { get; init; }

    /// <summary>Latitude, north positive. [degrees]</summary>
    public required double LatitudeDegrees { get; init; }

    /// <summary>Longitude, east positive. [degrees]</summary>
    public required double LongitudeDegrees { get; init; }

    /// <summary>Height above sea level. [m]</summary>
    public required double ElevationM { get; init; }

    /// <summary>Height of the anemometer above ground. [m]</summary>
    public double WindHeightM { get; init; } = 2;
}
