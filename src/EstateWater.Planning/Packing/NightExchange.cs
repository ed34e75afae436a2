namespace EstateWater.Planning.Packing;

/// <summary>Betters a packing two nights at a time: both are divided and laid on the clock anew while all other nights stand (large neighbourhood search, Shaw 1998).</summary>
internal static class NightExchange
{
    private const double Gap = 0.0003;
    private const double Work = 0.03;
    private const int MostPairs = 18;

    /// <summary>The packing after the exchanges, never worth less.</summary>
    /// <param name="source">What is wanted.</param>
    /// <param name="sets">A packing that keeps all limits.</param>
    /// <param name="shares">What it was laid from.</param>
    public static IReadOnlyList<PlacedSet> Better(SourceNights source, IReadOnlyList<PlacedSet> sets, NightShares shares)
    {
        var worth = SourcePacking.Objective(source, sets);
        foreach (var pair in Pairs(source, sets, shares).Take(MostPairs))
        {
            if (SourcePacking.IsNear(source, worth, shares.Bound))
            {
                break;
            }

            var standing = sets.Where(s => !pair.Contains(s.Night) && !source.Pinned.Contains(s)).ToList();
            var model = new DivisionModel(source, pair, standing);
            model.LayOnClock();
            model.Hint(sets);
            if (model.Solve(Gap, Work) is { } found && SourcePacking.Objective(source, [.. standing, .. found.Sets]) is var better && better > worth)
            {
                (sets, worth) = ([.. source.Pinned, .. standing, .. found.Sets], better);
            }
        }

        return sets;
    }

    // The nights first that lost most when they were laid on the clock; of those alike, near nights.
    private static IEnumerable<int[]> Pairs(SourceNights source, IReadOnlyList<PlacedSet> sets, NightShares shares)
    {
        var lost = Enumerable.Range(0, source.Nights.Count).Select(n => Worth(shares.Sets, n) - Worth(sets, n)).ToArray();
        return
            from first in Enumerable.Range(0, source.Nights.Count)
            from second in Enumerable.Range(first + 1, source.Nights.Count - first - 1)
            orderby lost[first] + lost[second] descending, second - first, first
            select (int[])[first, second];
    }

    private static double Worth(IReadOnlyList<PlacedSet> sets, int night) =>
        sets.Where(s => s.Night == night).Sum(s => s.Quarters * s.Need.WorthPerQuarter * s.Need.NightShare[night]);
}
