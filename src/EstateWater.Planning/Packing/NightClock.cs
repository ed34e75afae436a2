using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Packing;

/// <summary>A set that wants a place in a night.</summary>
internal sealed record WantedSet(ValveNeed Need, int Quarters, long WorthPerQuarter);

/// <summary>A set with its start.</summary>
internal sealed record TimedSet(ValveNeed Need, int StartQuarter, int Quarters);

/// <summary>Lays a night's sets on the clock so that their flows together never pass the source's.</summary>
internal static class NightClock
{
    /// <summary>Each set as early as the flow allows, in the order of a few that holds most; what finds no room is left out.</summary>
    /// <param name="wanted">What the night was given.</param>
    /// <param name="pinned">What stands there already.</param>
    /// <param name="most">Flow of the source. [L/h]</param>
    /// <param name="quarters">Length of the night.</param>
    public static IReadOnlyList<TimedSet> Lay(IReadOnlyList<WantedSet> wanted, IReadOnlyList<TimedSet> pinned, long most, int quarters) =>
        Orders.Select(order => FirstFit([.. order(wanted)], pinned, most, quarters)).MaxBy(laid => laid.Worth).Sets;

    private static readonly Func<IReadOnlyList<WantedSet>, IEnumerable<WantedSet>>[] Orders =
    [
        sets => sets.OrderByDescending(w => w.Quarters).ThenByDescending(Flow).ThenBy(w => w.Need.Valve.Code, StringComparer.Ordinal),
        sets => sets.OrderByDescending(Flow).ThenByDescending(w => w.Quarters).ThenBy(w => w.Need.Valve.Code, StringComparer.Ordinal),
        sets => sets.OrderByDescending(w => Flow(w) * w.Quarters).ThenBy(w => w.Need.Valve.Code, StringComparer.Ordinal),
    ];

    private static long Flow(WantedSet set) => Flow(set.Need);

    private static long Flow(ValveNeed need) => SourceNights.FlowOf(need);

    private static (List<TimedSet> Sets, long Worth) FirstFit(IReadOnlyList<WantedSet> wanted, IReadOnlyList<TimedSet> pinned, long most, int quarters)
    {
        var used = new long[quarters];
        foreach (var set in pinned)
        {
            Use(used, set);
        }

        var (timed, worth) = (new List<TimedSet>(), 0L);
        foreach (var set in wanted)
        {
            var start = Enumerable.Range(0, Math.Max(0, quarters - set.Quarters + 1))
                .Cast<int?>()
                .FirstOrDefault(s => Enumerable.Range(s!.Value, set.Quarters).All(q => used[q] + Flow(set) <= most));
            if (start is { } at)
            {
                timed.Add(new TimedSet(set.Need, at, set.Quarters));
                Use(used, timed[^1]);
                worth += set.Quarters * set.WorthPerQuarter;
            }
        }

        return (timed, worth);
    }

    private static void Use(long[] used, TimedSet set)
    {
        for (var q = set.StartQuarter; q < set.StartQuarter + set.Quarters; q++)
        {
            used[q] += Flow(set.Need);
        }
    }
}
