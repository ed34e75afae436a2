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
    private const double WorthMoving = 0.05;

    /// <summary>The sets after the change.</summary>
    /// <param name="source">After it.</param>
    /// <param name="before">As packed before it.</param>
    public static PackedSource Pack(SourceNights source, PackedSource before)
    {
        var anew = SourcePacking.Pack(source);
        var freshWorth = SourcePacking.Objective(source, anew.Sets);

        // Hours by hand outweigh all else: what they really spare is counted in their place. What the sets before were already
        // short of the best is no reason to move them now.
        var forgone = before.Bound > 0 ? Math.Max(0, 1 - (before.Objective / (double)before.Bound)) : 0;
        var spared = Math.Max(0, freshWorth - SourcePacking.WorthByHand(source) + SourcePacking.SparedByHand(source));
        var least = freshWorth - ((WorthMoving + forgone) * spared);
        var standing = Standing(source, before);
        var told = before.Told.Where(code => before.Sets.Where(s => s.Need.Valve.Code == code).All(standing.Contains)).ToHashSet();
        if (Choices(source, before, standing, told).FirstOrDefault(sets => SourcePacking.Objective(source, sets) >= least) is not { } kept)
        {
            return anew;
        }

        var objective = anew.Objective + SourcePacking.Objective(source, kept) - freshWorth;
        return new PackedSource(kept, Math.Max(0, objective), Math.Max(anew.Bound, objective)) { Told = told };
    }

    // With gaps filled, but by no valve that keeps all sets people were told of; else with the sets of what was changed laid anew around those of the others.
    private static IEnumerable<IReadOnlyList<PlacedSet>> Choices(SourceNights source, PackedSource before, IReadOnlyList<PlacedSet> standing, HashSet<string> told)
    {
        var open = source with { Needs = [.. source.Needs.Where(n => !told.Contains(n.Valve.Code))] };
        yield return HandRoom.Make(source, GapFilling.Fill(open, standing));
        var same = before.Sets.Select(s => s.Need).ToHashSet(ReferenceEqualityComparer.Instance);
        var changed = source.Needs.Where(n => !same.Contains(n)).ToList();
        var others = standing.Where(s => same.Contains(s.Need) || source.Pinned.Contains(s)).ToList();
        yield return HandRoom.Make(source, GapFilling.Fill(open, SourcePacking.Pack(source with { Needs = changed, Pinned = others }).Sets));
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

            // Sets that people were told of may be longer than their need is now.
            var now = ReferenceEquals(need, set.Need) ? set : set with { Need = need, Quarters = Math.Min(set.Quarters, left) };
            if (now.Quarters >= Math.Min(NeedSearch.ShortestSetQuarters, set.Quarters) && room.Take(now))
            {
                standing.Add(now);
            }
        }

        return standing;
    }
}
