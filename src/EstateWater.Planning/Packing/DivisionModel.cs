using EstateWater.Planning.Needs;
using Google.OrTools.Sat;

namespace EstateWater.Planning.Packing;

/// <summary>Which valve gets how much of which night, as a model for CP-SAT. Pinned sets, and those in nights that are not divided, stand as they are.</summary>
internal sealed class DivisionModel
{
    private readonly SourceNights source;
    private readonly long[] flows;
    private readonly IReadOnlyList<int> nights;
    private readonly CpModel model = new();
    private readonly List<Offer> offers = [];
    private readonly List<Step> steps = [];

    /// <param name="source">What is wanted.</param>
    /// <param name="nights">The nights to divide.</param>
    /// <param name="standing">Sets in other nights, but for pinned ones.</param>
    public DivisionModel(SourceNights source, IReadOnlyList<int> nights, IReadOnlyList<PlacedSet> standing)
    {
        this.source = source;
        flows = source.Flows;
        this.nights = nights;
        for (var v = 0; v < source.Needs.Count; v++)
        {
            if (source.Needs[v].Quarters > 0 && flows[v] <= source.MostFlow)
            {
                OfferNights(v, [.. standing.Where(s => s.Need == source.Needs[v])]);
            }
        }

        LimitWater(standing);
        model.Maximize(LinearExpr.WeightedSum(
            [.. offers.Select(o => o.Quarters), .. offers.Select(o => (IntVar)o.Open), .. steps.Select(s => s.Quarters)],
            [.. offers.Select(o => -SourcePacking.NightCost(Need(o), o.Night)), .. offers.Select(o => -SourcePacking.OpeningCost(Need(o))), .. steps.Select(s => s.Worth)]));
    }

    /// <summary>In every night, quarter hours times these weights are at most the night's quarter hours.</summary>
    /// <param name="weights">By valve, in units of <paramref name="one"/>.</param>
    /// <param name="one">A weight of 1.</param>
    public void Limit(IReadOnlyList<long> weights, long one)
    {
        foreach (var night in nights)
        {
            var mine = offers.Where(o => o.Night == night).ToList();
            model.Add(LinearExpr.WeightedSum(mine.Select(o => o.Quarters), mine.Select(o => weights[o.Valve])) <= one * source.Nights[night].Quarters);
        }
    }

    /// <summary>Sets get a start, and flows never pass the source's at any moment.</summary>
    public void LayOnClock()
    {
        foreach (var night in nights)
        {
            var flow = model.AddCumulative(source.MostFlow);
            foreach (var offer in offers.Where(o => o.Night == night))
            {
                offer.Start = model.NewIntVar(0, source.Nights[night].Quarters, "start");
                offer.End = model.NewIntVar(0, source.Nights[night].Quarters, "end");
                flow.AddDemand(model.NewOptionalIntervalVar(offer.Start, offer.Quarters, offer.End, offer.Open, "set"), flows[offer.Valve]);
            }

            foreach (var set in source.Pinned.Where(p => p.Night == night))
            {
                flow.AddDemand(model.NewFixedSizeIntervalVar(LinearExpr.Constant(set.StartQuarter), set.Quarters, "pinned"), SourceNights.FlowOf(set.Need));
            }
        }
    }

    /// <summary>Where the search begins.</summary>
    public void Hint(IReadOnlyList<PlacedSet> sets)
    {
        model.ClearHints();
        foreach (var offer in offers)
        {
            var set = sets.FirstOrDefault(s => s.Need == Need(offer) && s.Night == offer.Night);
            var (start, quarters) = set is null ? (0, 0) : (set.StartQuarter, set.Quarters);
            model.AddHint(offer.Open, quarters > 0 ? 1 : 0);
            model.AddHint(offer.Quarters, quarters);
            if (offer.Start is not null && offer.End is not null)
            {
                model.AddHint(offer.Start, start);
                model.AddHint(offer.End, start + quarters);
            }
        }

        foreach (var valve in steps.GroupBy(s => s.Valve))
        {
            var left = sets.Where(s => s.Need == source.Needs[valve.Key]).Sum(s => s.Quarters);
            foreach (var step in valve)
            {
                model.AddHint(step.Quarters, Math.Min(left, step.Most));
                left -= Math.Min(left, step.Most);
            }
        }
    }

    /// <summary>The best division found within a limit, what none can be worth more than, and whether the gap was reached; null where the limit came first.</summary>
    /// <param name="gap">Gap at which to stop, as a share of all that is wanted but for hours by hand.</param>
    /// <param name="work">Limit in the solver's own work units.</param>
    public (IReadOnlyList<PlacedSet> Sets, double Bound, bool Proven)? Solve(double gap, double work)
    {
        var solver = new CpSolver
        {
            StringParameters = FormattableString.Invariant($"num_workers:1,random_seed:1,max_num_cuts:100,absolute_gap_limit:{gap * SourcePacking.WorthOfWanted(source):0.0},max_deterministic_time:{work}"),
        };
        var status = solver.Solve(model);
        if (status == CpSolverStatus.Unknown)
        {
            return null;
        }

        if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible))
        {
            throw new InvalidOperationException($"Packing source {source.Source.Code} ended as {status}; giving no water at all should always be possible.");
        }

        return ([.. offers
            .Where(o => solver.Value(o.Quarters) > 0)
            .Select(o => new PlacedSet(Need(o), o.Night, o.Start is null ? 0 : (int)solver.Value(o.Start), (int)solver.Value(o.Quarters)))],
            solver.BestObjectiveBound,
            status == CpSolverStatus.Optimal);
    }

    private ValveNeed Need(Offer offer) => source.Needs[offer.Valve];

    // A set is either absent or long enough to be worth the walk; a valve opens about as often as it wants to.
    private void OfferNights(int v, IReadOnlyList<PlacedSet> standing)
    {
        var need = source.Needs[v];
        var stands = standing.Sum(s => s.Quarters);
        var mine = new List<Offer>();
        foreach (var night in nights)
        {
            var longest = Math.Min(need.Quarters - stands, source.Nights[night].Quarters);
            var shortest = Math.Min(Math.Min(NeedSearch.ShortestSetQuarters, need.Quarters), source.Nights[night].Quarters);
            if (longest < shortest || longest == 0 || need.LostNights.Contains(night))
            {
                continue;
            }

            var (open, quarters) = (model.NewBoolVar("open"), model.NewIntVar(0, longest, "quarters"));
            model.Add(quarters <= longest * open);
            model.Add(quarters >= shortest * open);
            mine.Add(new Offer(v, night, open, quarters));
        }

        if (mine.Count > 0)
        {
            offers.AddRange(mine);
            model.Add(LinearExpr.Sum(mine.Select(o => o.Open)) <= need.MostOpenings - standing.Count);
            model.Add(LinearExpr.Sum(mine.Select(o => o.Quarters)) + stands == LinearExpr.Sum(OfferSteps(v)));
        }
    }

    // Each further step is worth no more than the one before, so the solver takes them in order by itself.
    private List<IntVar> OfferSteps(int v)
    {
        var need = source.Needs[v];
        var mine = new List<IntVar>();
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
            mine.Add(model.NewIntVar(0, most, "step"));
            steps.Add(new Step(v, mine[^1], most, worth));
            first = last + 1;
        }

        return mine;
    }

    private void LimitWater(IReadOnlyList<PlacedSet> standing)
    {
        foreach (var night in nights)
        {
            var mine = offers.Where(o => o.Night == night).ToList();
            model.Add(LinearExpr.WeightedSum(mine.Select(o => o.Quarters), mine.Select(o => flows[o.Valve])) <= (source.MostFlow * source.Nights[night].Quarters) - source.Pinned.Where(p => p.Night == night).Sum(Water));
        }

        if (source.LeftFlowQuarters is { } left)
        {
            model.Add(LinearExpr.WeightedSum(offers.Select(o => o.Quarters), offers.Select(o => flows[o.Valve])) <= Math.Max(0, left - standing.Concat(source.Pinned).Sum(Water)));
        }
    }

    private static long Water(PlacedSet set) => SourceNights.FlowOf(set.Need) * set.Quarters;

    private sealed class Offer(int valve, int night, BoolVar open, IntVar quarters)
    {
        public int Valve => valve;

        public int Night => night;

        public BoolVar Open => open;

        public IntVar Quarters => quarters;

        public IntVar? Start { get; set; }

        public IntVar? End { get; set; }
    }

    private sealed record Step(int Valve, IntVar Quarters, int Most, long Worth);
}
