using EstateWater.Agronomy.Phenology;
using EstateWater.Data.Model;
using EstateWater.Web.Features.Blocks;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Owner;

/// <summary>How much of the season is gone, in days from budburst to harvest-ripe fruit.</summary>
/// <param name="Budburst">Half of the blocks had reached it.</param>
/// <param name="Harvest">Half of the blocks will be ripe.</param>
/// <param name="Today">The estate's day.</param>
/// <param name="Blocks">Blocks that both dates are known or expected of.</param>
/// <param name="Observed">Of these, blocks in which a growth stage was seen this season.</param>
public sealed record SeasonShare(DateOnly Budburst, DateOnly Harvest, DateOnly Today, int Blocks, int Observed)
{
    /// <summary>Length of the season. [d]</summary>
    public int Days => Harvest.DayNumber - Budburst.DayNumber;

    /// <summary>Days gone: none before budburst, all after harvest. [d]</summary>
    public int DaysGone => Math.Clamp(Today.DayNumber - Budburst.DayNumber, 0, Days);

    /// <summary>Days gone, of all. 0–100 [%]</summary>
    public double GonePct => 100.0 * DaysGone / Days;

    /// <summary>How it is reckoned, for people.</summary>
    public string Words(UnitChoice units) =>
        $"The season is counted in days from budburst, which half of the blocks had reached by {units.Day(Budburst)}, to harvest-ripe fruit, " +
        $"{(Harvest < Today ? "which half of them had reached" : "expected in half of them")} by {units.Day(Harvest)}. " +
        $"Growth stages were seen in {Observed} of {Blocks} blocks this season; between them and after them the dates follow the degree days of measured and forecast temperatures, " +
        "and beyond the forecast a typical climate.";

    /// <summary>The season of a snapshot; null when no block has both dates, the second after the first.</summary>
    public static SeasonShare? From(EstateSnapshot snapshot)
    {
        var stages = snapshot.Contents.Stages.Where(stage => stage.Date <= snapshot.Today).ToLookup(stage => stage.BlockCode);
        var means = snapshot.Contents.Stations.ToDictionary(station => station.Code, station => DailyMeanC(station.Code, snapshot));
        var blocks = snapshot.Contents.Blocks
            .Select(block => DatesOf(block, stages[block.Code], means.GetValueOrDefault(block.StationCode), snapshot.Today))
            .OfType<BlockDates>()
            .ToList();
        return blocks.Count > 0 && Half(blocks.Select(block => block.Budburst)) is var budburst && Half(blocks.Select(block => block.Harvest)) is var harvest && budburst < harvest
            ? new SeasonShare(budburst, harvest, snapshot.Today, blocks.Count, blocks.Count(block => block.IsObserved))
            : null;
    }

    private static BlockDates? DatesOf(Block block, IEnumerable<StageObservation> stages, Dictionary<DateOnly, double>? means, DateOnly today)
    {
        var latitude = block.Outline.Centroid.Y;
        var year = Season.YearOf(today, latitude);
        var seen = stages.Select(stage => (stage.Date, stage.ElStage)).ToList();
        var projection = new GrowthStageProjection(latitude, seen, means);
        return projection.DateOf(GrowthStageCurve.BudburstElStage, year) is { } budburst && projection.DateOf(GrowthStageCurve.RipeElStage, year) is { } harvest
            ? new BlockDates(budburst, harvest, seen.Any(stage => Season.YearOf(stage.Date, latitude) == year))
            : null;
    }

    private static Dictionary<DateOnly, double> DailyMeanC(string station, EstateSnapshot snapshot)
    {
        var means = snapshot.Contents.Weather
            .Where(day => day.StationCode == station && day.Date < snapshot.Today)
            .ToDictionary(day => day.Date, day => (day.TMaxC + day.TMinC) / 2);
        foreach (var (date, members) in StationForecast.Latest(station, snapshot))
        {
            means[date] = StationForecast.Middle(members, member => (member.TMaxC + member.TMinC) / 2);
        }

        return means;
    }

    /// <summary>The day by which half of them are there.</summary>
    private static DateOnly Half(IEnumerable<DateOnly> days) => days.Order().ToList() is var ordered ? ordered[(ordered.Count - 1) / 2] : default;

    private sealed record BlockDates(DateOnly Budburst, DateOnly Harvest, bool IsObserved);
}
