using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Seasons;

/// <summary>What is left of a source's season, what would be wanted of it, and the price of water at which it lasts.</summary>
/// <remarks>
/// A price on what is short turns one choice for all into one for each: every block takes water as long as it is worth the
/// price, and the price is raised until all together take no more than there is (Everett 1963, Operations Research
/// 11:399–417: generalised Lagrange multipliers).
/// </remarks>
internal sealed record SourceSeason
{
    // Up to here the lowest priority asks as much of its water anyway; doubled from there.
    private const double FirstPrice = WaterPrice.LeastPerMm / 3;
    private const int Doublings = 14;

    /// <summary>Left of the allocation before this plan. [m³]</summary>
    public required double LeftM3 { get; init; }

    /// <summary>What the rest of the season would use, were water not short.</summary>
    public required SeasonUse Wanted { get; init; }

    /// <summary>What it is expected to use at the price.</summary>
    public required SeasonUse Expected { get; init; }

    /// <summary>Trouble that a millimetre over a hectare must spare; 0 when water is not short. [1/(mm ha)]</summary>
    public required double PricePerMm { get; init; }

    /// <summary>Priorities whose blocks lose a greater share than all together, lowest first.</summary>
    public required IReadOnlyList<int> LosingPriorities { get; init; }

    /// <summary>Whether it does not last.</summary>
    public bool IsShort => PricePerMm > 0;

    /// <summary>Raises the price until the expected use is within what is left.</summary>
    public static SourceSeason Find(double leftM3, IReadOnlyList<ValveSeason> valves, CancellationToken cancellation = default)
    {
        var left = Math.Max(0, leftM3);
        var wanted = Uses(valves, 0, cancellation);
        var (price, before, uses) = (0.0, wanted, wanted);
        for (var doubling = 1; doubling <= Doublings && Total(uses) > left; doubling++)
        {
            price = FirstPrice * Math.Pow(2, doubling);
            before = uses;

            // What a block spends late it may have saved early: a dearer season is counted as using no more than a cheaper one.
            uses = [.. Uses(valves, price, cancellation).Zip(before, (now, cheaper) => now.AtMost(cheaper))];
        }

        var share = Total(before) > Total(uses) ? Math.Clamp((Total(before) - left) / (Total(before) - Total(uses)), 0, 1) : 1;
        SeasonUse[] expected = [.. before.Zip(uses, (dear, dearer) => ((1 - share) * dear) + (share * dearer))];
        return new SourceSeason
        {
            LeftM3 = leftM3,
            Wanted = Sum(wanted),
            Expected = Sum(expected),
            PricePerMm = price * Math.Pow(2, share - 1),
            LosingPriorities = price > 0 ? Losing(valves, wanted, expected) : [],
        };
    }

    private static SeasonUse[] Uses(IReadOnlyList<ValveSeason> valves, double price, CancellationToken cancellation)
    {
        var uses = new SeasonUse[valves.Count];
        Parallel.For(0, valves.Count, new ParallelOptions { CancellationToken = cancellation }, v => uses[v] = valves[v].At(price));
        return uses;
    }

    private static SeasonUse Sum(SeasonUse[] uses) => uses.Aggregate(default(SeasonUse), (sum, use) => sum + use);

    private static double Total(SeasonUse[] uses) => Sum(uses).TotalM3;

    private static List<int> Losing(IReadOnlyList<ValveSeason> valves, SeasonUse[] wanted, SeasonUse[] expected)
    {
        var all = 1 - (Total(expected) / Total(wanted));
        var byPriority = valves
            .SelectMany((valve, v) => valve.Blocks.Select(b => (
                b.Block.Priority,
                Wanted: wanted[v].TotalM3 * b.FlowM3PerH / valve.Blocks.Sum(x => x.FlowM3PerH),
                Kept: expected[v].TotalM3 * b.FlowM3PerH / valve.Blocks.Sum(x => x.FlowM3PerH))))
            .GroupBy(b => b.Priority)
            .Where(p => p.Sum(b => b.Wanted) > 0);
        return [.. byPriority.Where(p => 1 - (p.Sum(b => b.Kept) / p.Sum(b => b.Wanted)) >= all - 1e-9).Select(p => p.Key).Order()];
    }
}
