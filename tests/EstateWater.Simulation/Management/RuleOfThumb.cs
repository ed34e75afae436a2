using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Observation;

namespace EstateWater.Simulation.Management;

/// <summary>
/// How an experienced hand waters without computing: where last week's leaves stood between floor and ceiling sets the
/// week's millimetres, put on in one to three sets.
/// </summary>
public sealed class RuleOfThumb(SimulatedEstate estate, FieldCrew crew)
{
    private const double FullWeekMm = 20;
    private const double LongestSetHours = 9;

    /// <summary>What a valve gets in a week instead of the rule's millimetres, for reasons no rule knows.</summary>
    public Func<string, DateOnly, double, double> Habit { get; init; } = (_, _, ruleMm) => ruleMm;

    /// <summary>Sets wanted in the week that starts today: a valve and hours, once for each set.</summary>
    public IReadOnlyList<(string Valve, double Hours)> WeekSets()
    {
        var sets = new List<(string, double)>();
        foreach (var valve in estate.Spec.Valves)
        {
            var blocks = estate.Spec.Blocks.Where(b => b.Valve == valve.Code).ToList();
            var hours = Habit(valve.Code, estate.Today, blocks.Average(WantedMm)) / blocks.Average(b => b.DeclaredMmPerH);
            var count = (int)Math.Ceiling(hours / LongestSetHours);
            for (var i = 0; i < count && hours >= 1; i++)
            {
                sets.Add((valve.Code, Math.Round(2 * hours / count) / 2));
            }
        }

        return sets;
    }

    private double WantedMm(BlockSpec block)
    {
        var latest = crew.Readings.Where(r => r.Block == block.Code && estate.Today.DayNumber - DateOnly.FromDateTime(r.TakenAt.DateTime).DayNumber < 9).ToList();
        var stage = estate.Block(block.Code).Canopy.Stage;
        if (!block.IsRead)
        {
            return stage is > 15 and < 43 ? 4 : 0;
        }

        if (latest.Count == 0 || estate.Spec.TargetOf(block, stage) is not { } target)
        {
            return 0;
        }

        var last = latest.Max(r => r.TakenAt.Date);
        var mean = latest.Where(r => r.TakenAt.Date == last).Average(r => r.TensionBar);
        return FullWeekMm * Math.Clamp(0.25 + (0.6 * (mean - target.FloorBar) / (target.CeilingBar - target.FloorBar)), 0, 1.1);
    }
}
