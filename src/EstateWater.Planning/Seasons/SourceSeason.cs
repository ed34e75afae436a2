using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Seasons;

/// <summary>What is left of a source's season, what would be wanted of it, and the price of water that makes the best of it.</summary>
/// <remarks>
/// A price on what is short turns one choice for all blocks and weeks into one for each: water goes where and when it is
/// worth the price (Everett 1963, Operations Research 11:399–417: generalised Lagrange multipliers). Too low a price and it
/// runs dry before ripening, too high and blocks suffer for water that is left over: of a ladder of prices the one is taken
/// under which the season, ending when the water does, is expected to meet least trouble.
/// </remarks>
internal sealed record SourceSeason
{
    // Up to here the lowest priority asks as much of its water anyway; doubled from there.
    private const double FirstPrice = WaterPrice.LeastPerMm / 3;
    private const double Step = 2;
    private const int Steps = 12;

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
        var wanted = SeasonTrial.At(valves, decidedDays, 0, double.PositiveInfinity, cancellation);
        var best = wanted;
        if (wanted.TotalM3 > leftM3)
        {
            var left = Math.Max(0, leftM3);
            best = SeasonTrial.At(valves, decidedDays, 0, left, cancellation);
            for (var step = 1; step <= Steps; step++)
            {
                var dearer = SeasonTrial.At(valves, decidedDays, FirstPrice * Math.Pow(Step, step), left, cancellation);
                best = dearer.Trouble < best.Trouble ? dearer : best;

                // Where water is left over already, dearer water only leaves more.
                if (dearer.TotalM3 < 0.8 * left)
                {
                    break;
                }
            }
        }

        return new SourceSeason { LeftM3 = leftM3, Wanted = wanted, Expected = best };
    }
}
