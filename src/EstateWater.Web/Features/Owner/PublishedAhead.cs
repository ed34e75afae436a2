using EstateWater.Agronomy.Units;
using EstateWater.Data.Model;
using EstateWater.Planning;
using EstateWater.Planning.WhatIf;
using EstateWater.Web.Features.Week;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Owner;

/// <summary>The published plan as it stands now: its sets ahead and nothing else, with what follows by the newest knowledge.</summary>
/// <param name="Plan">The plan; null where nothing is published for the days ahead, or where it can no longer be kept.</param>
/// <param name="Problem">Why it can no longer be kept; null where it can.</param>
public sealed record PublishedAhead(Planning.Plan? Plan, Sentence? Problem = null)
{
    private static readonly PublishedAhead Nothing = new(null, null);

    private static readonly TimeSpan Quarter = TimeSpan.FromMinutes(15);

    /// <summary>Of a snapshot.</summary>
    public static PublishedAhead Of(EstateSnapshot snapshot)
    {
        if (snapshot is not { Published: { } published, Fitted: { } fitted })
        {
            return Nothing;
        }

        var sets = published.Sets.Where(set => set.End > snapshot.AsOf).ToList();
        var saysNothing = published.Sets.Count == 0 && published.AsOf.AddDays(snapshot.Plan.HorizonDays) > snapshot.AsOf;
        if (sets.Count == 0 && !saysNothing)
        {
            return Nothing;
        }

        // What was advised and published unchanged need not be lived through again.
        if (sets.All(set => set.Confirmation is null) && PlanDifference.Between(snapshot.Plan, published, snapshot.TimeZone).Changes.Count == 0)
        {
            return new PublishedAhead(snapshot.Plan);
        }

        var request = Keeping(fitted, [.. sets.Where(set => set.Start > snapshot.AsOf).Select(set => Pin(set, fitted)).OfType<SetPinned>()]);
        return Planner.Conflicts(fitted, request) is [var conflict, ..] ? new PublishedAhead(null, conflict) : new PublishedAhead(Planner.Plan(fitted, request));
    }

    // A valve without a set of its own gets no water.
    private static PlanRequest Keeping(FittedEstate fitted, List<SetPinned> pins)
    {
        var watered = pins.Select(pin => pin.Valve).ToHashSet();
        var dry = fitted.Request.Blocks.Where(block => !watered.Contains(block.ValveCode)).DistinctBy(block => block.ValveCode);
        return fitted.Request with { HoursByHand = dry.ToDictionary(block => block.Code, _ => 0.0), Changes = pins };
    }

    // As an irrigator confirmed it where one did, and what of it lies where a plan may still place water. Sets that have
    // begun count as water given (PlanRequests.Told).
    private static SetPinned? Pin(PublishedSet set, FittedEstate fitted)
    {
        var end = set.Confirmation is { } said ? set.Start.AddHours(said.Hours) : set.End;
        if (fitted.OpeningsOf(set.SourceCode).FirstOrDefault(night => set.Start < night.Closes && night.Opens < end) is not { } night)
        {
            return null;
        }

        var start = night.Opens + (Quarter * Math.Max(0, Math.Ceiling((set.Start - night.Opens) / Quarter)));
        var quarters = Math.Floor((Earlier(end, night.Closes) - start) / Quarter);
        return quarters > 0 ? new SetPinned(set.ValveCode, start, quarters / 4) : null;
    }

    private static DateTimeOffset Earlier(DateTimeOffset one, DateTimeOffset other) => one < other ? one : other;
}
