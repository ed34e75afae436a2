using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Packing;

/// <summary>Settles the hours of packed sets by what an hour really spares in the night it stands in.</summary>
/// <remarks>
/// The packing reckons with the mean worth of a valve's hours and one share for each night. Where another night than the
/// wanted ones leaves some water idle, its set is shortened; then the room that is left goes to the valves that still
/// want water, those first whose hours are worth most to the source's flow. What is still wanted after that has no room in any
/// night in which it would help.
/// </remarks>
internal sealed class Settling
{
    private readonly SourceNights source;
    private readonly NeedSearch search;
    private readonly IReadOnlySet<string> told;
    private readonly NightRoom room;
    private readonly List<PlacedSet> sets;
    private readonly Dictionary<ValveNeed, int> stillWanted = new(ReferenceEqualityComparer.Instance);

    private Settling(SourceNights source, PackedSource packed, NeedSearch search)
    {
        this.source = source;
        this.search = search;
        told = packed.Told;
        sets = [.. source.Pinned, .. source.Needs.SelectMany(need => Shortened(need, [.. packed.Sets.Where(s => s.Need == need)]))];
        room = new NightRoom(source);
        sets.ForEach(room.Use);
        foreach (var need in source.Needs)
        {
            stillWanted[need] = StillWanted(need);
        }
    }

    /// <summary>The settled sets, and what each need would still be worth.</summary>
    public static PackedSource Settle(SourceNights source, PackedSource packed, int days) =>
        Settle(source, packed, new NeedSearch(source.Nights, days, source.SeasonPerMm));

    /// <summary>The same with a search of the source's nights.</summary>
    public static PackedSource Settle(SourceNights source, PackedSource packed, NeedSearch search)
    {
        var settling = new Settling(source, packed, search);
        var cutBack = SourcePacking.Objective(source, packed.Sets) - SourcePacking.Objective(source, settling.sets);
        settling.FillRoom();
        return packed with { Sets = settling.sets, CutBack = cutBack, StillWanted = settling.stillWanted.Where(w => w.Value > 0).ToDictionary() };
    }

    private IEnumerable<PlacedSet> Shortened(ValveNeed need, IReadOnlyList<PlacedSet> mine)
    {
        if (need.ByHand || told.Contains(need.Valve.Code))
        {
            return mine;
        }

        var quarters = source.QuartersByNight(need, mine);
        search.Shorten(need.Courses, quarters);
        return mine.Where(s => quarters[s.Night] > 0).Select(s => s with { Quarters = quarters[s.Night] });
    }

    private void FillRoom()
    {
        // Valves whose sets people were told of keep them.
        foreach (var need in source.Needs
            .Where(n => !told.Contains(n.Valve.Code) && stillWanted[n] > 0)
            .OrderByDescending(n => n.WorthPerQuarter / n.Valve.FlowM3PerH)
            .ThenBy(n => n.Valve.Code, StringComparer.Ordinal))
        {
            var mine = source.QuartersByNight(need, sets);
            var wanted = Math.Min(stillWanted[need], room.WaterQuarters(need));
            var most = mine.Select((_, n) => MostIn(need, n, wanted)).ToArray();
            if (most.SequenceEqual(mine))
            {
                continue;
            }

            var more = search.WithMore(need, mine, most, wanted);
            for (var night = 0; night < more.Length; night++)
            {
                Give(need, night, more[night] - mine[night]);
            }

            stillWanted[need] = StillWanted(need);
        }
    }

    private int MostIn(ValveNeed need, int night, int wanted) =>
        need.LostNights.Contains(night) ? 0
        : sets.Find(s => s.Need == need && s.Night == night) is { } set ? room.Longer(set, wanted).Quarters
        : room.Longest(need, night, wanted).Quarters;

    private void Give(ValveNeed need, int night, int more)
    {
        if (more <= 0)
        {
            return;
        }

        var at = sets.FindIndex(s => s.Need == need && s.Night == night);
        if (at >= 0)
        {
            sets[at] = room.Lengthen(sets[at], more);
            return;
        }

        sets.Add(room.Longest(need, night, more));
        room.Use(sets[^1]);
    }

    // Too few quarter hours for a set are not worth a word, but for those that somebody asked for.
    private int StillWanted(ValveNeed need)
    {
        var missing = need.WantedQuarters - Given(need);
        var wanted = missing <= 0 || need.ByHand ? missing : Math.Min(missing, search.StillWanted(need.Courses, source.QuartersByNight(need, sets)));
        return wanted >= (need.ByHand ? 1 : NeedSearch.ShortestSetQuarters) ? wanted : 0;
    }

    private int Given(ValveNeed need) => sets.Where(s => s.Need == need).Sum(s => s.Quarters);
}
