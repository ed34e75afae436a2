using EstateWater.Agronomy.Units;
using EstateWater.Planning.Blocks;
using EstateWater.Planning.Needs;

namespace EstateWater.Planning.WhatIf;

/// <summary>Says in words why changes cannot be kept, before any plan is made from them.</summary>
internal sealed class ChangeConflicts(FittedEstate estate, PlanRequest request)
{
    // Flows are sums of blocks: compare them as the packing does, in whole litres an hour.
    private const double LitresPerM3 = 1000;

    /// <summary>Every conflict, in the order of the changes; empty when all can be kept.</summary>
    public IReadOnlyList<Sentence> Find()
    {
        var alone = request.Changes.SelectMany(Of).Distinct().ToList();
        return alone.Count > 0 ? alone : [.. request.Sources.SelectMany(Together)];
    }

    private IEnumerable<Sentence> Of(PlanChange change) => change switch
    {
        ValveClosed closed => Valve(closed.Valve) is { } valve
            ? Span(change, closed.FromNight, closed.ToNight, estate.NightsOf(valve.SourceCode))
            : [$"There is no valve {closed.Valve}."],
        SourceOut away => request.Sources.Any(s => s.Code == away.Source)
            ? Span(change, away.FromNight, away.ToNight, estate.NightsOf(away.Source))
            : [$"There is no source {away.Source}."],
        SetPinned pin => Valve(pin.Valve) is { } valve ? Pin(pin, valve) : [$"There is no valve {pin.Valve}."],
        _ => throw new ArgumentOutOfRangeException(nameof(change), change, "A closed valve, a source that is out, or a pinned set."),
    };

    private static IEnumerable<Sentence> Span(PlanChange change, DateOnly from, DateOnly to, IReadOnlyList<Night> nights)
    {
        if (to < from)
        {
            yield return $"{change.Words}: the last night is before the first.";
        }
        else if (!nights.Any(n => from <= n.Date && n.Date <= to))
        {
            yield return $"{change.Words}: none of these nights is in the plan.";
        }
    }

    private IEnumerable<Sentence> Pin(SetPinned pin, ValveWater valve)
    {
        if (!(pin.Hours > 0 && pin.Hours <= 24) || pin.Hours * 4 % 1 != 0)
        {
            return [Sentence.Of($"{pin.Valve} for {pin.Hours} h: hours must be whole quarter hours, more than 0 and at most 24, like 6.5.")];
        }

        var nights = estate.NightsOf(valve.SourceCode);
        if (ChangedNights.NightOf(pin, nights) is not { } at)
        {
            return [Outside(pin, valve, nights)];
        }

        return InNight(pin, valve, nights[at]);
    }

    private IEnumerable<Sentence> InNight(SetPinned pin, ValveWater valve, Night night)
    {
        if ((pin.Start - night.Start).TotalMinutes % 15 != 0)
        {
            yield return Sentence.Of($"{pin.Words}: sets on {valve.SourceCode} that night begin at {Local(night.Start):HH:mm} or whole quarter hours after it.");
        }

        foreach (var change in request.Changes.Where(c => ChangedNights.Takes(c, valve, night.Date)))
        {
            yield return $"{pin.Words}, but {change.Words}.";
        }

        if (request.Changes.OfType<SetPinned>().Count(p => p.Valve == pin.Valve && p.Start < pin.End && pin.Start < p.End) > 1)
        {
            yield return $"{pin.Words}, while it is open already: a valve opens once at a time.";
        }

        foreach (var block in valve.Blocks.Where(b => request.HoursByHand.ContainsKey(b.Code)))
        {
            yield return $"{pin.Words}, but {block.Code} on it has hours by hand: keep one of the two.";
        }
    }

    private Sentence Outside(SetPinned pin, ValveWater valve, IReadOnlyList<Night> nights)
    {
        if (nights.Count == 0)
        {
            return $"{pin.Words}: {valve.SourceCode} has no night in the plan.";
        }

        var near = nights.MinBy(n => Math.Abs((n.Start - pin.Start).TotalHours) + Math.Abs((n.End - pin.End).TotalHours))!;
        return Sentence.Of($"{pin.Words}, until {Local(pin.End):ddd HH:mm}: outside the hours of {valve.SourceCode}, which that night is open from {Local(near.Start):ddd d MMM HH:mm} to {Local(near.End):ddd HH:mm}.");
    }

    // What pinned sets ask of one source together.
    private IEnumerable<Sentence> Together(PlanSource source)
    {
        var pins = request.Changes.OfType<SetPinned>()
            .Select(p => (Pin: p, Valve: Valve(p.Valve)!))
            .Where(p => p.Valve.SourceCode == source.Code)
            .OrderBy(p => p.Pin.Start)
            .ToList();
        foreach (var (pin, _) in pins)
        {
            var open = pins.Where(p => p.Pin.Start <= pin.Start && pin.Start < p.Pin.End).ToList();
            if (open.Sum(p => Math.Ceiling(p.Valve.FlowM3PerH * LitresPerM3)) > Math.Floor(source.MaxFlowM3PerH * LitresPerM3))
            {
                yield return Sentence.Of($"{string.Join(" and ", open.Select(p => p.Pin.Valve))} together ask for {Quantity.Flow(open.Sum(p => p.Valve.FlowM3PerH))} at {pin.Start:ddd d MMM HH:mm}; {source.Code} gives {Quantity.Flow(source.MaxFlowM3PerH) with { IsBare = true }}.");
            }
        }

        var asked = pins.Sum(p => Math.Ceiling(p.Valve.FlowM3PerH * LitresPerM3) * ChangedNights.QuartersOf(p.Pin));
        if (pins.Count > 0 && estate.LeftM3(source) is { } left && asked > left * 4 * LitresPerM3)
        {
            yield return Sentence.Of($"Sets placed by hand ask {source.Code} for {Quantity.Volume(asked / 4 / LitresPerM3)}; {Quantity.Volume(Math.Max(0, left))} are left of its season's water.");
        }
    }

    private ValveWater? Valve(string code) => estate.Valves.FirstOrDefault(v => v.Code == code);

    private DateTimeOffset Local(DateTimeOffset instant) => TimeZoneInfo.ConvertTime(instant, request.TimeZone);
}
