using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning.Blocks;

namespace EstateWater.Planning.Rounds;

/// <summary>How far a block's leaves usually lie apart, and how many a wanted precision takes.</summary>
/// <param name="SpreadMpa">Standard deviation between vines. [MPa]</param>
/// <param name="Leaves">Leaves to read.</param>
/// <remarks>
/// The spread pools the block's own last sets, stood by five leaves of a usual set, so that one lucky set promises nothing.
/// Vines read in groups are alike: the number for independent vines is multiplied by the design effect 1 + (m − 1)·ρ,
/// m the usual vines in a group and ρ the share of the variance between groups (Kish 1965, Survey Sampling; from memory,
/// to be checked).
/// </remarks>
public sealed record UsualLeaves(double SpreadMpa, int Leaves)
{
    /// <summary>More than so many are no round but a survey. Ours.</summary>
    public const int Most = 20;

    private const int LastSets = 8;
    private const int PriorLeaves = 5;

    /// <summary>From the block's sets.</summary>
    /// <param name="sets">In time order; those of another measure are left out.</param>
    /// <param name="measure">What will be read.</param>
    /// <param name="halfWidthMpa">Wanted half of the 95 % interval, above 0. [MPa]</param>
    public static UsualLeaves Of(IReadOnlyList<ReadingSet> sets, WaterPotentialMeasure measure, double halfWidthMpa)
    {
        ArgumentNullException.ThrowIfNull(sets);
        var last = sets.Where(s => s.Measure == measure && !s.IsDoubtful).TakeLast(LastSets).ToList();
        var spread = Spread(last, SetEvidence.UsualSpreadMpa(measure));
        var wanted = SampleSize.ForHalfWidth(spread, halfWidthMpa) * DesignEffect(last);
        return new UsualLeaves(spread, (int)Math.Clamp(Math.Ceiling(wanted - 1e-9), ReadingSetRules.Default.FewestLeaves, Most));
    }

    private static double Spread(List<ReadingSet> sets, double usualMpa)
    {
        var own = sets.Select(s => s.Statistics.Robust).Where(s => s.StandardDeviationMpa is not null).ToList();
        var squares = own.Sum(s => (s.Vines - 1) * s.StandardDeviationMpa!.Value * s.StandardDeviationMpa.Value);
        return Math.Sqrt((squares + (PriorLeaves * usualMpa * usualMpa)) / (own.Sum(s => s.Vines - 1) + PriorLeaves));
    }

    private static double DesignEffect(List<ReadingSet> sets)
    {
        var grouped = sets
            .Where(s => s.Leaves.All(l => l.Group is not null))
            .Select(s => s.Leaves.GroupBy(l => l.Group, l => l.TensionMpa).Select(g => g.ToArray()).ToArray())
            .Where(groups => groups.Length > 1 && groups.Any(g => g.Length > 1))
            .Select(groups => OneWayAnova.Of(groups))
            .ToList();
        if (grouped.Count == 0)
        {
            return 1;
        }

        var (between, within) = (grouped.Average(a => a.BetweenVariance), grouped.Average(a => a.MeanSquareWithin));
        var vines = grouped.Average(a => a.Values / (double)a.Groups);
        return between + within > 0 ? 1 + ((vines - 1) * between / (between + within)) : 1;
    }
}
