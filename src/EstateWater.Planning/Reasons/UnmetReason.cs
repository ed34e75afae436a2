using EstateWater.Agronomy.Units;
using EstateWater.Planning.Needs;
using EstateWater.Planning.Packing;
using EstateWater.Planning.WhatIf;

namespace EstateWater.Planning.Reasons;

/// <summary>Says why hours do not fit.</summary>
internal static class UnmetReason
{
    /// <summary>Whether what the plan leaves of the season's water is not enough for one more set.</summary>
    public static bool IsUsedUp(SourceNights source, PackedSource packed, ValveNeed need) =>
        source.LeftM3 - packed.Sets.Sum(s => s.Need.Valve.FlowM3PerH * s.Quarters / 4) < need.Valve.FlowM3PerH * NeedSearch.ShortestSetQuarters / 4;

    public static Sentence Write(SourceNights source, PackedSource packed, ValveNeed need)
    {
        var name = source.Source.Code;
        if (need.Valve.FlowM3PerH > source.Source.MaxFlowM3PerH)
        {
            return Sentence.Of($"valve {need.Valve.Code} asks for {Quantity.Flow(need.Valve.FlowM3PerH)}, more than the {Quantity.Flow(source.Source.MaxFlowM3PerH)} that {name} gives");
        }

        if (source.Nights.Count == 0)
        {
            return $"{name} has no opening within the horizon";
        }

        if (IsUsedUp(source, packed, need))
        {
            return Sentence.Of($"the season's water of {name} is used up: {Quantity.Volume(Math.Max(0, source.LeftM3 ?? 0))} were left");
        }

        var others = packed.Sets.Where(s => s.Need == need).Sum(s => s.Quarters) < need.Quarters ? $"; on its other nights {name} is full" : string.Empty;
        if (need.LostNights.Count > 0)
        {
            return $"{string.Join("; ", source.Changes.Where(c => source.Nights.Any(n => ChangedNights.Takes(c, need.Valve, n.Date))).Select(c => c.Words))}{others}";
        }

        if (!packed.StillWanted.ContainsKey(need))
        {
            return Sentence.Of($"the season's water of {name} is short: what is left is kept for days and blocks in more trouble");
        }

        if (packed.Told.Contains(need.Valve.Code))
        {
            return $"the published week stays as it is; other hours would help this block little";
        }

        return Sentence.Of($"{name} is full at {Quantity.Flow(source.Source.MaxFlowM3PerH)} on the nights that would help, and blocks in more trouble come first");
    }
}
