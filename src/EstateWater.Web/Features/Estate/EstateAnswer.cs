using EstateWater.Planning;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Estate;

/// <summary>Answers in one sentence whether the estate is safe. Every number in it is counted from the plan: a block “passes” when the middle of its outlook does.</summary>
public sealed record EstateAnswer
{
    /// <summary>The sentence.</summary>
    public required string Sentence { get; init; }

    /// <summary>Whether a block is or comes above its ceiling even with the plan: the page's one alarm.</summary>
    public required bool NeedsAttention { get; init; }

    /// <summary>Counts and words it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="today">The estate's day.</param>
    /// <param name="units">How its reader is told days.</param>
    public static EstateAnswer From(Planning.Plan plan, DateOnly today, UnitChoice units)
    {
        var window = HeatWindow.First(plan, today, units);
        var fates = plan.Blocks.Select(block => Fate.Of(block, window.Last)).ToList();
        var above = fates.Where(fate => fate.AboveNow).ToList();
        var passing = fates.Where(fate => fate.PassesLater).ToList();
        var total = EstateText.Count(plan.Blocks.Count);
        return new EstateAnswer
        {
            Sentence = EstateText.Capital(Word(above, passing, total, plan.Blocks.Count, window)),
            NeedsAttention = above.Concat(passing).Any(fate => !fate.Covered),
        };
    }

    private static string Word(List<Fate> above, List<Fate> passing, string total, int blocks, HeatWindow window)
    {
        var saved = passing.Count(fate => fate.Covered);
        var back = above.Count(fate => fate.Covered);
        return (above.Count, passing.Count) switch
        {
            (0, 0) => $"{AllOf(blocks, total)} under {Its(blocks)} ceiling {window.Through} without water.",
            (0, var n) => $"{EstateText.Count(n)} of {total} blocks {Pass(n)} {Its(n)} ceiling {window.Within} unless watered; the plan covers {Part(saved, n)}.",
            (var n, 0) => $"{EstateText.Count(n)} of {total} blocks {Are(n)} above {Its(n)} ceiling today; the plan brings {Part(back, n)} back under it {window.By}.",
            var (n, m) => $"{EstateText.Count(n)} of {total} blocks {Are(n)} above {Its(n)} ceiling today and {EstateText.Count(m)} more {Pass(m)} it {window.Within} unless watered; " +
                $"the plan brings {Part(back, n)} back under it and covers {Others(saved, m)}.",
        };
    }

    private static string AllOf(int blocks, string total) => blocks == 1 ? "the one block stays" : $"all {total} blocks stay";

    private static string Part(int part, int whole) =>
        part == whole ? (whole == 1 ? "it" : whole == 2 ? "both" : $"all {EstateText.Count(whole)}") : EstateText.Count(part);

    private static string Others(int part, int whole) =>
        part == whole ? $"the other {EstateText.Count(whole)}" : $"{EstateText.Count(part)} of the others";

    private static string Pass(int count) => count == 1 ? "passes" : "pass";

    private static string Are(int count) => count == 1 ? "is" : "are";

    private static string Its(int count) => count == 1 ? "its" : "their";

    /// <summary>What happens to a block up to a day.</summary>
    private sealed record Fate(bool AboveNow, bool PassesLater, bool Covered)
    {
        public static Fate Of(BlockPlan block, DateOnly last)
        {
            var days = block.Outlook.Where(day => day.Date <= last).ToList();
            if (days.Count == 0)
            {
                return new Fate(false, false, false);
            }

            var aboveNow = days[0].UnwateredBar.P50 > block.CeilingBar;
            return aboveNow
                ? new Fate(true, false, days[^1].PlannedBar.P50 <= block.CeilingBar)
                : new Fate(false, days.Any(day => day.UnwateredBar.P50 > block.CeilingBar), days.All(day => day.PlannedBar.P50 <= block.CeilingBar));
        }
    }
}

/// <summary>The days an answer looks at: to the end of the first heat ahead, or to the horizon.</summary>
/// <param name="Last">Its last day.</param>
/// <param name="Within">“in Tuesday’s heat or before”.</param>
/// <param name="Through">“through Tuesday’s heat”.</param>
/// <param name="By">“by the end of Tuesday’s heat”.</param>
internal sealed record HeatWindow(DateOnly Last, string Within, string Through, string By)
{
    public static HeatWindow First(Planning.Plan plan, DateOnly today, UnitChoice units)
    {
        var ahead = plan.HeatSpells.Where(spell => spell.To >= today).OrderBy(spell => spell.From).ToList();
        if (ahead.Count == 0)
        {
            var horizon = $"the next {EstateText.Count(plan.HorizonDays)} days";
            return new HeatWindow(today.AddDays(plan.HorizonDays), $"within {horizon}", $"for {horizon}", $"within {horizon}");
        }

        var first = ahead[0];
        // Stations that share the spell end it on different days: the last of them counts.
        var last = ahead.Where(spell => spell.From <= first.To).Max(spell => spell.To);
        return first.From <= today
            ? new HeatWindow(last, "before today’s heat ends", "through today’s heat", "by the end of today’s heat")
            : Named(last, HeatOf(first.From, today, units));
    }

    private static HeatWindow Named(DateOnly last, string heat) =>
        new(last, $"in {heat} or before", $"through {heat}", $"by the end of {heat}");

    private static string HeatOf(DateOnly day, DateOnly today, UnitChoice units)
    {
        var name = units.NearDay(day, today);
        return day.DayNumber - today.DayNumber < 7 ? $"{name}’s heat" : $"the heat of {name}";
    }
}
