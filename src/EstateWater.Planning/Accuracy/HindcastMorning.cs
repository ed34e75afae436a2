using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Blocks;
using EstateWater.Planning.Needs;
using EstateWater.Planning.Weather;

namespace EstateWater.Planning.Accuracy;

/// <summary>One morning in the past, and the later reading sets that its outlook is held against. One fit serves them all, however far ahead they lie.</summary>
/// <param name="AsOf">What was known by then may be used.</param>
/// <param name="Today">Its local day.</param>
/// <param name="Sets">Sets that followed, with the water that was really applied until then.</param>
internal sealed record HindcastMorning(DateTimeOffset AsOf, DateOnly Today, IReadOnlyList<LaterSet> Sets)
{
    private static readonly TimeOnly Hour = new(6, 0);

    /// <summary>As far as the furthest set. [d]</summary>
    public int HorizonDays => Sets.Max(s => s.LeadDays);

    /// <summary>The mornings that lie so many days before a set whose block had been read by then, in order of time.</summary>
    public static IReadOnlyList<HindcastMorning> Of(PlanRequest full, IReadOnlyList<int> leads)
    {
        var valves = full.Valves.ToDictionary(v => v.Code, v => new ValveWater(v, full.Blocks, full.TimeZone));
        return [.. full.Blocks
            .SelectMany(b => Later(b, full.TimeZone, valves[b.ValveCode].AppliedMm(b), leads))
            .GroupBy(s => s.Date.AddDays(-s.LeadDays))
            .OrderBy(day => day.Key)
            .Select(day => new HindcastMorning(MorningOf(day.Key, full.TimeZone), day.Key, [.. day]))];
    }

    /// <summary>Learns the estate as it was known then, and holds its outlook against the sets that followed.</summary>
    /// <param name="then">The estate as it was known then.</param>
    /// <param name="cancellation">Stops the work.</param>
    public IReadOnlyList<HeldAgainst> Hold(PlanRequest then, CancellationToken cancellation)
    {
        var followed = then.Blocks.Select(b => b.StationCode).ToHashSet();
        if (then.Stations.Any(s => followed.Contains(s.Code) && s.Days.Count == 0))
        {
            return []; // Weather was not measured yet.
        }

        var courses = FittedEstate.Of(then, cancellation, parallelism: 1).Courses.ToDictionary(c => c.State.Block.Code);
        return [.. Sets
            .GroupBy(s => (s.Block, s.Measure))
            .SelectMany(later => Hold([.. later.OrderBy(s => s.LeadDays)], courses[later.Key.Block]))];
    }

    private static IEnumerable<LaterSet> Later(PlanBlock block, TimeZoneInfo zone, IReadOnlyDictionary<DateOnly, double> appliedMm, IReadOnlyList<int> leads)
    {
        var sets = ReadingSets.Of(block, zone);
        return
            from set in sets
            from lead in leads
            let today = set.Date.AddDays(-lead)
            where sets.Any(s => s.Measure == set.Measure && s.TakenAt <= MorningOf(today, zone))
            select new LaterSet(
                block.Code,
                set.Date,
                set.Measure,
                lead,
                set.Statistics.RobustMeanMpa * Conversions.BarPerMegapascal,
                SetEvidence.Of(set).StandardErrorMpa * Conversions.BarPerMegapascal,
                [.. Enumerable.Range(0, lead + 1).Select(d => appliedMm.GetValueOrDefault(today.AddDays(d)))]);
    }

    // Nearer sets lie on the way to the furthest: one course serves them.
    private IEnumerable<HeldAgainst> Hold(IReadOnlyList<LaterSet> later, BlockCourse course)
    {
        var measure = later[0].Measure;
        var before = course.State.Sets.Where(s => s.Measure == measure).ToList();
        if (before.Count == 0)
        {
            return [];
        }

        var water = later[^1].AppliedMm;
        var tensions = course.Expect(measure, [.. water, .. new double[HorizonDays + 1 - water.Count]]);
        return later.Select(set => new HeldAgainst(
            set.Block,
            set.Date,
            measure,
            set.LeadDays,
            set.ReadBar,
            set.StandardErrorBar,
            TensionBands.OfMpa(tensions[set.LeadDays]),
            before[^1].Statistics.RobustMeanMpa * Conversions.BarPerMegapascal,
            Line(before, set.Date, course.State.Block.LatitudeDegrees)));
    }

    // Nobody would draw a line on through a winter: the last three of the season, or none.
    private static double? Line(IReadOnlyList<ReadingSet> before, DateOnly at, double latitudeDegrees)
    {
        var season = SeasonSpan.Of(at, latitudeDegrees).First;
        var sets = before.Where(s => s.Date >= season).TakeLast(3).ToList();

        // Days counted from the set that is foretold: the intercept is its tension.
        return sets.Count < 3
            ? null
            : LeastSquares.Line([.. sets.Select(s => (double)(s.Date.DayNumber - at.DayNumber))], [.. sets.Select(s => s.Statistics.RobustMeanMpa * Conversions.BarPerMegapascal)]).Coefficients[0];
    }

    private static DateTimeOffset MorningOf(DateOnly day, TimeZoneInfo zone)
    {
        var local = day.ToDateTime(Hour);
        return new DateTimeOffset(local, zone.GetUtcOffset(local));
    }
}

/// <summary>A reading set seen from a morning before it.</summary>
/// <param name="Block">The block's code.</param>
/// <param name="Date">The day of the set.</param>
/// <param name="Measure">Which water potential.</param>
/// <param name="LeadDays">Days from the morning to the set. [d]</param>
/// <param name="ReadBar">Mean of the set. [bar]</param>
/// <param name="StandardErrorBar">Of that mean. [bar]</param>
/// <param name="AppliedMm">Water really applied, by day from the morning to the set. [mm]</param>
internal sealed record LaterSet(
    string Block, DateOnly Date, WaterPotentialMeasure Measure, int LeadDays, double ReadBar, double StandardErrorBar, IReadOnlyList<double> AppliedMm);
