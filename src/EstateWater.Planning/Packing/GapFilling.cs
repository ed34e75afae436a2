using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Packing;

/// <summary>Gives what the nights still have room for to the needs that still want it.</summary>
/// <remarks>Sets of different flows leave gaps on the clock. The needs that lose most fill them first: by longer sets, then by a further one.</remarks>
internal sealed class GapFilling
{
    private readonly SourceNights source;
    private readonly NightRoom room;
    private readonly List<PlacedSet> sets;

    private GapFilling(SourceNights source, IEnumerable<PlacedSet> placed)
    {
        this.source = source;
        room = new NightRoom(source);
        sets = [.. placed];
        sets.ForEach(room.Use);
    }

    /// <summary>The sets with the gaps filled.</summary>
    public static List<PlacedSet> Fill(SourceNights source, IEnumerable<PlacedSet> placed)
    {
        var filling = new GapFilling(source, placed);
        foreach (var need in source.Needs
            .Where(n => filling.Missing(n) > 0)
            .OrderByDescending(n => SourcePacking.PieceWorth(n, filling.Given(n) / ValveNeed.PieceQuarters) / (double)SourceNights.FlowOf(n))
            .ThenBy(n => n.Valve.Code, StringComparer.Ordinal))
        {
            filling.Fill(need);
        }

        return filling.sets;
    }

    private int Given(ValveNeed need) => sets.Where(s => s.Need == need).Sum(s => s.Quarters);

    private int Missing(ValveNeed need) => Math.Min(need.Quarters - Given(need), room.WaterQuarters(need));

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
                sets[at] = room.Lengthen(sets[at], Missing(need));
            }
            else if (Missing(need) >= NeedSearch.ShortestSetQuarters && sets.Count(s => s.Need == need) < need.MostOpenings)
            {
                Open(need, night);
            }
        }
    }

    private void Open(ValveNeed need, int night)
    {
        var set = room.Longest(need, night, Missing(need));
        var worth = SourcePacking.PieceWorth(need, Math.Max(0, Given(need) + set.Quarters - 1) / ValveNeed.PieceQuarters) - SourcePacking.NightCost(need, night);
        if (set.Quarters >= NeedSearch.ShortestSetQuarters && set.Quarters * worth > SourcePacking.OpeningCost(need))
        {
            room.Use(set);
            sets.Add(set);
        }
    }
}
