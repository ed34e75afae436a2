using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Blocks;

namespace EstateWater.Planning.Reasons;

/// <summary>Why a block's last reading set should not be believed as it is.</summary>
internal static class LastSetDoubt
{
    /// <summary>What to do about it, in a sentence; null where nothing is wrong with it.</summary>
    /// <param name="sets">The block's sets, in order of time.</param>
    public static Sentence? Of(IReadOnlyList<ReadingSet> sets)
    {
        if (sets.Count > 1 && sets[^1].Findings.Any(f => f.Code == ReadingCheck.Jump) && sets[^1].Statistics.MeanMpa > sets[^2].Statistics.MeanMpa)
        {
            return "First look whether what its valve gives reaches the vines, or read it again: it jumped.";
        }

        return sets.Count > 0 && sets[^1].Findings.FirstOrDefault(f => f.Severity == FindingSeverity.Reject) is { } worst
            ? Sentence.Of($"First read it again: {worst.Words.WithoutFullStop()}.")
            : null;
    }
}
