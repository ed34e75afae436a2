using EstateWater.Agronomy.Drip;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Web.Features.Blocks;
using EstateWater.Web.Features.Estate;
using EstateWater.Web.Features.Readings;
using EstateWater.Web.Features.Soil;
using EstateWater.Web.Parts.Drawing;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Report;

/// <summary>Gathers what each block's half page tells. Every list of the estate is gone through once, however many blocks there are.</summary>
internal sealed class BlockReports
{
    private const int LatestSets = 3;

    /// <summary>Older sets say nothing beside the latest. [d]</summary>
    private const int SetsBackDays = 60;

    private readonly EstateSnapshot snapshot;
    private readonly ILookup<string, StageObservation> stages;
    private readonly ILookup<string, ReadingSet> sets;
    private readonly ILookup<string, SoilMoisture> soil;
    private readonly ILookup<string, CanopyVisit> canopy;
    private readonly ILookup<string, AppliedWater> applied;
    private readonly ILookup<string, WeatherDay> weather;
    private readonly ILookup<string, PlannedSet> planned;
    private readonly Dictionary<string, UnmetNeed> unmet;
    private readonly WaterContents waterContents;
    private readonly IReadOnlyDictionary<string, StationWeek> stationWeeks;
    private readonly IReadOnlyDictionary<string, ValveWeek> valveWeeks;
    private readonly Dictionary<WaterPotentialMeasure, LinearScale> scales;

    public BlockReports(EstateSnapshot snapshot, IReadOnlyList<PublishedPlan> plans, IReadOnlyList<BlockRow> rows)
    {
        this.snapshot = snapshot;
        var contents = snapshot.Contents;
        stages = contents.Stages.ToLookup(stage => stage.BlockCode);
        sets = ReadingSets
            .From(contents.ChamberReadings.Where(leaf => leaf.TakenAt >= snapshot.AsOf.AddDays(-SetsBackDays)), snapshot.TimeZone, snapshot.AsOf)
            .ToLookup(set => set.BlockCode);
        soil = contents.SoilMoistures.ToLookup(reading => reading.BlockCode);
        canopy = contents.CanopyVisits.Where(visit => visit.Date <= snapshot.Today).ToLookup(visit => visit.BlockCode);
        applied = contents.AppliedWaters.Where(set => set.StartedAt <= snapshot.AsOf).ToLookup(set => set.ValveCode);
        weather = contents.Weather.Where(day => day.Date < snapshot.Today && day.RainMm is not null).ToLookup(day => day.StationCode);
        planned = snapshot.Plan.Sets.ToLookup(set => set.Valve);
        unmet = snapshot.Plan.Unmet.ToDictionary(need => need.Block);
        waterContents = new WaterContents(contents.ProbeCalibrations);
        stationWeeks = StationWeek.All(snapshot);
        valveWeeks = ValveWeek.All(snapshot, plans);
        scales = rows.GroupBy(row => row.Plan.Measure).ToDictionary(same => same.Key, OutlookDrawing.ScaleOf);
    }

    public BlockReport Of(BlockRow row)
    {
        var block = row.Block;
        var season = BlockHistory.SeasonStages(stages[block.Code], snapshot.Today);
        var start = BlockHistory.SeasonStartOf(season, snapshot.Today);
        var latest = sets[block.Code].OrderByDescending(set => set.Date).ThenBy(set => set.Measure).Take(LatestSets).ToList();
        var rain = weather[block.StationCode].Where(day => day.Date >= start).ToList();
        return new BlockReport
        {
            Row = row,
            Sets = [.. latest.Select(set => new ReadAgainstTarget(set, Wanted(block, set, season)))],
            Stage = season.Count > 0 ? season[^1] : null,
            Tubes = TubeSeries.Of(soil[block.Code], waterContents, snapshot.Today),
            Weather = stationWeeks[block.StationCode],
            Water = valveWeeks[block.ValveCode],
            SeasonStart = start,
            SeasonAppliedMm = AppliedMm(block, start),
            SeasonRainMm = rain.Count > 0 ? rain.Sum(day => day.RainMm!.Value) : null,
            Planned = [.. planned[block.ValveCode].OrderBy(set => set.Start)],
            Unmet = unmet.GetValueOrDefault(block.Code),
            Canopy = canopy[block.Code].MaxBy(visit => visit.Date),
            Notes = Notes(block, latest),
            TensionBar = scales[row.Plan.Measure],
            Heat = [.. snapshot.Plan.HeatSpells.Where(spell => spell.Station == block.StationCode && spell.To >= snapshot.Today)],
        };
    }

    private TargetBand? Wanted(Block block, ReadingSet set, IReadOnlyList<StageObservation> season) =>
        TargetBands.For(block, set.Measure, season, snapshot.Contents.Targets, set.Date, set.Date) is [var band, ..] ? band : null;

    private double AppliedMm(Block block, DateOnly from)
    {
        var rate = DripLine.ApplicationRateMmPerH(block.EmitterFlowLPerH, block.EmittersPerVine, block.RowSpacingM, block.VineSpacingM);
        return rate * applied[block.ValveCode].Where(set => snapshot.DayOf(set.StartedAt) >= from).Sum(set => set.Hours);
    }

    private List<string> Notes(Block block, List<ReadingSet> latest) =>
    [
        .. latest.Take(1).SelectMany(set => set.Leaves).Select(leaf => leaf.Note)
            .Concat(applied[block.ValveCode].Where(set => set.StartedAt > snapshot.AsOf.AddDays(-ValveWeek.Days)).OrderBy(set => set.StartedAt).Select(set => set.Note))
            .Where(note => !string.IsNullOrWhiteSpace(note))
            .Select(note => note!.Trim())
            .Distinct(StringComparer.Ordinal),
    ];
}
