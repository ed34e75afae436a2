using System.Globalization;
using EstateWater.Agronomy.Units;
using static EstateWater.Agronomy.WaterStatus.FindingSeverity;
using static EstateWater.Agronomy.WaterStatus.ReadingCheck;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>How the leaves of one set were chosen, bagged and carried.</summary>
internal static class LeafHandlingChecks
{
    public static IEnumerable<ReadingFinding?> Of(IReadOnlyList<LeafFact> leaves, WaterPotentialMeasure measure, ReadingSetRules rules) =>
    [
        leaves.Count < rules.FewestLeaves
            ? new(TooFewLeaves, Doubtful, string.Create(CultureInfo.InvariantCulture, $"Only {Words.Leaves(leaves.Count)}; read at least {rules.FewestLeaves}."))
            : null,
        Shade(leaves, measure),
        .. Bag(leaves, measure, rules),
        Delay(leaves, rules),
        Range(leaves, measure),
    ];

    private static ReadingFinding? Shade(IReadOnlyList<LeafFact> leaves, WaterPotentialMeasure measure)
    {
        var shaded = leaves.Count(l => l.Exposure == LeafExposure.Shade);
        return measure == WaterPotentialMeasure.Leaf && shaded > 0
            ? new(ShadedLeaf, Doubtful, $"{Words.Leaves(shaded)} from the shade: a leaf reading wants full sun, shade reads too wet.")
            : null;
    }

    private static IEnumerable<ReadingFinding?> Bag(IReadOnlyList<LeafFact> leaves, WaterPotentialMeasure measure, ReadingSetRules rules)
    {
        if (measure != WaterPotentialMeasure.Stem)
        {
            yield break;
        }

        var refused = leaves.Count(l => l.BaggedMin < rules.ShortestBagMin);
        var brief = leaves.Count(l => l.BaggedMin >= rules.ShortestBagMin && l.BaggedMin < rules.GoodBagMin);
        var unknown = leaves.Count(l => l.BaggedMin is null);
        yield return refused == 0 ? null : new(BaggedTooShort, Reject, string.Create(CultureInfo.InvariantCulture,
            $"{Words.Leaves(refused)} bagged less than {rules.ShortestBagMin:0.#} min: not stem water potential yet."));
        yield return brief == 0 ? null : new(BaggedTooShort, Note, string.Create(CultureInfo.InvariantCulture,
            $"{Words.Leaves(brief)} bagged less than {rules.GoodBagMin:0.#} min; an hour is better, above all late in the season."));
        yield return unknown == 0 ? null : new(BagTimeUnknown, Note, $"{Words.Leaves(unknown)} without a note of the time in the bag.");
    }

    private static ReadingFinding? Delay(IReadOnlyList<LeafFact> leaves, ReadingSetRules rules)
    {
        var slow = leaves.Where(l => l.DelayS > (rules.IsBagged(l) ? rules.LongestDelayS : rules.LongDelayS)).ToArray();
        var refused = slow.Any(l => l.DelayS > rules.LongestDelayS && !rules.IsBagged(l));
        return slow.Length == 0 ? null : new(DelayTooLong, refused ? Reject : Note, string.Create(CultureInfo.InvariantCulture,
            $"{Words.Leaves(slow.Length)} too long from cut to chamber: up to {slow.Max(l => l.DelayS):0} s, and {rules.LongDelayS:0.#} s is enough."));
    }

    private static ReadingFinding? Range(IReadOnlyList<LeafFact> leaves, WaterPotentialMeasure measure)
    {
        var (lowest, highest) = ReadingSetRules.PlausibleRange(measure);
        var odd = leaves.Where(l => l.TensionMpa < lowest || l.TensionMpa > highest).Select(l => Sentence.Of($"{Quantity.TensionOfMpa(l.TensionMpa)}")).ToArray();
        return odd.Length == 0 ? null : new(OutOfRange, Reject,
            Sentence.Of($"{Sentence.Join(", ", odd)}: outside what vines show ({Quantity.TensionOfMpa(lowest)} to {Quantity.TensionOfMpa(highest)})."));
    }
}
