using EstateWater.Agronomy.Outlook;
using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Seasons;

/// <summary>A valve lived through the rest of the season in one version of the weather, week by week, at a price of water.</summary>
/// <remarks>
/// Each week takes water as a plan would: pieces as long as each spares its least cost in the days ahead, and of them as many
/// as are together worth most above the price. So the use foretold is that of the rule which will spend the water.
/// </remarks>
internal sealed class ValveSeason
{
    public const int WeekDays = 7;
    private const int DaysAhead = 10;

    // Big enough to be quick, small enough to tell a little from a lot; as many as a week can hold. Ours.
    private const double PieceMm = 4;
    private const int MostPieces = 12;

    private readonly IReadOnlyList<BlockSeason> blocks;
    private readonly int version;
    private readonly double pricePerMm;
    private readonly double pieceHours;
    private readonly SeasonOutlook[] states;

    public ValveSeason(IReadOnlyList<BlockSeason> blocks, int version, double pricePerMm)
    {
        this.blocks = blocks;
        this.version = version;
        this.pricePerMm = pricePerMm;
        pieceHours = PieceMm / blocks.Average(b => b.RateMmPerH);
        states = [.. blocks.Select(b => b.Start.Branch())];
    }

    /// <summary>All blocks together. [m³/h]</summary>
    public double FlowM3PerH => blocks.Sum(b => b.FlowM3PerH);

    /// <summary>Hours that the week beginning on a day ahead wants.</summary>
    public double WantedHours(int first)
    {
        var (leastCost, cost) = (PieceCost(0), PieceCost(pricePerMm));
        var (trouble, isWanted) = TroubleAhead(first, 0);
        var (best, most, worth) = (0, 0.0, 0.0);

        // No piece can spare more than all the trouble there is.
        for (var pieces = 1; isWanted && pieces <= MostPieces && trouble >= leastCost && worth + trouble - cost >= most; pieces++)
        {
            var (less, _) = TroubleAhead(first, pieces * pieceHours);
            if (trouble - less < leastCost)
            {
                break;
            }

            worth += trouble - less - cost;
            (best, most) = worth >= most ? (pieces, worth) : (best, most);
            trouble = less;
        }

        return best * pieceHours;
    }

    /// <summary>Lives through the week with so many hours; gives the trouble it meets, by hectares and priority.</summary>
    public double Live(int first, double hours)
    {
        var trouble = 0.0;
        for (var b = 0; b < states.Length; b++)
        {
            for (var day = first; day < Math.Min(first + WeekDays, blocks[b].Days); day++)
            {
                trouble += WaterPrice.Weight(blocks[b].Block) * Trouble(states[b], blocks[b], day, 1, isShort: true).Trouble;
                Step(states[b], blocks[b], day, Applied(blocks[b], day - first, hours));
            }
        }

        return trouble;
    }

    private double PieceCost(double perMm) => pieceHours * WaterPrice.PerHour(blocks.Select(b => (b.Block, b.RateMmPerH)), perMm);

    // Trouble of the days ahead, by hectares and priority, and whether any day passes its ceiling more likely than accepted.
    private (double Trouble, bool IsWanted) TroubleAhead(int first, double hours)
    {
        var (all, isWanted) = (0.0, false);
        for (var b = 0; b < states.Length; b++)
        {
            var block = blocks[b];
            var state = states[b].Branch();
            var own = 0.0;
            for (var ahead = 0; ahead <= DaysAhead && first + ahead < block.Days; ahead++)
            {
                var day = first + ahead;
                if (ahead > 0)
                {
                    var (trouble, past) = Trouble(state, block, day, ahead, pricePerMm > 0);
                    own += trouble;
                    isWanted |= past;
                }

                Step(state, block, day, Applied(block, ahead, hours));
            }

            all += WaterPrice.Weight(block.Block) * own;
        }

        return (all, isWanted);
    }

    private (double Trouble, bool IsPast) Trouble(SeasonOutlook state, BlockSeason block, int day, int ahead, bool isShort)
    {
        if (!block.Limits.HasLeaves[day])
        {
            return (0, false);
        }

        var (ceiling, inHeat) = (block.Limits.CeilingMpa[day], block.Weather.IsHot[version][day]);
        var tensions = state.TensionsMpa(block.Weather.VpdKpa[version][day], block.Weather.LightShare[version][day]);
        var trouble = BlockCourse.TroubleAbove(tensions, ceiling, ahead, inHeat)
            + (block.Limits.FloorCounts[day] ? BlockCourse.TroubleUnder(tensions, block.Limits.FloorMpa[day]) : 0);
        return (isShort ? WaterPrice.WeightWhenShort(block.Limits.IsPicked[day]) * trouble : trouble, BlockCourse.IsTrouble(tensions, ceiling, ahead, inHeat));
    }

    // A week's water falls on two evenings, so that the wetted soil holds it.
    private static double Applied(BlockSeason block, int dayOfWeek, double hours) => dayOfWeek is 0 or 3 ? hours / 2 * block.RateMmPerH : 0;

    private void Step(SeasonOutlook state, BlockSeason block, int day, double appliedMm) =>
        state.Step(block.Weather.Et0Mm[version][day], block.Weather.RainMm[version][day], appliedMm, block.ShadedFraction[day]);
}
