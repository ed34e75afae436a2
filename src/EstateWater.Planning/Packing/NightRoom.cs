using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Packing;

/// <summary>What is left of a source's flow by night and quarter hour, and of its water.</summary>
internal sealed class NightRoom(SourceNights source)
{
    private readonly long[][] left = [.. source.Nights.Select(n => Enumerable.Repeat(source.MostFlow, n.Quarters).ToArray())];
    private long waterLeft = source.LeftFlowQuarters ?? long.MaxValue;

    /// <summary>Takes a set's share; false, and nothing taken, where there is no room.</summary>
    public bool Take(PlacedSet set)
    {
        var flow = SourceNights.FlowOf(set.Need);
        if (flow * set.Quarters > waterLeft || left[set.Night].AsSpan(set.StartQuarter, set.Quarters).ContainsAnyInRange(long.MinValue, flow - 1))
        {
            return false;
        }

        Use(set);
        return true;
    }

    /// <summary>Takes a set's share whether there is room or not.</summary>
    public void Use(PlacedSet set)
    {
        var flow = SourceNights.FlowOf(set.Need);
        waterLeft -= flow * set.Quarters;
        foreach (ref var quarter in left[set.Night].AsSpan(set.StartQuarter, set.Quarters))
        {
            quarter -= flow;
        }
    }

    /// <summary>Quarter hours of a need that the water left still allows.</summary>
    public int WaterQuarters(ValveNeed need) => (int)Math.Min(int.MaxValue, Math.Max(0, waterLeft) / Math.Max(1, SourceNights.FlowOf(need)));

    /// <summary>The longest free run of a night, as far as it is wanted; of no length where there is none.</summary>
    public PlacedSet Longest(ValveNeed need, int night, int wanted)
    {
        var (flow, best, longest, run) = (SourceNights.FlowOf(need), 0, 0, 0);
        for (var quarter = 0; quarter < left[night].Length; quarter++)
        {
            run = left[night][quarter] >= flow ? run + 1 : 0;
            if (run > longest)
            {
                (best, longest) = (quarter - run + 1, run);
            }
        }

        return new PlacedSet(need, night, best, Math.Min(longest, wanted));
    }

    /// <summary>A set that is in the room already, as much longer as is wanted and free on either side.</summary>
    public PlacedSet Longer(PlacedSet set, int wanted)
    {
        var (flow, start, end) = (SourceNights.FlowOf(set.Need), set.StartQuarter, set.StartQuarter + set.Quarters);
        while (end - start - set.Quarters < wanted && end < left[set.Night].Length && left[set.Night][end] >= flow)
        {
            end++;
        }

        while (end - start - set.Quarters < wanted && start > 0 && left[set.Night][start - 1] >= flow)
        {
            start--;
        }

        return set with { StartQuarter = start, Quarters = end - start };
    }

    /// <summary>The same, and takes what the set has become longer by.</summary>
    public PlacedSet Lengthen(PlacedSet set, int wanted)
    {
        var longer = Longer(set, wanted);
        Use(set with { StartQuarter = longer.StartQuarter, Quarters = set.StartQuarter - longer.StartQuarter });
        var end = set.StartQuarter + set.Quarters;
        Use(set with { StartQuarter = end, Quarters = longer.StartQuarter + longer.Quarters - end });
        return longer;
    }
}
