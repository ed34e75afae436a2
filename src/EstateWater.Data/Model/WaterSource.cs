namespace EstateWater.Data.Model;

/// <summary>A pump, dam or mains that feeds valves.</summary>
public sealed record WaterSource
{
    /// <summary>Code, unique on the estate.</summary>
    public required string Code { get; init; }

    /// <summary>Greatest flow at any moment. [m³/h]</summary>
    public required double MaxFlowM3PerH { get; init; }

    /// <summary>Start of the daily window in which it may run, local clock.</summary>
    public required TimeOnly DailyFrom { get; init; }

    /// <summary>End of the daily window; earlier than the start when the window passes midnight.</summary>
    public required TimeOnly DailyTo { get; init; }

    /// <summary>Water allowed in one season; <see langword="null"/> when unlimited. [m³]</summary>
    public double? SeasonAllocationM3 { get; init; }

    /// <summary>Electrical conductivity of the water. [dS/m]</summary>
    public double? WaterEcDsPerM { get; init; }
}

/// <summary>A valve that opens as one; it may serve several blocks.</summary>
public sealed record Valve
{
    /// <summary>Code, unique on the estate.</summary>
    public required string Code { get; init; }

    /// <summary>The source that feeds it.</summary>
    public required string SourceCode { get; init; }
}
