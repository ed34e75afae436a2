using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Units;
using static EstateWater.Agronomy.WaterStatus.FindingSeverity;
using static EstateWater.Agronomy.WaterStatus.ReadingCheck;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>How the leaves of one set agree with each other.</summary>
internal static class SpreadChecks
{
    public static IEnumerable<ReadingFinding?> Of(IReadOnlyList<LeafFact> leaves, WaterPotentialMeasure measure, ReadingSetRules rules)
    {
        double[] values = [.. leaves.Select(l => l.TensionMpa)];
        return [Spread(values, measure, rules), Pairs(leaves, rules), Odd(values), Rounded(values)];
    }

    private static ReadingFinding? Spread(double[] values, WaterPotentialMeasure measure, ReadingSetRules rules)
    {
        if (values.Length < 3)
        {
            return null;
        }

        var deviation = Descriptive.StandardDeviation(values);
        var usual = measure == WaterPotentialMeasure.Leaf ? rules.LeafSpreadMpa : rules.StemSpreadMpa;
        if (deviation < 1e-9)
        {
            return new(NoSpread, Doubtful, "Every leaf shows the same tension, which vines do not do.");
        }

        return deviation <= usual ? null : new(UnusualSpread, Doubtful,
            Sentence.Of($"Leaves spread {Quantity.TensionOfMpa(deviation)} about their mean; up to {Quantity.TensionOfMpa(usual)} is usual for this measure."));
    }

    private static ReadingFinding? Pairs(IReadOnlyList<LeafFact> leaves, ReadingSetRules rules)
    {
        // Three leaves of a vine settle the matter; the check is for pairs.
        var apart = leaves
            .Where(l => l.Vine is not null)
            .GroupBy(l => (l.Group, l.Vine), l => l.TensionMpa)
            .Count(v => v.Count() == 2 && v.Max() - v.Min() > rules.LeafPairMpa + 1e-9);
        return apart == 0 ? null : new(LeavesOfAVineDiffer, Note,
            Sentence.Of($"The two leaves of {(apart == 1 ? "a vine" : $"{apart} vines")} differ by more than {Quantity.TensionOfMpa(rules.LeafPairMpa)}: read a third."));
    }

    private static ReadingFinding? Odd(double[] values)
    {
        if (values.Length < 3)
        {
            return null;
        }

        var odd = ReadingSetStatistics.OutliersOf(values);
        return odd.Count == 0 ? null : new(OutlierLeaf, Doubtful,
            Sentence.Of($"{Words.Leaves(odd.Count)} far from the others: {Sentence.Join(", ", odd.Select(i => Sentence.Of($"{Quantity.TensionOfMpa(values[i])}")))}. Kept, but not counted by the outlook."));
    }

    private static ReadingFinding? Rounded(double[] values) =>
        values.Length >= 4 && values.Distinct().Count() > 1 && values.All(v => Math.Abs((v * 10) - Math.Round(v * 10)) < 1e-6)
            ? new(RoundedToWholeBars, Note, "Every value is a whole bar: read the gauge to a tenth where it allows.")
            : null;
}
