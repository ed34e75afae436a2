using System.Globalization;
using EstateWater.Simulation.Estate;

namespace EstateWater.Benchmarks.ClosedLoop;

/// <summary>
/// Runs whole seasons of simulated estates under the planner and its rivals, and says how they went.
/// Seeds 101–199 are for looking at while working; <see cref="HeldBackSeeds"/> are for the final word: no code is tuned on them.
/// </summary>
internal static class ClosedLoopCommand
{
    public const string HeldBackSeeds = "901-908";

    public static int Run(string seeds, string? rowsFile, string? only, double forecastError, bool isReadBefore)
    {
        var totals = new Dictionary<string, SeasonScore>();
        var outlooks = new Dictionary<(string Name, int Lead), OutlookScore>();
        foreach (var seed in SeedsOf(seeds))
        {
            var planner = new PlannerDecider(isHeldBesidePlain: true);
            foreach (var decider in new IDecider[] { new CalendarRule(), new ThresholdRule(), new PerfectKnowledge(), planner }.Where(d => only is null || d.Name == only))
            {
                var season = SeasonRun.Live(SeasonRun.Estate(seed, forecastError, isReadBefore), decider, isReadBefore);
                var score = SeasonScore.Of(season);
                totals[decider.Name] = totals.TryGetValue(decider.Name, out var sum) ? sum + score : score;
                Console.WriteLine($"seed {seed} {Line(decider.Name, score)}");
                if (decider != planner)
                {
                    continue;
                }

                if (rowsFile is not null)
                {
                    File.AppendAllLines(rowsFile, OutlookScore.Rows(seed, planner.Expectations, season.Estate));
                }

                Add(outlooks, "planner", planner.Expectations, season.Estate);
                Add(outlooks, "one bucket", planner.Plain, season.Estate);
            }
        }

        Console.WriteLine();
        foreach (var (name, score) in totals)
        {
            Console.WriteLine($"all seeds {Line(name, score)}");
        }

        foreach (var ((name, _), outlook) in outlooks)
        {
            Console.WriteLine($"{name}, {outlook}");
        }

        return 0;
    }

    private static void Add(Dictionary<(string Name, int Lead), OutlookScore> outlooks, string name, IReadOnlyList<Expectation> expectations, SimulatedEstate estate)
    {
        foreach (var lead in PlannerDecider.Leads)
        {
            var one = OutlookScore.Of(lead, expectations, estate);
            outlooks[(name, lead)] = outlooks.TryGetValue((name, lead), out var before) ? before + one : one;
        }
    }

    /// <summary>"101-108" or "101".</summary>
    public static IEnumerable<ulong> SeedsOf(string text)
    {
        var ends = text.Split('-').Select(s => ulong.Parse(s, CultureInfo.InvariantCulture)).ToList();
        for (var seed = ends[0]; seed <= ends[^1]; seed++)
        {
            yield return seed;
        }
    }

    /// <summary>A season in one line.</summary>
    public static string Line(string name, SeasonScore s) => FormattableString.Invariant(
        $"{name,-10} over ceiling in heat {s.OverInHeat,4} of {s.HeatDays,4} block-days ({s.OverInHeatBarDays,5:0} bar days), over ceiling {s.Over,4} of {s.Days} ({s.OverBarDays,5:0}), watered under floor {s.Under,4}, water {s.WaterM3,7:0} m³");
}
