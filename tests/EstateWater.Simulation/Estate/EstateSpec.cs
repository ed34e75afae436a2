using EstateWater.Simulation.Weather;

namespace EstateWater.Simulation.Estate;

/// <summary>An estate before its first day.</summary>
public sealed record EstateSpec
{
    public required string Name { get; init; }

    public required string Country { get; init; }

    public required Site Site { get; init; }

    public Climate Climate { get; init; } = new();

    public required IReadOnlyList<StationSpec> Stations { get; init; }

    public required IReadOnlyList<SourceSpec> Sources { get; init; }

    public required IReadOnlyList<ValveSpec> Valves { get; init; }

    public required IReadOnlyList<BlockSpec> Blocks { get; init; }

    public required IReadOnlyList<TargetSpec> Targets { get; init; }

    /// <summary>How wrong its forecasts are, over the usual.</summary>
    public double ForecastErrorScale { get; init; } = 1;

    public IReadOnlyList<SetSpell> SetSpells { get; init; } = [];

    public IReadOnlyList<Mishap> Mishaps { get; init; } = [];

    /// <summary>First day of the weather record.</summary>
    public required DateOnly WeatherFrom { get; init; }

    /// <summary>Last day for which weather is drawn.</summary>
    public required DateOnly WeatherTo { get; init; }

    /// <summary>First day on which vines and soil are simulated; soils are full then.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The tension wanted of a block at a stage; null before budburst and after leaf fall.</summary>
    public TargetSpec? TargetOf(BlockSpec block, double stage) =>
        Targets.Where(t => t.Block == block.Code || (t.Block is null && (t.Fruit is null || (t.Fruit == "white") == block.IsWhite)))
            .OrderByDescending(t => t.Block is not null)
            .FirstOrDefault(t => t.Measure == block.Measure && stage >= t.FromStage && stage < t.ToStage);

    /// <summary>Flow of a valve while open, as declared. [m³/h]</summary>
    public double DeclaredFlowM3PerH(string valve) => Blocks.Where(b => b.Valve == valve).Sum(b => b.DeclaredFlowM3PerH);
}

/// <summary>A station, and how its air differs from the site's.</summary>
public sealed record StationSpec(string Code, double EastM, double NorthM, double ElevationM, double WindHeightM, double WarmerC);

/// <summary>A source of water.</summary>
public sealed record SourceSpec(string Code, double MaxFlowM3PerH, TimeOnly DailyFrom, TimeOnly DailyTo, double? AllocationM3, double? EcDsPerM)
{
    /// <summary>Length of its daily window. [h]</summary>
    public double WindowHours => (DailyTo - DailyFrom).TotalHours is var hours && hours > 0 ? hours : 24;
}

/// <summary>A valve, and whether a meter is read there.</summary>
public sealed record ValveSpec(string Code, string Source, bool HasMeter);

/// <summary>Tension wanted between two stages; without a block it holds for all, without a fruit for both.</summary>
public sealed record TargetSpec(string? Block, string? Fruit, double FromStage, double ToStage, Measure Measure, double FloorBar, double CeilingBar);

/// <summary>Something that goes wrong with a valve.</summary>
/// <param name="Valve">Which.</param>
/// <param name="From">First day.</param>
/// <param name="ThroughShare">What passes the valve and its meter, over what should.</param>
/// <param name="ToVinesShare">What of that arrives at the vines.</param>
/// <param name="Block">Only this block's vines miss it; null for all of the valve's.</param>
public sealed record Mishap(string Valve, DateOnly From, double ThroughShare, double ToVinesShare, string? Block = null);
