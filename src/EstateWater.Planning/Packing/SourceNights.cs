using EstateWater.Planning.Needs;
using EstateWater.Planning.WhatIf;

namespace EstateWater.Planning.Packing;

/// <summary>A source, its nights, the water it may still give, and what its valves want.</summary>
/// <param name="Source">The source.</param>
/// <param name="Nights">Its openings within the horizon.</param>
/// <param name="LeftM3">Left of the season's allocation; null when unlimited. [m³]</param>
/// <param name="Needs">What its valves want.</param>
internal sealed record SourceNights(PlanSource Source, IReadOnlyList<Night> Nights, double? LeftM3, IReadOnlyList<ValveNeed> Needs)
{
    // The solver counts in whole numbers.
    private const double LitresPerM3 = 1000;

    /// <summary>What a millimetre is worth later in the season; 0 when water is not short.</summary>
    public double SeasonPerMm { get; init; }

    /// <summary>Sets that stay where they are; the needs are packed around them and hold none of theirs.</summary>
    public IReadOnlyList<PlacedSet> Pinned { get; init; } = [];

    /// <summary>Why some needs have lost nights, for the words.</summary>
    public IReadOnlyList<PlanChange> Changes { get; init; } = [];

    /// <summary>By need. [L/h]</summary>
    public long[] Flows => [.. Needs.Select(FlowOf)];

    /// <summary>Greatest flow at any moment. [L/h]</summary>
    public long MostFlow => (long)Math.Floor(Source.MaxFlowM3PerH * LitresPerM3);

    /// <summary>What the allocation still allows, as flow times quarter hours; null when unlimited. [L/h · ¼ h]</summary>
    public long? LeftFlowQuarters => LeftM3 is { } left ? (long)Math.Floor(Math.Max(0, left) * 4 * LitresPerM3) : null;

    /// <summary>Of a need. [L/h]</summary>
    public static long FlowOf(ValveNeed need) => (long)Math.Ceiling(need.Valve.FlowM3PerH * LitresPerM3);
}

/// <summary>A set with its place in the night.</summary>
/// <param name="Need">Whose.</param>
/// <param name="Night">Which of the source's nights.</param>
/// <param name="StartQuarter">Quarter hours after the night opens.</param>
/// <param name="Quarters">Its length.</param>
internal sealed record PlacedSet(ValveNeed Need, int Night, int StartQuarter, int Quarters);

/// <summary>The sets of a source and how near they are to the best possible.</summary>
/// <param name="Sets">Placed.</param>
/// <param name="Objective">Trouble spared by them, in the packing's units.</param>
/// <param name="Bound">No placing can spare more.</param>
internal sealed record PackedSource(IReadOnlyList<PlacedSet> Sets, long Objective, long Bound)
{
    /// <summary>Quarter hours that each need would still be worth, were there room; absent where none.</summary>
    public IReadOnlyDictionary<ValveNeed, int> StillWanted { get; init; } = new Dictionary<ValveNeed, int>();

    /// <summary>Valves that keep the sets people were told of.</summary>
    public IReadOnlySet<string> Told { get; init; } = new HashSet<string>();

    /// <summary>What sets lost of <see cref="Objective"/> when they were shortened to what still helps in the nights they got.</summary>
    public long CutBack { get; init; }

    /// <summary>The same with sets shortened to what still helps in the nights they got.</summary>
    public PackedSource Settled(SourceNights source, int days) => Settled(source, new NeedSearch(source.Nights, days, source.SeasonPerMm));

    /// <summary>The same with a search of the source's nights.</summary>
    public PackedSource Settled(SourceNights source, NeedSearch search)
    {
        var settled = new List<PlacedSet>(source.Pinned);
        var wanted = new Dictionary<ValveNeed, int>();
        foreach (var need in source.Needs)
        {
            var mine = Sets.Where(s => s.Need == need).ToList();
            if (need.ByHand)
            {
                settled.AddRange(mine);
                wanted[need] = need.WantedQuarters - mine.Sum(s => s.Quarters);
                continue;
            }

            if (need.WantedQuarters == 0)
            {
                continue;
            }

            var quarters = new int[source.Nights.Count];
            mine.ForEach(s => quarters[s.Night] = s.Quarters);
            if (!Told.Contains(need.Valve.Code))
            {
                search.Shorten(need.Courses, quarters);
            }

            wanted[need] = Math.Min(need.WantedQuarters - mine.Sum(s => s.Quarters), search.StillWanted(need.Courses, quarters));
            settled.AddRange(mine.Where(s => quarters[s.Night] > 0).Select(s => s with { Quarters = quarters[s.Night] }));
        }

        return this with
        {
            Sets = settled,
            CutBack = SourcePacking.Objective(source, Sets) - SourcePacking.Objective(source, settled),
            StillWanted = wanted.Where(w => w.Value >= (w.Key.ByHand ? 1 : NeedSearch.ShortestSetQuarters)).ToDictionary(),
        };
    }
}
