using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Seasons;

/// <summary>What is left of a source's season, what would be wanted of it, and the price of water that makes the best of it.</summary>
/// <remarks>
/// A price on what is short turns one choice for all blocks and weeks into one for each: water goes where and when it is
/// worth the price (Everett 1963, Operations Research 11:399–417: generalised Lagrange multipliers). It is raised until the
/// expected use is within what is left. Both ways are then lived through to the end of the water: keeping it is chosen only
/// where it is expected to spare a good part of the trouble that spending it as it comes would leave.
/// </remarks>
internal sealed record SourceSeason
{
    // Up to the first price the lowest priority asks as much of its water anyway; the ladder rises by √2.
    private const double FirstPrice = WaterPrice.LeastPerMm / 3;
    private const int Steps = 24;

    // Keeping water is sure to cost and only expected to spare: it must spare so much of the season's trouble. Ours.
    private const double WorthKeeping = 0.1;

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
        var (spending, keeping) = (At(0, left), At(LastingPrice(price => At(price, double.PositiveInfinity).TotalM3 <= left), left));
        return new SourceSeason
        {
            LeftM3 = leftM3,
            Wanted = wanted,
            Expected = keeping.Trouble <= (1 - WorthKeeping) * spending.Trouble ? keeping : spending,
        };
    }

    // The lowest step of the ladder at which it lasts; the highest where it lasts at none.
    private static double LastingPrice(Func<double, bool> lasts)
    {
        var (low, high) = (0, Steps);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = lasts(Price(middle)) ? (low, middle) : (middle, high);
        }

        return Price(high);
    }

    private static double Price(int step) => FirstPrice * Math.Pow(2, step / 2.0);
}
