using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Packing;

/// <summary>Makes room for hours set by hand that the gaps do not hold.</summary>
/// <remarks>
/// One of the valve's sets grows, or a further one is opened in a night that has none of it, where too little is missing for
/// a set with hours of the valve's longest; sets beside it give way. Without this, an hour more for one valve would turn the
/// whole week over.
/// </remarks>
internal static class HandRoom
{
    /// <summary>The sets with what hours by hand are missing added, where that is possible; the same sets where none are missing.</summary>
    public static IReadOnlyList<PlacedSet> Make(SourceNights source, IReadOnlyList<PlacedSet> sets) =>
        source.Needs.Where(n => n.ByHand).Aggregate(sets, (now, need) => Make(source, now, need));

    private static IReadOnlyList<PlacedSet> Make(SourceNights source, IReadOnlyList<PlacedSet> sets, ValveNeed need)
    {
        var mine = sets.Where(s => s.Need == need).ToList();
        var missing = need.Quarters - mine.Sum(s => s.Quarters);
        if (missing <= 0)
        {
            return sets;
        }

        var longer = mine.SelectMany(set => Longer(set, missing, source.Nights[set.Night].Quarters).Select(after => GiveWay(source, sets.Where(s => s != set), after, new Span(set, after))));
        return longer.Concat(FurtherSets(source, sets, need, mine, missing))
            .OfType<IReadOnlyList<PlacedSet>>()
            .Where(given => source.LeftFlowQuarters is not { } left || given.Sum(s => SourceNights.FlowOf(s.Need) * s.Quarters) <= left)
            .MaxBy(given => SourcePacking.Objective(source, given)) ?? sets;
    }

    private static IEnumerable<IReadOnlyList<PlacedSet>?> FurtherSets(SourceNights source, IReadOnlyList<PlacedSet> sets, ValveNeed need, List<PlacedSet> mine, int missing)
    {
        var moved = Math.Max(0, Math.Min(NeedSearch.ShortestSetQuarters, need.Quarters) - missing);
        var longest = mine.MaxBy(s => s.Quarters);
        if (moved > 0 && (longest is null || longest.Quarters - moved < NeedSearch.ShortestSetQuarters))
        {
            return [];
        }

        List<PlacedSet> others = moved == 0 ? [.. sets] : [.. sets.Where(s => s != longest), longest! with { Quarters = longest.Quarters - moved }];
        var room = new NightRoom(source);
        sets.ToList().ForEach(room.Use);
        return Enumerable.Range(0, source.Nights.Count)
            .Where(night => !need.LostNights.Contains(night) && missing + moved <= source.Nights[night].Quarters && mine.TrueForAll(s => s.Night != night))
            .SelectMany(night => Places(room.Longest(need, night, missing + moved), missing + moved, source.Nights[night].Quarters))
            .Select(set => GiveWay(source, others, set, new Span(set.StartQuarter, set.StartQuarter + set.Quarters)));
    }

    // Where it fits; else at either end of the night.
    private static IEnumerable<PlacedSet> Places(PlacedSet free, int quarters, int night) => free.Quarters == quarters
        ? [free]
        : [free with { StartQuarter = 0, Quarters = quarters }, free with { StartQuarter = night - quarters, Quarters = quarters }];

    private static IEnumerable<PlacedSet> Longer(PlacedSet set, int more, int night)
    {
        if (set.StartQuarter + set.Quarters + more <= night)
        {
            yield return set with { Quarters = set.Quarters + more };
        }

        if (set.StartQuarter >= more)
        {
            yield return set with { StartQuarter = set.StartQuarter - more, Quarters = set.Quarters + more };
        }
    }

    // Null where only sets that are decided stand in the way.
    private static List<PlacedSet>? GiveWay(SourceNights source, IEnumerable<PlacedSet> others, PlacedSet after, Span added)
    {
        var (from, to) = added;
        List<PlacedSet> now = [.. others, after];
        for (var quarter = from; quarter < to;)
        {
            var open = now.Where(s => s.Night == after.Night && s.StartQuarter <= quarter && quarter < s.StartQuarter + s.Quarters).ToList();
            var over = open.Sum(s => SourceNights.FlowOf(s.Need)) - source.MostFlow;
            if (over <= 0)
            {
                quarter++;
                continue;
            }

            var givers = open.Where(s => !s.Need.ByHand && !source.Pinned.Contains(s)).Select(s => (Set: s, Left: Rest(s, from, to)))
                .OrderBy(g => SourceNights.FlowOf(g.Set.Need) < over)
                .ThenBy(g => (g.Set.Quarters - (g.Left?.Quarters ?? 0)) * g.Set.Need.WorthPerQuarter)
                .ThenBy(g => g.Set.Need.Valve.Code, StringComparer.Ordinal)
                .ToList();
            if (givers.Count == 0)
            {
                return null;
            }

            now.Remove(givers[0].Set);
            now.AddRange(givers[0].Left is { } rest ? [rest] : []);
        }

        return now;
    }

    // The longer part of a set outside a span; null where neither is long enough for a set.
    private static PlacedSet? Rest(PlacedSet set, int from, int to)
    {
        var (before, after) = (from - set.StartQuarter, set.StartQuarter + set.Quarters - to);
        return Math.Max(before, after) < NeedSearch.ShortestSetQuarters ? null
            : before >= after ? set with { Quarters = before }
            : set with { StartQuarter = to, Quarters = after };
    }

    /// <summary>Quarters of a night that a set did not have before.</summary>
    private readonly record struct Span(int From, int To)
    {
        public Span(PlacedSet before, PlacedSet longer)
            : this(longer.StartQuarter < before.StartQuarter ? longer.StartQuarter : before.StartQuarter + before.Quarters, longer.StartQuarter < before.StartQuarter ? before.StartQuarter : longer.StartQuarter + longer.Quarters)
        {
        }
    }
}
