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
        var span = left[set.Night].AsSpan(set.StartQuarter, set.Quarters);
        if (flow * set.Quarters > waterLeft || span.ContainsAnyInRange(long.MinValue, flow - 1))
        {
            return false;
        }

        waterLeft -= flow * set.Quarters;
        foreach (ref var quarter in span)
        {
            quarter -= flow;
        }

        return true;
    }
}
