using EstateWater.Planning.Needs;
using Google.OrTools.Sat;

namespace EstateWater.Planning.Packing;

/// <summary>A set that wants a place in a night.</summary>
internal sealed record WantedSet(ValveNeed Need, int Quarters, long WorthPerQuarter);

/// <summary>A set with its start.</summary>
internal sealed record TimedSet(ValveNeed Need, int StartQuarter, int Quarters);

/// <summary>Lays a night's sets on the clock so that their flows together never pass the source's.</summary>
internal static class NightClock
{
    /// <summary>First fit where it holds everything; CP-SAT, which may shorten sets, where it does not.</summary>
    /// <param name="wanted">What the night was given.</param>
    /// <param name="pinned">What stands there already.</param>
    /// <param name="most">Flow of the source. [L/h]</param>
    /// <param name="quarters">Length of the night.</param>
    public static IReadOnlyList<TimedSet> Lay(IReadOnlyList<WantedSet> wanted, IReadOnlyList<TimedSet> pinned, long most, int quarters) =>
        Orders.Select(order => FirstFit([.. order(wanted)], pinned, most, quarters)).FirstOrDefault(laid => laid is not null)
            ?? Solve(wanted, pinned, most, quarters);

    private static readonly Func<IReadOnlyList<WantedSet>, IEnumerable<WantedSet>>[] Orders =
    [
        sets => sets.OrderByDescending(w => w.Quarters).ThenByDescending(Flow).ThenBy(w => w.Need.Valve.Code, StringComparer.Ordinal),
        sets => sets.OrderByDescending(Flow).ThenByDescending(w => w.Quarters).ThenBy(w => w.Need.Valve.Code, StringComparer.Ordinal),
        sets => sets.OrderByDescending(w => Flow(w) * w.Quarters).ThenBy(w => w.Need.Valve.Code, StringComparer.Ordinal),
    ];

    private static long Flow(WantedSet set) => Flow(set.Need);

    private static long Flow(ValveNeed need) => SourceNights.FlowOf(need);

    // In the order given, each as early as the flow allows.
    private static List<TimedSet>? FirstFit(IReadOnlyList<WantedSet> wanted, IReadOnlyList<TimedSet> pinned, long most, int quarters)
    {
        var used = new long[quarters];
        foreach (var set in pinned)
        {
            Use(used, set);
        }

        var timed = new List<TimedSet>();
        foreach (var set in wanted)
        {
            var start = Enumerable.Range(0, Math.Max(0, quarters - set.Quarters + 1))
                .Cast<int?>()
                .FirstOrDefault(s => Enumerable.Range(s!.Value, set.Quarters).All(q => used[q] + Flow(set) <= most));
            if (start is not { } at)
            {
                return null;
            }

            timed.Add(new TimedSet(set.Need, at, set.Quarters));
            Use(used, timed[^1]);
        }

        return timed;
    }

    private static void Use(long[] used, TimedSet set)
    {
        for (var q = set.StartQuarter; q < set.StartQuarter + set.Quarters; q++)
        {
            used[q] += Flow(set.Need);
        }
    }

    private static List<TimedSet> Solve(IReadOnlyList<WantedSet> wanted, IReadOnlyList<TimedSet> pinned, long most, int quarters)
    {
        var model = new CpModel();
        var flow = model.AddCumulative(most);
        var sets = new List<(WantedSet Set, BoolVar Open, IntVar Start, IntVar Length)>();
        for (var i = 0; i < wanted.Count; i++)
        {
            var set = wanted[i];
            var open = model.NewBoolVar($"open {i}");
            var start = model.NewIntVar(0, quarters, $"start {i}");
            var end = model.NewIntVar(0, quarters, $"end {i}");
            var length = model.NewIntVar(0, set.Quarters, $"length {i}");
            model.Add(length >= Math.Min(NeedSearch.ShortestSetQuarters, set.Quarters) * open);
            model.Add(length <= set.Quarters * open);
            flow.AddDemand(model.NewOptionalIntervalVar(start, length, end, open, $"set {i}"), Flow(set));
            sets.Add((set, open, start, length));
        }

        foreach (var set in pinned)
        {
            flow.AddDemand(model.NewFixedSizeIntervalVar(LinearExpr.Constant(set.StartQuarter), set.Quarters, $"pinned {set.Need.Valve.Code}"), Flow(set.Need));
        }

        model.Maximize(LinearExpr.WeightedSum(sets.Select(s => s.Length), sets.Select(s => s.Set.WorthPerQuarter)));
        var solver = new CpSolver { StringParameters = "num_workers:1,random_seed:1,relative_gap_limit:0.001,max_deterministic_time:0.05" };
        var status = solver.Solve(model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            throw new InvalidOperationException($"Laying a night's sets ended as {status}; leaving all out should always be possible.");
        }

        return [.. sets
            .Where(s => solver.Value(s.Length) > 0)
            .Select(s => new TimedSet(s.Set.Need, (int)solver.Value(s.Start), (int)solver.Value(s.Length)))];
    }
}
