using EstateWater.Planning;
using EstateWater.Web.Features.Readings;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Estate;

/// <summary>All that the estate page shows.</summary>
public sealed record EstateView
{
    /// <summary>Whether the estate is safe, in a sentence.</summary>
    public required EstateAnswer Answer { get; init; }

    /// <summary>Every block, the most urgent first.</summary>
    public required IReadOnlyList<BlockRow> Rows { get; init; }

    /// <summary>Blocks that need water, the most urgent first.</summary>
    public required IReadOnlyList<Decision> Decisions { get; init; }

    /// <summary>Heat within the horizon.</summary>
    public required IReadOnlyList<PlannedHeatSpell> Heat { get; init; }

    /// <summary>Blocks that jumped against their own trend and their neighbours.</summary>
    public required IReadOnlyList<SuddenRise> SuddenRises { get; init; }

    /// <summary>Median change of the estate's blocks since their set before; null when none can be compared. [bar]</summary>
    public required double? MedianChangeBar { get; init; }

    /// <summary>Water by source.</summary>
    public required IReadOnlyList<WaterLeft> Water { get; init; }

    /// <summary>How fresh the data are.</summary>
    public required Freshness Freshness { get; init; }

    /// <summary>Looks at a snapshot.</summary>
    public static EstateView From(EstateSnapshot snapshot, UnitChoice units)
    {
        var rows = BlockRow.From(snapshot);
        var oldest = snapshot.AsOf.AddDays(-StressLook.RecentDays - Estate.SuddenRises.TrendDays - 1);
        var sets = ReadingSets.From(snapshot.Contents.ChamberReadings.Where(leaf => leaf.TakenAt >= oldest), snapshot.TimeZone, snapshot.AsOf);
        var stationOf = snapshot.Contents.Blocks.ToDictionary(block => block.Code, block => block.StationCode);
        var allocations = snapshot.Contents.Sources.ToDictionary(source => source.Code, source => source.SeasonAllocationM3);
        return new EstateView
        {
            Answer = EstateAnswer.From(snapshot.Plan, snapshot.Today, units),
            Rows = rows,
            Decisions = Decision.From(rows, snapshot.Plan),
            Heat = [.. snapshot.Plan.HeatSpells.Where(spell => spell.To >= snapshot.Today).OrderBy(spell => spell.From)],
            SuddenRises = Estate.SuddenRises.Find(sets, stationOf, snapshot.Today),
            MedianChangeBar = MedianChange(sets, snapshot.Today),
            Water = [.. snapshot.Plan.Water.Select(water => new WaterLeft(water.Source, water.PlannedM3, water.LeftM3, allocations.GetValueOrDefault(water.Source)))],
            Freshness = FreshnessOf(snapshot, rows),
        };
    }

    private static double? MedianChange(IReadOnlyList<ReadingSet> sets, DateOnly today)
    {
        var changes = sets
            .GroupBy(set => (set.BlockCode, set.Measure))
            .Select(group => group.OrderBy(set => set.Date).TakeLast(2).ToArray())
            .Where(pair => pair.Length == 2 && today.DayNumber - pair[1].Date.DayNumber <= StressLook.RecentDays)
            .Select(pair => pair[1].MeanBar - pair[0].MeanBar)
            .Order()
            .ToArray();
        return changes.Length == 0 ? null : (changes[(changes.Length - 1) / 2] + changes[changes.Length / 2]) / 2;
    }

    private static Freshness FreshnessOf(EstateSnapshot snapshot, IReadOnlyList<BlockRow> rows)
    {
        var measured = snapshot.Contents.Weather.Where(day => day.Date <= snapshot.Today).Select(day => (DateOnly?)day.Date);
        var issued = snapshot.Contents.Forecasts.Where(day => day.IssuedAt <= snapshot.AsOf).Select(day => (DateTimeOffset?)day.IssuedAt);
        return new Freshness(
            rows.Min(row => row.ReadOn),
            rows.Count(row => row.Look == StressLook.Unknown),
            measured.Max(),
            issued.Max() is { } at ? TimeZoneInfo.ConvertTime(at, snapshot.TimeZone) : null);
    }
}
