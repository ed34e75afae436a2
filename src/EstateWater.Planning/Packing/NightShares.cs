using EstateWater.Planning.Needs;
using Google.OrTools.Sat;

namespace EstateWater.Planning.Packing;

/// <summary>Quarter hours by need and night, before anything is laid on a clock.</summary>
/// <param name="Quarters">By need, then night.</param>
/// <param name="Bound">No division of nights can be worth more.</param>
internal sealed record NightShares(int[][] Quarters, long Bound)
{
    private const double LitresPerM3 = 1000;

    /// <summary>Divides the nights with CP-SAT.</summary>
    /// <param name="source">What is wanted.</param>
    public static NightShares Divide(SourceNights source)
    {
        var model = new CpModel();
        var given = new IntVar[source.Needs.Count][];
        var terms = new List<(IntVar Variable, long Worth)>();
        for (var v = 0; v < source.Needs.Count; v++)
        {
            given[v] = OfferNights(model, source, source.Needs[v], v, terms);
        }

        LimitFlow(model, source, given);
        model.Maximize(LinearExpr.WeightedSum(terms.Select(t => t.Variable), terms.Select(t => t.Worth)));
        var solver = new CpSolver { StringParameters = SourcePacking.Solver + "0.15" };
        var status = solver.Solve(model);
        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            throw new InvalidOperationException($"Packing source {source.Source.Code} ended as {status}; giving no water at all should always be possible.");
        }

        return new NightShares(
            [.. given.Select(nights => nights.Select(q => (int)solver.Value(q)).ToArray())],
            (long)Math.Floor(solver.BestObjectiveBound + 1e-6));
    }

    // A set is either absent or long enough to be worth the walk; a valve opens about as often as it wants to.
    private static IntVar[] OfferNights(CpModel model, SourceNights source, ValveNeed need, int v, List<(IntVar Variable, long Worth)> terms)
    {
        var shortest = Math.Min(NeedSearch.ShortestSetQuarters, need.Quarters);
        var given = new IntVar[source.Nights.Count];
        var opens = new List<BoolVar>();
        for (var n = 0; n < source.Nights.Count; n++)
        {
            var longest = need.Valve.FlowM3PerH > source.Source.MaxFlowM3PerH || need.LostNights.Contains(n) ? 0 : Math.Min(need.Quarters, source.Nights[n].Quarters);
            given[n] = model.NewIntVar(0, longest, $"quarters {v} {n}");
            if (longest == 0)
            {
                continue;
            }

            var open = model.NewBoolVar($"open {v} {n}");
            model.Add(given[n] <= longest * open);
            model.Add(given[n] >= Math.Min(shortest, longest) * open);
            opens.Add(open);
            terms.Add((given[n], -SourcePacking.NightCost(need, n)));
            terms.Add((open, -SourcePacking.OpeningCost(need)));
        }

        model.Add(LinearExpr.Sum(given) == LinearExpr.Sum(OfferSteps(model, need, v, terms)));
        model.Add(LinearExpr.Sum(opens) <= need.QuartersByNight.Count(q => q > 0) + 1);
        return given;
    }

    // Each further step is worth no more than the one before, so the solver takes them in order by itself.
    private static List<IntVar> OfferSteps(CpModel model, ValveNeed need, int v, List<(IntVar Variable, long Worth)> terms)
    {
        var steps = new List<IntVar>();
        var first = 0;
        while (first < need.WorthByPiece.Count)
        {
            var worth = SourcePacking.PieceWorth(need, first);
            var last = first;
            while (last + 1 < need.WorthByPiece.Count && SourcePacking.PieceWorth(need, last + 1) == worth)
            {
                last++;
            }

            var most = Math.Min(need.Quarters, (last + 1) * ValveNeed.PieceQuarters) - (first * ValveNeed.PieceQuarters);
            var step = model.NewIntVar(0, most, $"step {v} {first}");
            steps.Add(step);
            terms.Add((step, worth));
            first = last + 1;
        }

        return steps;
    }

    // A quarter hour's share of litres an hour, as the flows are counted.
    private static long Litres(PlacedSet set) => (long)Math.Ceiling(set.Need.Valve.FlowM3PerH * LitresPerM3) * set.Quarters;

    private static void LimitFlow(CpModel model, SourceNights source, IntVar[][] given)
    {
        var flows = source.Needs.Select(n => (long)Math.Ceiling(n.Valve.FlowM3PerH * LitresPerM3)).ToArray();
        var most = (long)Math.Floor(source.Source.MaxFlowM3PerH * LitresPerM3);
        for (var n = 0; n < source.Nights.Count; n++)
        {
            var night = n;
            model.Add(LinearExpr.WeightedSum(given.Select(g => g[night]), flows) <= (most * source.Nights[n].Quarters) - source.Pinned.Where(p => p.Night == night).Sum(Litres));
        }

        if (source.LeftM3 is { } left)
        {
            var all = given.SelectMany((g, v) => g.Select(quarters => (quarters, flow: flows[v]))).ToList();
            model.Add(LinearExpr.WeightedSum(all.Select(a => a.quarters), all.Select(a => a.flow)) <= (long)Math.Floor(Math.Max(0, (left * 4 * LitresPerM3) - source.Pinned.Sum(Litres))));
        }
    }
}
