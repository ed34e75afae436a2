using EstateWater.Planning.Needs;
using EstateWater.Planning.WhatIf;

namespace EstateWater.Planning.Packing;

/// <summary>Keeps a source's published sets while a fresh packing is hardly better.</summary>
/// <remarks>
/// Tried in this order, the first that comes near enough to the fresh packing: the sets as they stand, with more for those
/// valves that fresh hours would help much; the same with those valves' sets laid anew around the others; the fresh packing.
/// </remarks>
internal sealed class StandingWeek
{
    // What turning a week over must win, as a share of all that its water wins. Ours.
    private const double ShareWorthChanging = 0.05;

    // A valve whose own change wins less keeps its sets: a share of what its water wins, and in any case as much as so many
    // hours of it must spare. Ours.
    private const double ValveShareWorthChanging = 0.1;
    private const double ValveHoursWorthChanging = 2;

    private readonly SourceNights source;
    private readonly NeedSearch search;
    private readonly IReadOnlyList<PlacedSet> standing;
    private readonly PackedSource fresh;

    private StandingWeek(SourceNights source, int days, IReadOnlyList<PlacedSet> standing, PackedSource fresh)
    {
        this.source = source;
        this.standing = standing;
        this.fresh = fresh;
        search = new NeedSearch(source.Nights, days, source.SeasonPerMm);
    }

    /// <summary>The packing to publish next.</summary>
    /// <param name="source">What is wanted now.</param>
    /// <param name="days">Today and the horizon.</param>
    /// <param name="told">Sets that were published.</param>
    /// <param name="fresh">The packing were none published.</param>
    public static PackedSource Keep(SourceNights source, int days, IReadOnlyList<StandingSet> told, PackedSource fresh)
    {
        var standing = Placed(source, told);
        return standing.Count == 0 ? fresh : new StandingWeek(source, days, standing, fresh).Kept();
    }

    private PackedSource Kept()
    {
        var settled = Settling.Settle(source, fresh, search).Sets;
        var costs = source.Needs.ToDictionary(need => need, need => (
            Dry: search.CostWithWater(need.Courses, new int[source.Nights.Count]),
            Fresh: CostWith(need, settled),
            Standing: CostWith(need, standing)));
        var mostLost = costs.Values.Sum(c => c.Dry - c.Fresh) * ShareWorthChanging;
        var changed = source.Needs.Where(need => costs[need] is var (dry, best, now)
            && now - best > Math.Max(ValveShareWorthChanging * (dry - best), ValveHoursWorthChanging * search.WaterPerHour(need.Courses))).ToHashSet();
        IEnumerable<IReadOnlyList<PlacedSet>> Choices()
        {
            yield return GapFilling.Fill(source with { Needs = [.. source.Needs.Where(changed.Contains)] }, standing);
            var others = standing.Where(s => !changed.Contains(s.Need)).ToList();
            yield return SourcePacking.Pack(source with { Needs = [.. source.Needs.Where(changed.Contains)], Pinned = others }).Sets;
        }

        var freshCost = costs.Values.Sum(c => c.Fresh);
        var kept = Choices().FirstOrDefault(sets => source.Needs.Sum(need => CostWith(need, sets)) - freshCost <= mostLost);
        return kept is null ? fresh : new PackedSource(kept, SourcePacking.Worth(source, kept), Math.Max(fresh.Bound, SourcePacking.Worth(source, kept)))
        {
            Told = source.Needs.Where(need => !changed.Contains(need)).Select(need => need.Valve.Code).ToHashSet(),
        };
    }

    private double CostWith(ValveNeed need, IReadOnlyList<PlacedSet> sets) => search.CostWithWater(need.Courses, source.QuartersByNight(need, sets));

    // Sets whose valve or night is gone are left out; so are those that the source's flow no longer carries.
    private static List<PlacedSet> Placed(SourceNights source, IReadOnlyList<StandingSet> told)
    {
        var (needs, room) = (source.Needs.ToDictionary(n => n.Valve.Code), new NightRoom(source));
        return [..
            from set in told
            let need = needs.GetValueOrDefault(set.ValveCode)
            where need is not null
            let place = Place(need, set, source.Nights)
            where place is not null && room.Take(place)
            select place];
    }

    private static PlacedSet? Place(ValveNeed need, StandingSet set, IReadOnlyList<Night> nights) =>
        ChangedNights.Place(new SetPinned(set.ValveCode, set.Start, set.Hours), need, nights) is { Quarters: > 0 } place
        && nights[place.Night].Start.AddMinutes(15 * place.StartQuarter) == set.Start ? place : null;
}
