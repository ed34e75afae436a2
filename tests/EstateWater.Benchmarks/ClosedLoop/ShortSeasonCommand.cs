using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Observation;

namespace EstateWater.Benchmarks.ClosedLoop;

/// <summary>
/// The closed loop with less water than one who knows everything would use: the planner that keeps water for later
/// against the same planner that spends it as it comes, and the rules of thumb. All stop when it is used up.
/// </summary>
internal static class ShortSeasonCommand
{
    public static int Run(string seeds, double allocationShare)
    {
        var totals = new Dictionary<string, SeasonScore>();
        foreach (var seed in ClosedLoopCommand.SeedsOf(seeds))
        {
            var allocation = allocationShare * SeasonScore.Of(SeasonRun.Live(seed, new PerfectKnowledge())).WaterM3;
            (IDecider Decider, double? Told)[] rivals =
            [
                (new UntilUsedUp("calendar", new CalendarRule(), allocation), allocation),
                (new UntilUsedUp("threshold", new ThresholdRule(), allocation), allocation),
                (new UntilUsedUp("perfect", new PerfectKnowledge(), allocation), allocation),
                (new UntilUsedUp("spends", new PlannerDecider(), allocation), null),
                (new UntilUsedUp("keeps", new PlannerDecider(), allocation), allocation),
            ];
            foreach (var (decider, told) in rivals)
            {
                var score = SeasonScore.Of(SeasonRun.Live(SeasonRun.Estate(seed, told), decider));
                totals[decider.Name] = totals.TryGetValue(decider.Name, out var sum) ? sum + score : score;
                Console.WriteLine($"seed {seed} of {allocation:0} m³ {ClosedLoopCommand.Line(decider.Name, score)}");
            }
        }

        Console.WriteLine();
        foreach (var (name, score) in totals)
        {
            Console.WriteLine($"all seeds {ClosedLoopCommand.Line(name, score)}");
        }

        return 0;
    }
}

/// <summary>Runs another's sets as long as there is water.</summary>
internal sealed class UntilUsedUp(string name, IDecider inner, double allocationM3) : IDecider
{
    public string Name => name;

    public IReadOnlyList<ValveOpening> Week(SimulatedEstate estate, FieldCrew crew)
    {
        var left = allocationM3 - SeasonScore.WaterM3Of(estate, estate.Openings);
        var run = new List<ValveOpening>();
        foreach (var opening in inner.Week(estate, crew).OrderBy(o => o.StartedAt).ThenBy(o => o.Valve, StringComparer.Ordinal))
        {
            var water = SeasonScore.WaterM3Of(estate, [opening]);
            if (water > left)
            {
                break;
            }

            left -= water;
            run.Add(opening);
        }

        return run;
    }
}
