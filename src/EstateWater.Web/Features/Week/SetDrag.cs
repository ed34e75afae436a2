using EstateWater.Agronomy.Units;
using EstateWater.Planning;
using EstateWater.Planning.WhatIf;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Week;

/// <summary>Sets dragged over the board: what a place would mean is said before they are let go there.</summary>
/// <param name="desk">What makes the change.</param>
/// <param name="units">The reader's.</param>
public sealed class SetDrag(ChangeDesk desk, UnitChoice units)
{
    /// <summary>What it would mean to let a set go.</summary>
    /// <param name="setId">The set, by the id of its row.</param>
    /// <param name="byEnd">Whether its end is dragged, and not the whole set.</param>
    /// <param name="place">Where it, or its end, hangs.</param>
    public PlaceAnswer Weigh(string setId, bool byEnd, BoardPlace place)
    {
        if (Find(setId) is not { } set)
        {
            return new PlaceAnswer(false, [Gone.In(units)]);
        }

        var pin = Pin(set, byEnd, place);
        var against = Against(set, pin, place);
        var would = $"{set.Valve}: {units.DayClock(pin.Start)} to {units.Clock(pin.End)}, {units.Hours(pin.Hours)}";
        return against.Count > 0
            ? new PlaceAnswer(false, ["Not here. " + string.Join(" ", against.Select(a => a.In(units)))])
            : new PlaceAnswer(true, Crowd(set, pin) is { } crowd ? [would, crowd] : [would]);
    }

    /// <summary>Lets a set go: moves it, or gives what stands against it. Where it stood before, nothing is changed.</summary>
    /// <param name="setId">The set, by the id of its row.</param>
    /// <param name="byEnd">Whether its end is dragged, and not the whole set.</param>
    /// <param name="place">Where it, or its end, is let go.</param>
    public async Task<IReadOnlyList<Sentence>> DropAsync(string setId, bool byEnd, BoardPlace place)
    {
        if (Find(setId) is not { } set)
        {
            return [Gone];
        }

        var pin = Pin(set, byEnd, place);
        if (place.Source == set.Source && (pin.Start, pin.Hours) == (set.Start, set.Hours))
        {
            return [];
        }

        return place.Source == set.Source ? await desk.MoveAsync(set, pin) : Against(set, pin, place);
    }

    private static Sentence Gone => "This set is no longer planned.";

    private PlannedSet? Find(string setId) => desk.Sets.FirstOrDefault(s => SetRows.IdOf(s) == setId);

    private SetPinned Pin(PlannedSet set, bool byEnd, BoardPlace place)
    {
        var moment = desk.MomentOf(place);
        return byEnd
            ? new SetPinned(set.Valve, set.Start, Math.Max(1, Math.Round((moment - set.Start) / BoardPlace.QuarterHour)) * BoardPlace.QuarterHour.TotalHours)
            : new SetPinned(set.Valve, moment, set.Hours);
    }

    private IReadOnlyList<Sentence> Against(PlannedSet set, SetPinned pin, BoardPlace place) => place.Source == set.Source
        ? desk.StandsAgainst(set, pin)
        : [$"{set.Valve} is on {set.Source}: it cannot run on {place.Source}."];

    // Sets that nobody placed give way: no conflict, but to be known before.
    private string? Crowd(PlannedSet set, SetPinned pin)
    {
        var meanwhile = desk.Sets.Where(s => s.Source == set.Source && s.Valve != set.Valve && s.Start < pin.End && pin.Start < s.End).ToList();
        var most = meanwhile.Select(s => s.Start).Where(at => at > pin.Start).Append(pin.Start)
            .Max(at => meanwhile.Where(s => s.Start <= at && at < s.End).Sum(s => s.FlowM3PerH)) + set.FlowM3PerH;
        var gives = desk.Source(set.Source).MaxFlowM3PerH;
        return most > gives ? $"With the sets there {units.Flow(most)} of {units.Flow(gives)}: the planner moves others." : null;
    }
}

/// <summary>What a place would mean for a set.</summary>
/// <param name="Stands">Whether the set can stand there.</param>
/// <param name="Words">In lines.</param>
public sealed record PlaceAnswer(bool Stands, IReadOnlyList<string> Words);
