using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Seasons;

/// <summary>What is left of a source's season, what would be wanted of it, and the price of water that makes the best of it.</summary>
/// <remarks>
/// A price on what is short turns one choice for all blocks and weeks into one for each: water goes where and when it is
/// worth the price (Everett 1963, Operations Research 11:399–417: generalised Lagrange multipliers). The season is
/// lived through to the end of the water at the prices of a ladder, and the one that leaves least trouble is taken: mostly
/// a little less than that at which water lasts, for what no week takes spares nothing.
/// </remarks>
internal sealed record SourceSeason
{
    // Up to the first price the lowest priority asks as much of its water anyway; the ladder rises by √2.
    private const double FirstPrice = WaterPrice.LeastPerMm / 3;
    private const int Steps = 24;

    /// <summary>Left of the allocation before this plan. [m³]</summary>
    public required double LeftM3 { get; init; }

    /// <summary>What the rest of the season would use, were water not short.</summary>
    public required SeasonUse Wanted { get; init; }

    /// <summary>What is expected of the price that was chosen.</summary>
    public required SeasonUse Expected { get; init; }

    /// <summary>Trouble that a millimetre over a hectare must spare; 0 when water is not short. [1/(mm ha)]</summary>
    public double PricePerMm => Expected.PricePerMm;

    /// <summary>Whether it does not last.</summary>
    public bool IsShort => Wanted.TotalM3 > LeftM3;

    /// <summary>Priorities whose blocks lose a greater share than all together, lowest first; empty when all lose alike.</summary>
    public IReadOnlyList<int> LosingPriorities
    {
        get
        {
            double Loss(double expected, double wanted) => wanted > 0 ? 1 - (expected / wanted) : 0;
            var all = Loss(Expected.TotalM3, Wanted.TotalM3);
            var priorities = Wanted.M3ByPriority.Where(p => p.Value > 0).ToList();
            var losing = priorities.Where(p => Loss(Expected.M3ByPriority.GetValueOrDefault(p.Key), p.Value) >= all - 1e-9).Select(p => p.Key).Order().ToList();
            return losing.Count == priorities.Count ? [] : losing;
        }
    }

    /// <summary>Finds the price.</summary>
    /// <param name="leftM3">Left of the allocation; may be negative. [m³]</param>
    /// <param name="valves">The source's blocks by valve.</param>
    /// <param name="decidedDays">Days that a plan decides.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static SourceSeason Find(double leftM3, IReadOnlyList<IReadOnlyList<BlockSeason>> valves, int decidedDays, CancellationToken cancellation = default)
    {
        SeasonUse At(double price, double within) => SeasonTrial.At(valves, decidedDays, price, within, cancellation);
        var wanted = At(0, double.PositiveInfinity);
        if (wanted.TotalM3 <= leftM3)
        {
            return new SourceSeason { LeftM3 = leftM3, Wanted = wanted, Expected = wanted };
        }

        var left = Math.Max(0, leftM3);
        return new SourceSeason { LeftM3 = leftM3, Wanted = wanted, Expected = LeastTrouble(price => At(price, left)) };
    }

    // Spending as it comes, every second step of the ladder, then the steps beside the best: along it trouble falls, then
    // rises, but not without a wiggle.
    private static SeasonUse LeastTrouble(Func<double, SeasonUse> at)
    {
        var coarse = Enumerable.Range(0, (Steps / 2) + 1)
            .Select(i => (Step: (int?)(2 * i), Use: at(Price(2 * i))))
            .Prepend((Step: null, Use: at(0)))
            .MinBy(c => c.Use.Trouble);
        return new[] { coarse.Step - 1, coarse.Step + 1 }
            .OfType<int>()
            .Where(step => step is >= 0 and <= Steps)
            .Select(step => at(Price(step)))
            .Prepend(coarse.Use)
            .MinBy(use => use.Trouble)!;
    }

    private static double Price(int step) => FirstPrice * Math.Pow(2, step / 2.0);
}
