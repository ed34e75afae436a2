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

    public static string Write(SourceNights source, PackedSource packed, ValveNeed need)
    {
        var name = source.Source.Code;
        if (need.Valve.FlowM3PerH > source.Source.MaxFlowM3PerH)
        {
            return Wording.Say($"valve {need.Valve.Code} asks for {need.Valve.FlowM3PerH:0.0} m³/h, more than the {source.Source.MaxFlowM3PerH:0.0} m³/h that {name} gives");
        }

        if (source.Nights.Count == 0)
        {
            return $"{name} has no opening within the horizon";
        }

        if (IsUsedUp(source, packed, need))
        {
            return Wording.Say($"the season's water of {name} is used up: {Math.Max(0, source.LeftM3 ?? 0):0} m³ were left");
        }

        var others = packed.Sets.Where(s => s.Need == need).Sum(s => s.Quarters) < need.Quarters ? $"; on its other nights {name} is full" : string.Empty;
        if (need.LostNights.Count > 0)
        {
            return $"{string.Join("; ", source.Changes.Where(c => source.Nights.Any(n => ChangedNights.Takes(c, need.Valve, n.Date))).Select(c => c.Words))}{others}";
        }

        if (!packed.StillWanted.ContainsKey(need))
        {
            return Wording.Say($"the season's water of {name} is short: what is left is kept for days and blocks in more trouble");
        }

        return Wording.Say($"{name} is full at {source.Source.MaxFlowM3PerH:0.0} m³/h on the nights that would help, and blocks in more trouble come first");
    }
}
