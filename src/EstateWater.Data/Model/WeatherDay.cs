namespace EstateWater.Data.Model;

/// <summary>What a station measured, or a forecast expects, of one day.</summary>
public abstract record WeatherDayBase
{
    public int Id { get; init; }

    public required string StationCode { get; init; }

    public required DateOnly Date { get; init; }

    /// <summary>[°C]</summary>
    public required double TMaxC { get; init; }

    /// <summary>[°C]</summary>
    public required double TMinC { get; init; }

    /// <summary>[%]</summary>
    public double? RhMaxPct { get; init; }

    /// <summary>[%]</summary>
    public double? RhMinPct { get; init; }

    /// <summary>Mean wind at the station's anemometer height. [m/s]</summary>
    public double? WindMPerS { get; init; }

    /// <summary>Global radiation. [MJ/m²]</summary>
    public double? SolarMjPerM2 { get; init; }

    /// <summary>[mm]</summary>
    public double? RainMm { get; init; }
}

/// <summary>A station's measured day.</summary>
public sealed record WeatherDay : WeatherDayBase;

/// <summary>A day of a forecast.</summary>
public sealed record ForecastDay : WeatherDayBase
{
    public required DateTimeOffset IssuedAt { get; init; }

    /// <summary>Member of an ensemble; <see langword="null"/> for a single forecast.</summary>
    public string? Member { get; init; }
}
