using EstateWater.Planning;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Estate;

/// <summary>Answers in one sentence whether the estate is safe. Every number in it is counted from the plan: a block “passes” when the middle of its outlook does.</summary>
public sealed record EstateAnswer
{
    /// <summary>The sentence: first safe or not and how many blocks are not, then what it would be without water.</summary>
    public required string Sentence { get; init; }

    /// <summary>Blocks that stay or come above their ceiling even with the plan.</summary>
    public required int Unsafe { get; init; }

    /// <summary>Whether there are such blocks: the page's one alarm.</summary>
    public bool NeedsAttention => Unsafe > 0;

    /// <summary>Counts and words it.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="today">The estate's day.</param>
    /// <param name="units">How its reader is told days.</param>
    /// <param name="called">What the sentence calls the plan.</param>
    public static EstateAnswer From(Planning.Plan plan, DateOnly today, UnitChoice units, string called = "the plan")
    {
        var window = HeatWindow.First(plan, today, units);
        var fates = plan.Blocks.Select(block => Fate.Of(block, window.Last)).ToList();
        var fails = fates.Where(fate => fate.FailsWatered).ToList();
        return new EstateAnswer
        {
            Sentence = fails.Count > 0 ? NotSafe(fails, fates, window, called) : Safe(fates, window, called),
            Unsafe = fails.Count,
        };
    }

    private static string NotSafe(List<Fate> fails, List<Fate> fates, HeatWindow window, string called)
    {
        var count = fails.Count;
        var above = fails.Count(fate => fate.AboveNow);
        var happens = above == 0 ? $"{Verb(count, "pass")} {Its(count)} ceiling {window.Within}"
            : $"{Verb(count, "stay")} {(above == count ? "above" : $"or {Verb(count, "come")} above")} {Its(count)} ceiling {window.By}";
        var who = fates.Count == 1 ? "the one block" : $"{EstateText.Count(count)} of {EstateText.Count(fates.Count)} blocks";
        var dry = fates.Count(fate => fate.FailsDry);
        return $"Not safe: {who} {happens} even with {called}; without water, {(dry == count ? "as many" : EstateText.Count(dry))}.";
    }

    private static string Safe(List<Fate> fates, HeatWindow window, string called)
    {
        var above = fates.Count(fate => fate.AboveNow);
        var dry = fates.Count(fate => fate.FailsDry);
        var others = fates.Count == above ? "" : ", and no other passes it";
        var happens = above == 0
            ? $"{(fates.Count == 1 ? "the one block" : $"all {EstateText.Count(fates.Count)} blocks")} {Verb(fates.Count, "stay")} under {Its(fates.Count)} ceiling {window.Through}"
            : $"{(above == 1 ? "the block" : $"the {EstateText.Count(above)} blocks")} above {Its(above)} ceiling today {Verb(above, "come")} back under it {window.By}{others}";
        return dry == 0
            ? $"Safe: {happens}, even without water."
            : $"Safe with {called}: {happens}; without water, {EstateText.Count(dry)} would {(above == 0 ? "pass it" : "stay or come above it")}.";
    }

    // “pass”, “stay”, “come”, as their subject is one or more.
    private static string Verb(int count, string verb) => count > 1 ? verb : verb == "pass" ? "passes" : verb + "s";

    private static string Its(int count) => count == 1 ? "its" : "their";

    /// <summary>What happens to a block up to a day. One that is above its ceiling today fails unless it is back under it by then, any other as soon as it passes it.</summary>
    private sealed record Fate(bool AboveNow, bool FailsDry, bool FailsWatered)
    {
        public static Fate Of(BlockPlan block, DateOnly last)
        {
            var days = block.Outlook.Where(day => day.Date <= last).ToList();
            if (days.Count == 0)
            {
                return new Fate(false, false, false);
            }

            var aboveNow = days[0].UnwateredBar.P50 > block.CeilingBar;
            bool Fails(Func<OutlookDay, TensionBand> of) => (aboveNow ? days.TakeLast(1) : days).Any(day => of(day).P50 > block.CeilingBar);
            return new Fate(aboveNow, Fails(day => day.UnwateredBar), Fails(day => day.PlannedBar));
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
