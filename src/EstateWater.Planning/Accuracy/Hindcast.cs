using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Blocks;

namespace EstateWater.Planning.Accuracy;

/// <summary>What the outlook had said of one reading set some days before, and what was read.</summary>
/// <param name="Block">The block's code.</param>
/// <param name="Date">The day of the set.</param>
/// <param name="Measure">Which water potential.</param>
/// <param name="LeadDays">How many days before.</param>
/// <param name="ReadBar">Mean of the set. [bar]</param>
/// <param name="StandardErrorBar">Of that mean. [bar]</param>
/// <param name="Expected">What had been said, with the water that was then really applied.</param>
/// <param name="NoChangeBar">The last set known then. [bar]</param>
/// <param name="StraightLineBar">The straight line through the last three known then; null with fewer. [bar]</param>
public sealed record HeldAgainst(
    string Block, DateOnly Date, WaterPotentialMeasure Measure, int LeadDays, double ReadBar, double StandardErrorBar, TensionBand Expected, double NoChangeBar, double? StraightLineBar);

/// <summary>Holds past outlooks against the readings that followed, knowing at each moment only what was known then.</summary>
public static class Hindcast
{
    /// <summary>Every reading set of the estate that had a set of its measure before it.</summary>
    /// <param name="requestAt">The estate as it was known at a moment, by a horizon in days.</param>
    /// <param name="full">The estate as it is known now: the readings and the applied water that followed.</param>
    /// <param name="leadDays">How far ahead, 1 to 30.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static IReadOnlyList<HeldAgainst> Run(Func<DateTimeOffset, int, PlanRequest> requestAt, PlanRequest full, int leadDays, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(requestAt);
        ArgumentNullException.ThrowIfNull(full);
        var sets = full.Blocks
            .SelectMany(b => ReadingSets.Of(b, full.TimeZone).Select(s => (Block: b, Set: s)))
            .ToList();
        var valves = full.Valves.ToDictionary(v => v.Code, v => new ValveWater(v, full.Blocks, full.TimeZone));
        var held = new List<HeldAgainst>();
        foreach (var day in sets.GroupBy(s => s.Set.Date).OrderBy(g => g.Key))
        {
            var today = day.Key.AddDays(-leadDays);
            var morning = today.ToDateTime(new TimeOnly(6, 0));
            var asOf = new DateTimeOffset(morning, full.TimeZone.GetUtcOffset(morning));
            var then = requestAt(asOf, leadDays);
            if (then.Stations.Any(s => s.Days.Count == 0) || then.Blocks.All(b => b.Readings.Count == 0))
            {
                continue;
            }

            var estate = Planner.Fit(then, cancellation);
            foreach (var (block, set) in day)
            {
                var course = estate.Courses.First(c => c.State.Block.Code == block.Code);
                if (Hold(course, set, valves[block.ValveCode], today, leadDays) is { } one)
                {
                    held.Add(one);
                }
            }
        }

        return held;
    }

    private static HeldAgainst? Hold(Needs.BlockCourse course, ReadingSet set, ValveWater valve, DateOnly today, int leadDays)
    {
        var before = course.State.Sets.Where(s => s.Measure == set.Measure).ToList();
        if (before.Count == 0)
        {
            return null;
        }

        var applied = valve.AppliedMm(course.State.Block);
        var tensions = course.Expect(set.Measure, [.. Enumerable.Range(0, leadDays + 1).Select(d => applied.GetValueOrDefault(today.AddDays(d)))]);
        return new HeldAgainst(
            course.State.Block.Code,
            set.Date,
            set.Measure,
            leadDays,
            set.Statistics.RobustMeanMpa * Conversions.BarPerMegapascal,
            SetEvidence.Of(set).StandardErrorMpa * Conversions.BarPerMegapascal,
            TensionBands.OfMpa(tensions[leadDays]),
            before[^1].Statistics.RobustMeanMpa * Conversions.BarPerMegapascal,
            before.Count < 3 ? null : Line([.. before.TakeLast(3)], set.Date));
    }

    private static double Line(IReadOnlyList<ReadingSet> sets, DateOnly at)
    {
        // Days counted from the set that is foretold: the intercept is its tension.
        var line = LeastSquares.Line([.. sets.Select(s => (double)(s.Date.DayNumber - at.DayNumber))], [.. sets.Select(s => s.Statistics.RobustMeanMpa * Conversions.BarPerMegapascal)]);
        return line.Coefficients[0];
    }
}
