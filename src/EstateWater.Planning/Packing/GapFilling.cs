using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Packing;

/// <summary>Gives what the nights still have room for to the needs that still want it.</summary>
/// <remarks>Sets of different flows leave gaps on the clock. The needs that lose most fill them first: by longer sets, then by a further one.</remarks>
internal sealed class GapFilling
{
    private readonly SourceNights source;
    private readonly long most;
    private readonly long[][] used;
    private readonly List<PlacedSet> sets;

    private GapFilling(SourceNights source, IEnumerable<PlacedSet> placed)
    {
        this.source = source;
        most = source.MostFlow;
        used = [.. source.Nights.Select(n => new long[n.Quarters])];
        sets = [.. placed];
        sets.ForEach(s => Use(s.Night, s.StartQuarter, s.Quarters, Flow(s.Need)));
    }

    /// <summary>The sets with the gaps filled.</summary>
    public static List<PlacedSet> Fill(SourceNights source, IEnumerable<PlacedSet> placed)
    {
        var filling = new GapFilling(source, placed);
        foreach (var need in source.Needs
            .Where(n => filling.Missing(n) > 0 && Flow(n) <= filling.most)
            .OrderByDescending(n => SourcePacking.PieceWorth(n, filling.Given(n) / ValveNeed.PieceQuarters) / (double)Flow(n))
            .ThenBy(n => n.Valve.Code, StringComparer.Ordinal))
        {
            filling.Fill(need);
        }

        return filling.sets;
    }

    private static long Flow(ValveNeed need) => SourceNights.FlowOf(need);

    private int Given(ValveNeed need) => sets.Where(s => s.Need == need).Sum(s => s.Quarters);

    private int Missing(ValveNeed need) => Math.Min(need.Quarters - Given(need), AllocationLeft(need));

    // Quarter hours that the season's allocation still allows.
    private int AllocationLeft(ValveNeed need) => source.LeftFlowQuarters is { } left
        ? (int)Math.Min(int.MaxValue, Math.Max(0, left - sets.Sum(s => Flow(s.Need) * s.Quarters)) / Math.Max(1, Flow(need)))
        : int.MaxValue;

    private void Fill(ValveNeed need)
    {
        foreach (var night in Enumerable.Range(0, source.Nights.Count).OrderBy(n => SourcePacking.NightCost(need, n)).ThenBy(n => n))
        {
            if (Missing(need) <= 0 || SourcePacking.PieceWorth(need, Given(need) / ValveNeed.PieceQuarters) <= SourcePacking.NightCost(need, night))
            {
                return;
            }

            if (need.LostNights.Contains(night))
            {
                continue;
            }

            var at = sets.FindIndex(s => s.Need == need && s.Night == night);
            if (at >= 0)
            {
                Lengthen(at);
            }
            else if (Missing(need) >= NeedSearch.ShortestSetQuarters && sets.Count(s => s.Need == need) < need.MostOpenings)
            {
                Open(need, night);
            }
        }
    }

    private void Lengthen(int at)
    {
        var set = sets[at];
        var missing = Missing(set.Need);
        var flow = Flow(set.Need);
        var (start, end) = (set.StartQuarter, set.StartQuarter + set.Quarters);
        while (end - start - set.Quarters < missing && end < used[set.Night].Length && used[set.Night][end] + flow <= most)
        {
            end++;
        }

        while (end - start - set.Quarters < missing && start > 0 && used[set.Night][start - 1] + flow <= most)
        {
            start--;
        }

        Use(set.Night, start, set.StartQuarter - start, flow);
        Use(set.Night, set.StartQuarter + set.Quarters, end - set.StartQuarter - set.Quarters, flow);
        sets[at] = set with { StartQuarter = start, Quarters = end - start };
    }

    // The longest free run of the night, as far as it is wanted.
    private void Open(ValveNeed need, int night)
    {
        var flow = Flow(need);
        var (best, longest, run) = (0, 0, 0);
        for (var quarter = 0; quarter < used[night].Length; quarter++)
        {
            run = used[night][quarter] + flow <= most ? run + 1 : 0;
            if (run > longest)
            {
                (best, longest) = (quarter - run + 1, run);
            }
        }

        if (longest >= NeedSearch.ShortestSetQuarters)
        {
            var quarters = Math.Min(longest, Missing(need));
            var worth = SourcePacking.PieceWorth(need, (Given(need) + quarters - 1) / ValveNeed.PieceQuarters) - SourcePacking.NightCost(need, night);
            if (quarters * worth <= SourcePacking.OpeningCost(need))
            {
                return;
            }

            Use(night, best, quarters, flow);
            sets.Add(new PlacedSet(need, night, best, quarters));
        }
    }

    private void Use(int night, int start, int quarters, long flow)
    {
        for (var quarter = start; quarter < start + quarters; quarter++)
        {
            used[night][quarter] += flow;
        }
    }
}
