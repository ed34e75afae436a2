using EstateWater.Planning.Needs;
using Google.OrTools.Sat;

namespace EstateWater.Planning.Packing;

/// <summary>Packs the needs of a source's valves into its nights.</summary>
/// <remarks>
/// <para>
/// First CP-SAT gives quarter hours to nights under the source's flow times hours, its allocation and the length of a
/// night: nothing placed on a clock can be worth more, so its bound holds for the whole. Then each night is laid on the
/// clock (<see cref="NightClock"/>), which loses something only where flows do not fit beside each other.
/// </para>
/// <para>One worker, a fixed seed and a limit in the solver's own work units: the same input gives the same plan.</para>
/// </remarks>
internal static class SourcePacking
{
    public const string Solver = "num_workers:1,random_seed:1,relative_gap_limit:0.0001,max_deterministic_time:";

    private const double LitresPerM3 = 1000;

    // Water after the trouble has come helps less; a neighbouring night is nearly as good. Ours.
    private const double LateWorth = 0.3;
    private const double WorthLostPerNight = 0.01;

    public static PackedSource Pack(SourceNights source)
    {
        if (source.Nights.Count == 0 || source.Needs.All(n => n.Quarters == 0))
        {
            return new PackedSource([], 0, 0);
        }

        var model = new CpModel();
        var given = new IntVar[source.Needs.Count][];
        var worth = new List<(IntVar Quarters, long Worth)>();
        for (var v = 0; v < source.Needs.Count; v++)
        {
            given[v] = OfferNights(model, source, source.Needs[v], v);
            for (var n = 0; n < source.Nights.Count; n++)
            {
                worth.Add((given[v][n], Worth(source.Needs[v], n)));
            }
        }

        LimitFlow(model, source, given);
        model.Maximize(LinearExpr.WeightedSum(worth.Select(w => w.Quarters), worth.Select(w => w.Worth)));
        var solver = new CpSolver { StringParameters = Solver + "2" };
        var status = solver.Solve(model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            throw new InvalidOperationException($"Packing source {source.Source.Code} ended as {status}; giving no water at all should always be possible.");
        }

        var sets = new List<PlacedSet>();
        for (var n = 0; n < source.Nights.Count; n++)
        {
            var wanted = source.Needs
                .Select((need, v) => new WantedSet(need, (int)solver.Value(given[v][n]), Worth(need, n)))
                .Where(w => w.Quarters > 0)
                .ToList();
            sets.AddRange(NightClock.Lay(wanted, source.Source.MaxFlowM3PerH, source.Nights[n].Quarters).Select(s => new PlacedSet(s.Need, n, s.StartQuarter, s.Quarters)));
        }

        return new PackedSource(sets, sets.Sum(s => s.Quarters * Worth(s.Need, s.Night)), (long)Math.Floor(solver.BestObjectiveBound + 1e-6));
    }

    /// <summary>What a quarter hour of a need is worth in a night, as a whole number of at least 1.</summary>
    public static long Worth(ValveNeed need, int night)
    {
        // Hours set by hand come before all others: the manager has decided.
        var whole = need.ByHand ? 1000 : Math.Min(need.WorthPerQuarter, 100);
        var away = need.QuartersByNight.Select((q, n) => q > 0 ? Math.Abs(n - night) : int.MaxValue).Min();
        var share = night > need.LastGoodNight ? LateWorth : 1 - (WorthLostPerNight * Math.Min(away, 20));
        return 1 + (long)Math.Round(100_000 * whole * share);
    }

    // A set is either absent or long enough to be worth the walk; a valve opens about as often as it wants to.
    private static IntVar[] OfferNights(CpModel model, SourceNights source, ValveNeed need, int v)
    {
        var shortest = Math.Min(NeedSearch.ShortestSetQuarters, need.Quarters);
        var given = new IntVar[source.Nights.Count];
        var opens = new List<BoolVar>();
        for (var n = 0; n < source.Nights.Count; n++)
        {
            var longest = need.Valve.FlowM3PerH > source.Source.MaxFlowM3PerH ? 0 : Math.Min(need.Quarters, source.Nights[n].Quarters);
            given[n] = model.NewIntVar(0, longest, $"quarters {v} {n}");
            if (longest == 0)
            {
                continue;
            }

            var open = model.NewBoolVar($"open {v} {n}");
            model.Add(given[n] <= longest * open);
            model.Add(given[n] >= Math.Min(shortest, longest) * open);
            opens.Add(open);
        }

        model.Add(LinearExpr.Sum(given) <= need.Quarters);
        model.Add(LinearExpr.Sum(opens) <= need.QuartersByNight.Count(q => q > 0) + 1);
        return given;
    }

    private static void LimitFlow(CpModel model, SourceNights source, IntVar[][] given)
    {
        var flows = source.Needs.Select(n => (long)Math.Ceiling(n.Valve.FlowM3PerH * LitresPerM3)).ToArray();
        var most = (long)Math.Floor(source.Source.MaxFlowM3PerH * LitresPerM3);
        for (var n = 0; n < source.Nights.Count; n++)
        {
            var night = n;
            model.Add(LinearExpr.WeightedSum(given.Select(g => g[night]), flows) <= most * source.Nights[n].Quarters);
        }

        if (source.LeftM3 is { } left)
        {
            var all = given.SelectMany((g, v) => g.Select(quarters => (quarters, flow: flows[v]))).ToList();
            model.Add(LinearExpr.WeightedSum(all.Select(a => a.quarters), all.Select(a => a.flow)) <= (long)Math.Floor(Math.Max(0, left) * 4 * LitresPerM3));
        }
    }
}
