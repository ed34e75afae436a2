using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Web.Features.Readings;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Blocks;

/// <summary>What is known of one block, and what is expected of it.</summary>
public sealed record BlockHistory
{
    /// <summary>A season's first growth stage is looked for this far back. [days]</summary>
    private const int LongestSeasonDays = 300;

    /// <summary>Shown where no growth stage tells when the season began. [days]</summary>
    private const int SeasonWithoutStagesDays = 150;

    /// <summary>Stages fall by more than this only when a new season begins; less is a second look at the same vines.</summary>
    private const double NewSeasonFall = 10;

    /// <summary>The block.</summary>
    public required Block Block { get; init; }

    /// <summary>What the plan says of it.</summary>
    public required BlockPlan Plan { get; init; }

    /// <summary>The estate's day.</summary>
    public required DateOnly Today { get; init; }

    /// <summary>First day of the season: its first observed growth stage.</summary>
    public required DateOnly SeasonStart { get; init; }

    /// <summary>Reading sets of the season, in order of time.</summary>
    public required IReadOnlyList<CheckedSet> Sets { get; init; }

    /// <summary>Weather and water, day by day, from the season's start to the end of the forecast.</summary>
    public required IReadOnlyList<HistoryDay> Days { get; init; }

    /// <summary>The tension wanted, by date.</summary>
    public required IReadOnlyList<TargetBand> Bands { get; init; }

    /// <summary>Sets of the block's valve in the plan.</summary>
    public required IReadOnlyList<PlannedSet> Planned { get; init; }

    /// <summary>The history of a block; null when the estate has no such block or no plan.</summary>
    public static BlockHistory? From(EstateSnapshot snapshot, string code)
    {
        if (snapshot.Contents.Blocks.FirstOrDefault(block => block.Code == code) is not { } block
            || snapshot.Plan.Blocks.FirstOrDefault(each => each.Block == code) is not { } plan)
        {
            return null;
        }

        var stages = SeasonStages(snapshot, block);
        var start = SeasonStartOf(snapshot, stages);
        var end = snapshot.Today.AddDays(snapshot.Plan.HorizonDays);
        return new BlockHistory
        {
            Block = block,
            Plan = plan,
            Today = snapshot.Today,
            SeasonStart = start,
            Sets = SetsOf(snapshot, block),
            Days = HistoryDays.Of(block, snapshot, start),
            Bands = TargetBands.For(block, plan.Measure, stages, snapshot.Contents.Targets, start, end),
            Planned = [.. snapshot.Plan.Sets.Where(set => set.Valve == block.ValveCode).OrderBy(set => set.Start)],
        };
    }

    /// <summary>The season's reading sets of a block, checked, in order of time.</summary>
    public static IReadOnlyList<CheckedSet> SetsOf(EstateSnapshot snapshot, Block block)
    {
        var start = SeasonStartOf(snapshot, SeasonStages(snapshot, block));
        return
        [
            .. ReadingSets
                .From(snapshot.Contents.ChamberReadings.Where(leaf => leaf.BlockCode == block.Code), snapshot.TimeZone, snapshot.AsOf)
                .Where(set => set.Date >= start)
                .GroupBy(set => set.Measure)
                .SelectMany(history => ReadingSets.Check(history, block, snapshot.TimeZone))
                .OrderBy(set => set.Set.Date),
        ];
    }

    /// <summary>First day of a block's season: its first observed growth stage.</summary>
    public static DateOnly SeasonStartOf(EstateSnapshot snapshot, Block block) => SeasonStartOf(snapshot, SeasonStages(snapshot, block));

    /// <summary>First day of a season whose stages are known.</summary>
    /// <param name="seasonStages">As <see cref="SeasonStages(IEnumerable{StageObservation}, DateOnly)"/> gives them.</param>
    /// <param name="today">The estate's day.</param>
    internal static DateOnly SeasonStartOf(IReadOnlyList<StageObservation> seasonStages, DateOnly today) =>
        seasonStages.Count > 0 ? seasonStages[0].Date : today.AddDays(-SeasonWithoutStagesDays);

    private static DateOnly SeasonStartOf(EstateSnapshot snapshot, List<StageObservation> stages) => SeasonStartOf(stages, snapshot.Today);

    private static List<StageObservation> SeasonStages(EstateSnapshot snapshot, Block block) =>
        SeasonStages(snapshot.Contents.Stages.Where(stage => stage.BlockCode == block.Code), snapshot.Today);

    /// <summary>The stages seen since the last great fall of the stage number, in date order.</summary>
    /// <param name="ofBlock">Stages of one block, in any order.</param>
    /// <param name="today">The estate's day.</param>
    internal static List<StageObservation> SeasonStages(IEnumerable<StageObservation> ofBlock, DateOnly today)
    {
        var stages = ofBlock
            .Where(stage => stage.Date <= today && stage.Date >= today.AddDays(-LongestSeasonDays))
            .OrderBy(stage => stage.Date)
            .ToList();
        var first = stages.Count - 1;
        while (first > 0 && stages[first - 1].ElStage - stages[first].ElStage <= NewSeasonFall)
        {
            first--;
        }

        return stages.Count == 0 ? stages : stages[first..];
    }
}
