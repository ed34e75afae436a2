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

    /// <summary>What sets give a need, by night. [quarter hours]</summary>
    public int[] QuartersByNight(ValveNeed need, IEnumerable<PlacedSet> sets)
    {
        var quarters = new int[Nights.Count];
        foreach (var set in sets.Where(s => s.Need == need))
        {
            quarters[set.Night] += set.Quarters;
        }

        return quarters;
    }

    /// <summary>Of a need. [L/h]</summary>
    public static long FlowOf(ValveNeed need) => (long)Math.Ceiling(need.Valve.FlowM3PerH * LitresPerM3);
}

/// <summary>A set with its place in the night.</summary>
/// <param name="Need">Whose.</param>
/// <param name="Night">Which of the source's nights.</param>
/// <param name="StartQuarter">Quarter hours after the night opens.</param>
/// <param name="Quarters">Its length.</param>
internal sealed record PlacedSet(ValveNeed Need, int Night, int StartQuarter, int Quarters);
