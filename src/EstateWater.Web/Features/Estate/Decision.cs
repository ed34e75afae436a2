using EstateWater.Planning;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Estate;

/// <summary>One thing for the manager to decide on.</summary>
/// <param name="Row">The block.</param>
/// <param name="Unmet">What does not fit; null when everything the block needs is planned.</param>
public sealed record Decision(BlockRow Row, UnmetNeed? Unmet)
{
    /// <summary>More than this is a list, not a decision.</summary>
    public const int Most = 5;

    /// <summary>Blocks that need water, the most urgent first.</summary>
    public static IReadOnlyList<Decision> From(IReadOnlyList<BlockRow> rows, Planning.Plan plan)
    {
        var unmet = plan.Unmet.ToDictionary(need => need.Block);
        return [.. rows
            .Where(row => row.Plan.Hours > 0 || unmet.ContainsKey(row.Block.Code))
            .Select(row => new Decision(row, unmet.GetValueOrDefault(row.Block.Code)))];
    }
}

/// <summary>Water of a source: what the plan uses and what is left of the season's.</summary>
/// <param name="Source">Its code.</param>
/// <param name="PlannedM3">Used by the plan. [m³]</param>
/// <param name="LeftM3">Left after it; null when unlimited. [m³]</param>
/// <param name="AllocationM3">The season's water; null when unlimited. [m³]</param>
public sealed record WaterLeft(string Source, double PlannedM3, double? LeftM3, double? AllocationM3)
{
    /// <summary>Share of the season's water that is left, 0–100; null when unlimited. [%]</summary>
    public double? LeftPct => AllocationM3 is > 0 && LeftM3 is { } left ? Math.Clamp(100 * left / AllocationM3.Value, 0, 100) : null;

    /// <summary>“41 000 of 121 923 m³ left after this plan’s 2 210 m³”.</summary>
    public string Words(UnitChoice units) => LeftM3 is { } left && AllocationM3 is { } allocation
        ? $"{units.VolumeOf(Math.Max(left, 0))} of {units.VolumeOf(allocation)} left after this plan’s {units.VolumeOf(PlannedM3)}"
        : $"{units.VolumeOf(PlannedM3)} in this plan; no limit on the season";
}

/// <summary>How fresh the data are.</summary>
/// <param name="OldestLatestReading">Day of the oldest latest set among the blocks; null when none was read.</param>
/// <param name="WithoutRecentReading">Blocks whose latest set is too old or missing.</param>
/// <param name="LastWeather">Last measured day of weather; null when there is none.</param>
/// <param name="ForecastIssuedAt">When the forecast in use was issued; null when there is none.</param>
public sealed record Freshness(DateOnly? OldestLatestReading, int WithoutRecentReading, DateOnly? LastWeather, DateTimeOffset? ForecastIssuedAt)
{
    /// <summary>“Oldest reading 6 days ago; weather to yesterday; forecast of today, 05:00.”</summary>
    public string Words(DateOnly today, UnitChoice units)
    {
        var reading = OldestLatestReading is { } oldest ? $"Oldest of the latest readings {EstateText.Age(oldest, today)}" : "No reading yet";
        var missing = WithoutRecentReading == 0 ? "" : $" ({EstateText.Count(WithoutRecentReading)} without a recent one)";
        var weather = LastWeather is { } last ? $"weather measured to {units.Day(last)}" : "no weather measured";
        var forecast = ForecastIssuedAt is { } issued ? $"forecast of {units.Moment(issued)}" : "no forecast";
        return $"{reading}{missing}; {weather}; {forecast}.";
    }
}
