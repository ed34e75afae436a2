using EstateWater.Agronomy.Drip;
using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Blocks;

namespace EstateWater.Planning.Reasons;

/// <summary>Says of a block what, how much, by when, because; the two facts that decided it are the because.</summary>
internal static class BlockReason
{
    public static Sentence Write(BlockOutcome outcome)
    {
        var parts = new List<Sentence> { Decision(outcome) };
        if (Doubt(outcome.Course.State.Sets) is { } doubt)
        {
            parts.Add(doubt);
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
        return Sentence.Of($"Water {Wording.Hours(outcome.Quarters)}{hand} {nights} {last.Start:ddd d MMM}: {because}; with it {WateredPeak(outcome)}.");
    }

    private static Sentence WateredPeak(BlockOutcome outcome) =>
        Sentence.Of($"{Wording.Tension(Descriptive.Median(outcome.Watered[outcome.WorstDay]))} on {Wording.Day(outcome.Today.AddDays(outcome.WorstDay))}");

    private static Sentence? Doubt(IReadOnlyList<ReadingSet> sets)
    {
        if (sets.Count > 1 && sets[^1].Findings.Any(f => f.Code == ReadingCheck.Jump) && sets[^1].Statistics.MeanMpa > sets[^2].Statistics.MeanMpa)
        {
            return "It jumped: before more water, look whether what its valve gives reaches the vines, or read it again.";
        }

        if (sets.Count == 0 || !sets[^1].Findings.Any(f => f.Severity == FindingSeverity.Reject))
        {
            return null;
        }

        var worst = sets[^1].Findings.First(f => f.Severity == FindingSeverity.Reject);
        return Sentence.Of($"Read it again: {worst.Words.WithoutFullStop()}.");
    }
}
