using EstateWater.Planning.Blocks;
using EstateWater.Planning.Needs;
using EstateWater.Planning.Packing;

namespace EstateWater.Planning.WhatIf;

/// <summary>What changes leave of a valve's nights, and what they put there.</summary>
internal static class ChangedNights
{
    /// <summary>Places in the list of nights in which a valve stays closed or its source gives nothing.</summary>
    public static IReadOnlySet<int> Lost(ValveWater valve, IReadOnlyList<PlanChange> changes, IReadOnlyList<Night> nights) =>
        Enumerable.Range(0, nights.Count).Where(n => changes.Any(c => Takes(c, valve, nights[n].Date))).ToHashSet();

    /// <summary>Whether a change takes a night from a valve.</summary>
    public static bool Takes(PlanChange change, ValveWater valve, DateOnly night) => change switch
    {
        ValveClosed closed => closed.Valve == valve.Code && closed.FromNight <= night && night <= closed.ToNight,
        SourceOut away => away.Source == valve.SourceCode && away.FromNight <= night && night <= away.ToNight,
        _ => false,
    };

    /// <summary>The sets pinned to a valve, in order of start.</summary>
    public static IReadOnlyList<SetPinned> Pins(ValveWater valve, IReadOnlyList<PlanChange> changes) =>
        [.. changes.OfType<SetPinned>().Where(p => p.Valve == valve.Code).OrderBy(p => p.Start)];

    /// <summary>The night that holds a set from start to end; null when none does.</summary>
    public static int? NightOf(SetPinned pin, IReadOnlyList<Night> nights) =>
        Enumerable.Range(0, nights.Count).Cast<int?>().FirstOrDefault(n => nights[n!.Value].Start <= pin.Start && pin.End <= nights[n.Value].End);

    /// <summary>A set in its night; null where none holds it.</summary>
    public static PlacedSet? Place(SetPinned pin, ValveNeed need, IReadOnlyList<Night> nights) => NightOf(pin, nights) is { } night
        ? new PlacedSet(need, night, (int)Math.Round((pin.Start - nights[night].Start).TotalMinutes / 15), QuartersOf(pin))
        : null;

    /// <summary>Quarter hours of a set.</summary>
    public static int QuartersOf(SetPinned pin) => (int)Math.Round(pin.Hours * 4);
}
