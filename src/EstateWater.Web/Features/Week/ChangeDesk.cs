using EstateWater.Agronomy.Units;
using EstateWater.Planning;
using EstateWater.Planning.WhatIf;
using EstateWater.Web.Parts;

namespace EstateWater.Web.Features.Week;

/// <summary>What can be tried on the week. A change that contradicts the estate or another change is refused in words and not made.</summary>
/// <param name="fitted">The estate as learned.</param>
/// <param name="draft">The plan on the desk.</param>
public sealed class ChangeDesk(FittedEstate fitted, WeekDraft draft)
{
    /// <summary>For so many nights something is taken out where nobody says otherwise: time for a repair; ours. [nights]</summary>
    public const int NightsOut = 3;

    /// <summary>Valve codes.</summary>
    public IReadOnlyList<string> Valves { get; } = [.. fitted.Request.Valves.Select(v => v.Code).Order(StringComparer.Ordinal)];

    /// <summary>Source codes.</summary>
    public IReadOnlyList<string> Sources { get; } = [.. fitted.Request.Sources.Select(s => s.Code).Order(StringComparer.Ordinal)];

    /// <summary>Sets as planned now.</summary>
    public IReadOnlyList<PlannedSet> Sets => draft.Plan.Sets;

    /// <summary>The nights ahead of a source.</summary>
    public IReadOnlyList<DateOnly> NightsOf(string source) => [.. fitted.OpeningsOf(source).Select(n => n.Date)];

    /// <summary>The nights ahead of any source.</summary>
    public IReadOnlyList<DateOnly> Nights => [.. Sources.SelectMany(NightsOf).Distinct().Order()];

    /// <summary>The moment of a place on the board, on the quarter hours at which sets of that night may begin.</summary>
    public DateTimeOffset MomentOf(BoardPlace place)
    {
        var opens = EstateText.At(place.Night, Source(place.Source).DailyFrom, fitted.Request.TimeZone);
        var moment = opens + (place.Quarter * BoardPlace.QuarterHour);

        // A night that the plan finds open already counts from when a set may run.
        if (fitted.OpeningsOf(place.Source).FirstOrDefault(n => n.Date == place.Night) is { } night)
        {
            moment = night.Opens + (Math.Round((moment - night.Opens) / BoardPlace.QuarterHour) * BoardPlace.QuarterHour);
        }

        return TimeZoneInfo.ConvertTime(moment, fitted.Request.TimeZone);
    }

    /// <summary>A source by its code.</summary>
    public PlanSource Source(string code) => fitted.Request.Sources.First(s => s.Code == code);

    /// <summary>The source that feeds a valve.</summary>
    public string SourceOf(string valve) => fitted.Request.Valves.First(v => v.Code == valve).SourceCode;

    /// <summary>The night to which a moment belongs: the day on which its source's window opened.</summary>
    public DateOnly NightOf(PlannedSet set) =>
        fitted.OpeningsOf(set.Source).Where(n => n.Opens <= set.Start).Select(n => n.Date).DefaultIfEmpty(DateOnly.FromDateTime(set.Start.DateTime)).Max();

    /// <summary>Closes a valve from one night through another; gives what stands against it.</summary>
    public Task<IReadOnlyList<Sentence>> CloseAsync(string valve, DateOnly from, DateOnly to) =>
        TryAsync(draft.Edits.With(new ValveClosed(valve, from, to)), $"the closing of {valve}");

    /// <summary>Takes a source out for some nights; gives what stands against it.</summary>
    public Task<IReadOnlyList<Sentence>> TakeOutAsync(string source, DateOnly from, int nights) =>
        TryAsync(draft.Edits.With(new SourceOut(source, from, from.AddDays(nights - 1))), $"the outage of {source}");

    /// <summary>Plans the nights ahead without what failed; gives what stands against it.</summary>
    public Task<IReadOnlyList<Sentence>> WithoutAsync(SetTrouble trouble)
    {
        ArgumentNullException.ThrowIfNull(trouble);
        var nights = NightsOf(trouble.Source ?? SourceOf(trouble.Valve!));
        return trouble.Source is { } source
            ? TakeOutAsync(source, nights[0], NightsOut)
            : CloseAsync(trouble.Valve!, nights[0], nights[0].AddDays(NightsOut - 1));
    }

    /// <summary>Plans with it again; gives what stands against it.</summary>
    public Task<IReadOnlyList<Sentence>> WithAgainAsync(SetTrouble trouble)
    {
        ArgumentNullException.ThrowIfNull(trouble);
        return TryAsync(draft.Edits with { Changes = [.. draft.Edits.Changes.Where(c => !trouble.IsMetBy(c))] }, $"the outage of {trouble.Out}");
    }

    /// <summary>Moves a set; the valve's other sets stay where they are. Gives what stands against it.</summary>
    /// <param name="set">The set, as planned now.</param>
    /// <param name="night">The night, by the day on which its window opens.</param>
    /// <param name="opens">Clock time; before the window's opening it is the next morning.</param>
    /// <param name="hours">How long. [h]</param>
    public Task<IReadOnlyList<Sentence>> MoveAsync(PlannedSet set, DateOnly night, TimeOnly opens, double hours) =>
        MoveAsync(set, new SetPinned(set.Valve, Start(set.Source, night, opens), hours));

    /// <summary>Moves a set; the valve's other sets stay where they are. Gives what stands against it.</summary>
    /// <param name="set">The set, as planned now.</param>
    /// <param name="place">Its valve, where it goes.</param>
    public Task<IReadOnlyList<Sentence>> MoveAsync(PlannedSet set, SetPinned place) => TryAsync(Moved(set, place), $"the move of {set.Valve}");

    /// <summary>What would stand against a move.</summary>
    /// <param name="set">The set, as planned now.</param>
    /// <param name="place">Its valve, where it would go.</param>
    public IReadOnlyList<Sentence> StandsAgainst(PlannedSet set, SetPinned place) => StandsAgainst(Moved(set, place));

    private WeekEdits Moved(PlannedSet set, SetPinned place)
    {
        var sets = Sets.Where(s => s.Valve == set.Valve)
            .Select(s => FromWhereItWas(s, s == set ? place : new SetPinned(s.Valve, s.Start, s.Hours)))
            .OrderBy(p => p.Start);
        var blocks = fitted.Request.Blocks.Where(b => b.ValveCode == set.Valve).Select(b => b.Code);
        return draft.Edits.WithSets(set.Valve, sets, blocks);
    }

    // A set moved twice comes from where it stood first, and one moved back was never moved.
    private SetPinned FromWhereItWas(PlannedSet set, SetPinned place)
    {
        var before = draft.Edits.Changes.OfType<SetPinned>().FirstOrDefault(p => p.Valve == set.Valve && p.Start == set.Start);
        var was = before?.Was ?? new SetPlace(set.Start, set.Hours);
        return place with { Was = was.Start == place.Start && was.Hours == place.Hours ? null : was };
    }

    private IReadOnlyList<Sentence> StandsAgainst(WeekEdits edits) =>
        Planner.Conflicts(fitted, fitted.Request with { HoursByHand = edits.HoursByHand, Changes = edits.Changes });

    private async Task<IReadOnlyList<Sentence>> TryAsync(WeekEdits edits, string what)
    {
        var conflicts = StandsAgainst(edits);
        if (conflicts.Count == 0)
        {
            await draft.ApplyAsync(edits, what);
        }

        return conflicts;
    }

    private DateTimeOffset Start(string source, DateOnly night, TimeOnly opens)
    {
        return EstateText.At(opens < Source(source).DailyFrom ? night.AddDays(1) : night, opens, fitted.Request.TimeZone);
    }
}
