using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Management;
using EstateWater.Simulation.Observation;

namespace EstateWater.Benchmarks.ClosedLoop;

/// <summary>The same millimetres every week of summer, whatever is read.</summary>
internal sealed class CalendarRule : IDecider
{
    private const double WeekMm = 12;

    public string Name => "calendar";

    public IReadOnlyList<ValveOpening> Week(SimulatedEstate estate, FieldCrew crew) => WeekSets.Lay(estate, _ => WeekMm);
}

/// <summary>A fixed amount when the last set stands within a bar of the ceiling, else nothing.</summary>
internal sealed class ThresholdRule : IDecider
{
    private const double WeekMm = 16;
    private const double NearBar = 1;

    public string Name => "threshold";

    public IReadOnlyList<ValveOpening> Week(SimulatedEstate estate, FieldCrew crew) =>
        WeekSets.Lay(estate, block =>
        {
            var last = crew.Readings.Where(r => r.Block == block.Code && r.TakenAt > estate.Spec.Site.At(estate.Today.AddDays(-8), 0)).GroupBy(r => r.TakenAt.Date).MaxBy(g => g.Key);
            var target = estate.Spec.TargetOf(block, estate.Block(block.Code).Canopy.Stage);
            return last is not null && target is not null && last.Average(r => r.TensionBar) > target.CeilingBar - NearBar ? WeekMm : 0;
        });
}

/// <summary>Knows the true state and the weather to come, and puts on the least that keeps every block of a valve under its ceiling.</summary>
internal sealed class PerfectKnowledge : IDecider
{
    private const int DaysAhead = 9;
    private const double StepMm = 3;
    private const int Steps = 12;

    public string Name => "perfect";

    public IReadOnlyList<ValveOpening> Week(SimulatedEstate estate, FieldCrew crew)
    {
        var least = new Dictionary<string, double>();
        for (var step = 0; step <= Steps; step++)
        {
            foreach (var valve in Holding(estate, StepMm * step))
            {
                least.TryAdd(valve, StepMm * step);
            }
        }

        return WeekSets.Lay(estate, block => least.GetValueOrDefault(block.Valve, StepMm * Steps));
    }

    /// <summary>Valves whose blocks all stay under their ceilings when every valve gets so much.</summary>
    private static List<string> Holding(SimulatedEstate estate, double weekMm)
    {
        var trial = estate.Fork();
        var sets = WeekSets.Unlimited(estate, weekMm);
        for (var day = 0; day < DaysAhead; day++)
        {
            trial.AdvanceDay([.. sets.Where(o => DateOnly.FromDateTime(o.StartedAt.DateTime) == trial.Today)]);
        }

        return [.. estate.Spec.Blocks.GroupBy(b => b.Valve).Where(g => g.All(b => Holds(trial, b))).Select(g => g.Key)];
    }

    private static bool Holds(SimulatedEstate trial, BlockSpec block) =>
        trial.Block(block.Code).Days.TakeLast(DaysAhead - 1).All(d =>
            trial.Spec.TargetOf(block, d.Stage) is not { } target || d.TensionBar(block.Measure) <= target.CeilingBar);
}

/// <summary>Turns millimetres a week into sets on nights.</summary>
internal static class WeekSets
{
    private const double LongestHours = 11;

    /// <summary>Under the source's flow and window; blocks of one valve get what they want on average.</summary>
    public static IReadOnlyList<ValveOpening> Lay(SimulatedEstate estate, Func<BlockSpec, double> weekMm) =>
        NightSchedule.Lay(estate.Spec, estate.Today, [.. estate.Spec.Valves.SelectMany(v => Split(v.Code, Hours(estate.Spec, v.Code, weekMm)))]);

    /// <summary>Without limits, spread over the week: what a trial puts on.</summary>
    public static IReadOnlyList<ValveOpening> Unlimited(SimulatedEstate estate, double weekMm) =>
        [.. estate.Spec.Valves.SelectMany(v => Split(v.Code, Hours(estate.Spec, v.Code, _ => weekMm))
            .Select((s, i) => new ValveOpening(s.Valve, estate.Spec.Site.At(estate.Today.AddDays(i * 2 % 7), 20), s.Hours)))];

    private static double Hours(EstateSpec spec, string valve, Func<BlockSpec, double> weekMm)
    {
        var blocks = spec.Blocks.Where(b => b.Valve == valve).ToList();
        return blocks.Average(weekMm) / blocks.Average(b => b.DeclaredMmPerH);
    }

    private static IEnumerable<(string Valve, double Hours)> Split(string valve, double hours)
    {
        var count = hours < 1 ? 0 : Math.Clamp((int)Math.Ceiling(hours / LongestHours), 1, 4);
        return Enumerable.Repeat((valve, Math.Min(LongestHours, Math.Round(4 * hours / Math.Max(1, count)) / 4)), count);
    }
}
