using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Blocks;
using EstateWater.Planning.Needs;
using EstateWater.Planning.Packing;
using EstateWater.Planning.Reasons;
using EstateWater.Planning.Weather;

namespace EstateWater.Planning;

/// <summary>Writes the plan out of what was fitted, wanted and packed.</summary>
internal sealed class PlanWriter(FittedEstate estate, IReadOnlyList<ValveNeed> needs, IReadOnlyList<SourceNights> sources, IReadOnlyList<PackedSource> packed)
{
    // Share of the applied depth that the least-watered quarter gets, where nobody measured it; common practice for drip.
    private const double UsualEmissionUniformity = 0.9;

    public Plan Write()
    {
        var objective = packed.Sum(p => (double)p.Objective);
        var bound = packed.Sum(p => (double)p.Bound);
        return new Plan
        {
            AsOf = TimeZoneInfo.ConvertTime(estate.Request.AsOf, estate.Request.TimeZone),
            HorizonDays = estate.Request.HorizonDays,
            HeatSpells = [.. estate.Heat.OrderBy(h => h.Key, StringComparer.Ordinal).SelectMany(h => h.Value.Select(s => new PlannedHeatSpell(h.Key, s.From, s.To, Math.Round(s.PeakTMaxC, 1))))],
            Blocks = Blocks(),
            Sets = Sets(),
            Unmet = Unmet(),
            Water = [.. sources.Select(Water)],
            Packing = new PackingQuality(
                objective,
                bound,
                bound <= 0 ? 0 : Math.Round(100 * Math.Max(0, bound - objective) / bound, 2),
                objective >= bound,
                bound <= 0 ? 0 : Math.Round(100 * packed.Sum(p => (double)p.CutBack) / bound, 2)),
        };
    }

    private List<BlockPlan> Blocks()
    {
        var outcomes = estate.Courses.Select(c => new BlockOutcome(
            c,
            estate.Today,
            estate.Heat[c.State.Block.StationCode],
            NeedOf(c),
            PackedOf(c.State.Valve),
            QuartersByDay(c.State.Valve))
        {
            IsWaterUsedUp = sources.Zip(packed).Any(pair => pair.First.Source.Code == c.State.Valve.SourceCode && UnmetReason.IsUsedUp(pair.First, pair.Second, NeedOf(c))),
        });
        return [.. outcomes
            .OrderByDescending(o => o.Urgency)
            .ThenByDescending(o => o.ClosestToCeilingMpa)
            .ThenBy(o => o.Course.State.Block.Code, StringComparer.Ordinal)
            .Select((outcome, i) => Write(outcome, i + 1))];
    }

    private BlockPlan Write(BlockOutcome outcome, int rank)
    {
        var block = outcome.Course.State.Block;
        var limits = outcome.Course.Limits;
        var hours = outcome.Quarters / 4.0;
        var rate = ValveWater.RateMmPerH(block);
        return new BlockPlan
        {
            Block = block.Code,
            Rank = rank,
            Measure = limits.Measure,
            FloorBar = Math.Round(limits.FloorMpa[0] * Conversions.BarPerMegapascal, 2),
            CeilingBar = Math.Round(limits.CeilingMpa[0] * Conversions.BarPerMegapascal, 2),
            Latest = Latest(outcome.Course.State.Sets),
            Outlook = [.. Enumerable.Range(0, estate.Days).Select(day => new OutlookDay(
                estate.Today.AddDays(day),
                TensionBands.OfMpa(outcome.Course.Unwatered[day]),
                TensionBands.OfMpa(outcome.Watered[day])))],
            Hours = hours,
            NetMm = Math.Round(hours * rate * outcome.Course.State.Valve.ExpectedShare * (block.EmissionUniformity ?? UsualEmissionUniformity), 1),
            VolumeM3 = Math.Round(hours * rate * block.AreaM2 / 1000, 1),
            Reason = BlockReason.Write(outcome),
            Risks = Risks(outcome),
        };
    }

    private List<DayRisk> Risks(BlockOutcome outcome) => [.. Enumerable.Range(0, estate.Days).Select(day =>
    {
        var date = estate.Today.AddDays(day);
        var limits = outcome.Course.Limits;
        return new DayRisk(
            date,
            limits.HasLeaves[day] ? BlockCourse.ChancePast(outcome.Watered[day], limits.CeilingMpa[day]) : 0,
            outcome.Heat.Any(s => s.From <= date && date <= s.To));
    })];

    private static LatestReadingSet? Latest(IReadOnlyList<ReadingSet> sets) => sets.Count == 0
        ? null
        : new LatestReadingSet
        {
            TakenAt = sets[^1].TakenAt,
            MeanBar = Math.Round(sets[^1].Statistics.MeanMpa * Conversions.BarPerMegapascal, 2),
            StandardErrorBar = sets[^1].Statistics.StandardErrorMpa is { } se ? Math.Round(se * Conversions.BarPerMegapascal, 2) : null,
            Leaves = sets[^1].Leaves.Count,
            StressClass = StressClassTable.Default.Classify(sets[^1].Measure, sets[^1].Statistics.RobustMeanMpa).Words,
            Checks = [.. sets[^1].Findings.Where(f => f.Severity != FindingSeverity.Note).Select(f => f.Words)],
        };

    private List<PlannedSet> Sets() =>
        [.. sources.Zip(packed).SelectMany(pair => pair.Second.Sets.Select(set => Write(pair.First, set)))
            .OrderBy(s => s.Start).ThenBy(s => s.Valve, StringComparer.Ordinal)];

    private PlannedSet Write(SourceNights source, PlacedSet set)
    {
        // Quarter hours are counted on the physical clock: a set across the spring change still has its hours.
        // The water is of the hours and the flow that are told, so that a plan and its published sets have one sum.
        var flow = Math.Round(set.Need.Valve.FlowM3PerH, 2);
        var start = source.Nights[set.Night].Start.AddMinutes(15 * set.StartQuarter);
        return new PlannedSet
        {
            Valve = set.Need.Valve.Code,
            Source = source.Source.Code,
            Start = TimeZoneInfo.ConvertTime(start, estate.Request.TimeZone),
            End = TimeZoneInfo.ConvertTime(start.AddMinutes(15 * set.Quarters), estate.Request.TimeZone),
            Hours = set.Quarters / 4.0,
            FlowM3PerH = flow,
            VolumeM3 = Math.Round(flow * set.Quarters / 4, 4),
        };
    }

    // What found no room, and what is not put on because water is short this season.
    private List<UnmetNeed> Unmet() =>
        [.. sources.Zip(packed).SelectMany(pair => pair.First.Needs
                .Select(need => (Need: need, Quarters: pair.Second.StillWanted.GetValueOrDefault(need) + need.ForgoneQuarters))
                .Where(n => n.Quarters >= NeedSearch.ShortestSetQuarters || pair.Second.StillWanted.ContainsKey(n.Need))
                .SelectMany(n => n.Need.Valve.Blocks.Select(b => new UnmetNeed(b.Code, n.Quarters / 4.0, UnmetReason.Write(pair.First, pair.Second, n.Need)) { Valve = n.Need.Valve.Code })))
            .OrderBy(u => u.Block, StringComparer.Ordinal)];

    private SourceWater Water(SourceNights source, int index)
    {
        var planned = packed[index].Sets.Sum(s => s.Need.Valve.FlowM3PerH * s.Quarters / 4);
        return new SourceWater(source.Source.Code, Math.Round(planned, 1), source.LeftM3 is { } left ? Math.Round(left - planned, 1) : null)
        {
            Season = estate.Seasons.TryGetValue(source.Source.Code, out var season) ? SeasonWords.Of(season, planned) : null,
        };
    }

    private ValveNeed NeedOf(BlockCourse course) => needs.First(n => n.Valve == course.State.Valve);

    private IReadOnlyList<(Night Night, PlacedSet Set)> PackedOf(ValveWater valve) =>
        [.. sources.Zip(packed).SelectMany(pair => pair.Second.Sets.Where(s => s.Need.Valve == valve).Select(s => (pair.First.Nights[s.Night], s)))
            .OrderBy(s => s.Item1.Start).ThenBy(s => s.s.StartQuarter)];

    private int[] QuartersByDay(ValveWater valve)
    {
        var byDay = new int[estate.Days];
        foreach (var (night, set) in PackedOf(valve))
        {
            byDay[night.WaterDay] += set.Quarters;
        }

        return byDay;
    }
}
