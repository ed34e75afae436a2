using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Packing;

/// <summary>Packs a source again after some of its needs or nights changed, and leaves standing what can stand.</summary>
/// <remarks>
/// The packing is solved within a tolerance, so a fresh one may shuffle sets for nothing, and a change to one valve would
/// seem to do something to all. Where keeping the other sets and filling the gaps is about as good, they stay.
/// </remarks>
internal static class Repacking
{
    // Moving the sets of others must be worth this share of what all sets are worth; ours.
    private const double WorthMoving = 0.01;

    /// <summary>The sets after the change.</summary>
    /// <param name="source">After it.</param>
    /// <param name="before">As packed before it.</param>
    public static PackedSource Pack(SourceNights source, PackedSource before)
    {
        var anew = SourcePacking.Pack(source);
        var kept = GapFilling.Fill(source, Standing(source, before));
        var freshWorth = SourcePacking.Objective(source, anew.Sets);
        var keptWorth = SourcePacking.Objective(source, kept);
        if (keptWorth < freshWorth * (1 - WorthMoving))
        {
            return anew;
        }

        var objective = anew.Objective + keptWorth - freshWorth;
        return new PackedSource(kept, Math.Max(0, objective), Math.Max(anew.Bound, objective)) { Told = before.Told };
    }

    // Pinned sets first: that they fit was asked before planning (ChangeConflicts), in the same whole litres. Then those that stood before, the worthiest first, as far as night, flow, water and need still allow.
    private static List<PlacedSet> Standing(SourceNights source, PackedSource before)
    {
        var room = new NightRoom(source);
        var needs = source.Needs.ToDictionary(n => n.Valve.Code);
        var standing = source.Pinned.Where(room.Take).ToList();
        foreach (var set in before.Sets
            .OrderByDescending(s => s.Need.WorthPerQuarter / s.Need.Valve.FlowM3PerH)
            .ThenBy(s => s.Need.Valve.Code, StringComparer.Ordinal)
            .ThenBy(s => s.Night))
        {
            if (!needs.TryGetValue(set.Need.Valve.Code, out var need) || need.LostNights.Contains(set.Night))
            {
                continue;
            }

            var left = need.Quarters - standing.Where(s => s.Need == need).Sum(s => s.Quarters);
            var now = set with { Need = need, Quarters = Math.Min(set.Quarters, left) };
            if (now.Quarters >= Math.Min(NeedSearch.ShortestSetQuarters, set.Quarters) && room.Take(now))
            {
                standing.Add(now);
            }
        }

        return standing;
    }
}
