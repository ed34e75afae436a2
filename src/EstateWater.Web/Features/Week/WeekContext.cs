using EstateWater.Planning;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Week;

/// <summary>What the week page shows beside the plan, read once from a snapshot.</summary>
/// <param name="Snapshot">The snapshot.</param>
/// <param name="Blocks">Blocks by code.</param>
/// <param name="Sources">Sources in the estate's order.</param>
public sealed record WeekContext(
    EstateSnapshot Snapshot, IReadOnlyDictionary<string, WeekBlock> Blocks, IReadOnlyList<PlanSource> Sources)
{
    /// <summary>The estate's zone.</summary>
    public TimeZoneInfo Zone { get; } = Snapshot.TimeZone;

    /// <summary>Blocks that get water whenever this one does.</summary>
    public IReadOnlyList<string> OnSameValve(string block) => Blocks.TryGetValue(block, out var about) ? about.SharesValveWith : [];

    /// <summary>Reads it.</summary>
    public static WeekContext Of(EstateSnapshot snapshot)
    {
        var contents = snapshot.Contents;
        var blocks = contents.Blocks
            .GroupBy(b => b.ValveCode)
            .SelectMany(valve => valve.Select(b => new WeekBlock(
                b.Code, b.Name, b.ValveCode, valve.Where(o => o.Code != b.Code).Select(o => o.Code).ToList(), b.Variety)))
            .ToDictionary(b => b.Code);
        var sources = contents.Sources
            .Select(s => new PlanSource(s.Code, s.MaxFlowM3PerH, s.DailyFrom, s.DailyTo, s.SeasonAllocationM3))
            .ToList();
        return new WeekContext(snapshot, blocks, sources);
    }
}
