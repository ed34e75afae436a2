using EstateWater.Agronomy.Drip;
using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Units;

namespace EstateWater.Planning.Reasons;

/// <summary>Says of a block what, how much, by when, because; the two facts that decided it are the because.</summary>
internal static class BlockReason
{
    public static Sentence Write(BlockOutcome outcome)
    {
        var parts = new List<Sentence> { Decision(outcome) };
        if (LastSetDoubt.Of(outcome.Course.State.Sets) is { } doubt)
        {
            parts.Insert(0, doubt);
        }

        if (outcome.Course.State.Valve is { RecentMeterShare: { } share } valve && share < 1 - MeterCheck.LargeDifference)
        {
            parts.Add(Sentence.Of($"Look at valve {valve.Code}: its last metered sets gave {share:P0} of what the hours should give."));
        }

        return Sentence.Join(" ", parts);
    }

    private static Sentence Decision(BlockOutcome outcome)
    {
        if (outcome.Quarters == 0 && !outcome.Course.Limits.HasLeaves[0])
        {
            return "Leave dry: without leaves, nothing to plan until budburst.";
        }

        var because = Sentence.Join("; ", DecidingFacts.Of(outcome).Select(f => f.Words));
        if (outcome.Quarters == 0)
        {
            return outcome.Need.WantedQuarters > 0
                ? Sentence.Of($"No water fits, {Wording.Hours(outcome.Need.WantedQuarters)} wanted: {because}.")
                : Sentence.Of($"Leave dry: {because}.");
        }

        var last = outcome.Sets[^1].Night;
        var hand = outcome.Need.ByHand ? " (hours set by hand)" : string.Empty;
        var nights = outcome.Sets.Count == 1 ? "on the night of" : Sentence.Of($"in {outcome.Sets.Count} sets by the night of");
        return Sentence.Of($"Water {Wording.Hours(outcome.Quarters)}{hand} {nights} {last.Start:ddd d MMM}{Proportion(outcome)}: {because}; with it {WateredPeak(outcome)}.");
    }

    // The day on which it stands highest against its ceiling with the water, which is seldom the worst one without.
    private static Sentence WateredPeak(BlockOutcome outcome)
    {
        var ceilings = outcome.Course.Limits.CeilingMpa;
        var (day, tension) = outcome.Watered.Select((members, d) => (d, Descriptive.Median(members))).MaxBy(d => d.Item2 - ceilings[d.d]);
        var over = tension - ceilings[day];
        var against = over > 0.005 ? Sentence.Of($", still {Wording.Tension(over)} over") : Sentence.Empty;
        // To a hundredth of a bar first, as the band of the outlook: a row and its sentence then round alike.
        return Sentence.Of($"at most {Wording.Tension(Math.Round(tension, 3))} on {Wording.Day(outcome.Today.AddDays(day))}{against}");
    }

    // A plan that asks more of a valve than its whole season so far should be looked at twice.
    private static Sentence Proportion(BlockOutcome outcome) =>
        outcome.SeasonHours is > 0 and var season && outcome.Quarters / 4.0 > season
            ? Sentence.Of($" (more than the {season:0.##} h of this whole season so far)")
            : Sentence.Empty;
}
