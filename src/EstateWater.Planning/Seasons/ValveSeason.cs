using EstateWater.Agronomy.Outlook;
using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Seasons;

/// <summary>What a valve would put on through the rest of the season, were water to cost so much.</summary>
/// <remarks>
/// Every version of the weather is lived through week by week. Each week takes water as a plan would: another piece as
/// long as it spares more trouble in the days ahead than it costs. So the use foretold is that of the rule which will spend
/// the water.
/// </remarks>
internal sealed class ValveSeason(IReadOnlyList<BlockSeason> blocks, int decidedDays)
{
    private const int WeekDays = 7;
    private const int DaysAhead = 10;

    // Big enough to be quick, small enough to tell a little from a lot; as many as a week can hold. Ours.
    private const double PieceMm = 4;
    private const int MostPieces = 12;

    private readonly double pieceHours = PieceMm / blocks.Average(b => b.RateMmPerH);
    private readonly int days = blocks.Max(b => b.Days);

    public IReadOnlyList<BlockSeason> Blocks => blocks;

    /// <summary>Expected use when a millimetre over a hectare must spare so much trouble, priorities counted.</summary>
    public SeasonUse At(double pricePerMm)
    {
        var use = default(SeasonUse);
        for (var version = 0; version < SeasonWeather.Versions; version++)
        {
            use += Live(version, pricePerMm);
        }

        return 1.0 / SeasonWeather.Versions * use;
    }

    private SeasonUse Live(int version, double pricePerMm)
    {
        var states = blocks.Select(b => b.Start.Branch()).ToArray();
        var cost = WaterPrice.PerHour(blocks.Select(b => (b.Block, b.RateMmPerH)), pricePerMm) * pieceHours;
        var use = default(SeasonUse);
        for (var first = 0; first < days; first += WeekDays)
        {
            var pieces = Decide(states, version, first, cost);
            for (var b = 0; b < states.Length; b++)
            {
                for (var day = first; day < Math.Min(first + WeekDays, blocks[b].Days); day++)
                {
                    Step(states[b], blocks[b], version, day, Applied(blocks[b], day - first, pieces));
                }
            }

            use += Use(first, pieces);
        }

        return use;
    }

    private SeasonUse Use(int first, int pieces)
    {
        var total = pieces * pieceHours * blocks.Sum(b => b.FlowM3PerH);
        var ripening = pieces * pieceHours * blocks.Where(b => first >= decidedDays && first < b.Days && b.Ripening[first]).Sum(b => b.FlowM3PerH);
        return new SeasonUse(total, ripening);
    }

    private int Decide(SeasonOutlook[] states, int version, int first, double cost)
    {
        var (trouble, wanted) = Trouble(states, version, first, 0);
        var pieces = 0;

        // No piece can spare more than all there is.
        while (wanted && pieces < MostPieces && trouble >= cost)
        {
            var (less, _) = Trouble(states, version, first, pieces + 1);
            if (trouble - less < cost)
            {
                break;
            }

            trouble = less;
            pieces++;
        }

        return pieces;
    }

    // Trouble of the days ahead, by hectares and priority, and whether any day passes its ceiling more likely than accepted.
    private (double Trouble, bool Wanted) Trouble(SeasonOutlook[] states, int version, int first, int pieces)
    {
        var (all, wanted) = (0.0, false);
        for (var b = 0; b < states.Length; b++)
        {
            var block = blocks[b];
            var state = states[b].Branch();
            var own = 0.0;
            for (var ahead = 0; ahead <= DaysAhead && first + ahead < block.Days; ahead++)
            {
                var day = first + ahead;
                if (ahead > 0 && block.Limits.HasLeaves[day])
                {
                    var tensions = state.TensionsMpa(block.Weather.VpdKpa[version][day]);
                    own += BlockCourse.TroubleAbove(tensions, block.Limits.CeilingMpa[day], ahead);
                    own += block.Limits.FloorCounts[day] ? BlockCourse.TroubleUnder(tensions, block.Limits.FloorMpa[day]) : 0;
                    wanted |= BlockCourse.IsTrouble(tensions, block.Limits.CeilingMpa[day], ahead);
                }

                Step(state, block, version, day, Applied(block, ahead, pieces));
            }

            all += WaterPrice.Weight(block.Block) * own;
        }

        return (all, wanted);
    }

    // The week's pieces fall on two evenings, so that the wetted soil holds them.
    private double Applied(BlockSeason block, int dayOfWeek, int pieces) => dayOfWeek switch
    {
        0 => (pieces + 1) / 2 * pieceHours * block.RateMmPerH,
        3 => pieces / 2 * pieceHours * block.RateMmPerH,
        _ => 0,
    };

    private static void Step(SeasonOutlook state, BlockSeason block, int version, int day, double appliedMm) =>
        state.Step(block.Weather.Et0Mm[version][day], block.Weather.RainMm[version][day], appliedMm, block.ShadedFraction[day]);
}
