using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Packing;

/// <summary>Packs the needs of a source's valves into its nights.</summary>
/// <remarks>
/// <para>
/// CP-SAT gives quarter hours to nights under the source's flow times hours, its allocation, the length of a night
/// and what can be open together (<see cref="NightShares"/>): nothing laid on a clock can be worth more, so its bound
/// holds for the whole. Each night is laid on the clock (<see cref="NightClock"/>), which leaves out what does not fit
/// beside the others; what room is left goes to those who lost most (<see cref="GapFilling"/>). While the bound shows more
/// to be won, the nights are divided again with what could not be open together, and then change sets (<see cref="NightExchange"/>).
/// </para>
/// <para>One worker, a fixed seed and a limit in the solver's own work units: the same input gives the same plan.</para>
/// </remarks>
internal static class SourcePacking
{
    private const double Scale = 100_000;

    // Opening a valve once more is worth doing only for more water than this. [quarter hours]; ours.
    private const double OpeningQuarters = 1;

    private const double Enough = 0.0175;

    public static PackedSource Pack(SourceNights source)
    {
        if (source.Nights.Count == 0 || source.Needs.All(n => n.Quarters == 0))
        {
            return new PackedSource(source.Pinned, 0, 0);
        }

        var (laid, division) = BestLaid(source);
        var sets = NightExchange.Better(source, laid, division);
        var worth = Worth(source, sets);
        return new PackedSource(sets, worth, Math.Max(division.Bound - WorthByHand(source), worth));
    }

    /// <summary>What sets are worth beside hours by hand; never less than nothing.</summary>
    public static long Worth(SourceNights source, IReadOnlyList<PlacedSet> sets) => Math.Max(0, Objective(source, sets) - WorthByHand(source));

    /// <summary>Whether a packing is proven to be so near to the best that it is not searched on.</summary>
    public static bool IsNear(SourceNights source, long worth, long bound)
    {
        var byHand = WorthByHand(source);
        return worth - byHand >= (bound - byHand) * (1 - Enough);
    }

    /// <summary>What all hours by hand are worth. They outweigh all else, so that they are kept; counted, they would hide what the rest may lack.</summary>
    public static long WorthByHand(SourceNights source) => source.Needs.Where(n => n.ByHand).Sum(WorthOf);

    /// <summary>What all hours by hand spare in the nights that suit them best.</summary>
    public static double SparedByHand(SourceNights source) => Scale * source.Needs.Where(n => n.ByHand).Sum(n => n.SparedByHand);

    /// <summary>What all other hours wanted are worth.</summary>
    public static long WorthOfWanted(SourceNights source) => source.Needs.Where(n => !n.ByHand).Sum(WorthOf);

    /// <summary>What a quarter hour of the k-th piece is worth, as a whole number of at least 1.</summary>
    public static long PieceWorth(ValveNeed need, int piece) => 1 + (long)Math.Round(Scale * need.WorthByPiece[piece] / ValveNeed.PieceQuarters);

    /// <summary>What a quarter hour loses by standing in this night.</summary>
    public static long NightCost(ValveNeed need, int night) => (long)Math.Round(Scale * need.SparedPerQuarter * (1 - need.NightShare[night]));

    /// <summary>What opening a valve costs.</summary>
    public static long OpeningCost(ValveNeed need) => (long)Math.Round(OpeningQuarters * Scale * need.SparedPerQuarter);

    private static long WorthOf(ValveNeed need) => need.WorthByPiece.Select((_, k) => Quarters(need, k) * PieceWorth(need, k)).Sum();

    private static int Quarters(ValveNeed need, int piece) => Math.Min(ValveNeed.PieceQuarters, need.Quarters - (piece * ValveNeed.PieceQuarters));

    // The best of the divisions laid on the clock, up to the first that is near enough, and what it was laid from under the last bound.
    private static (IReadOnlyList<PlacedSet> Laid, NightShares Division) BestLaid(SourceNights source)
    {
        IReadOnlyList<PlacedSet> best = [];
        var (division, most) = (new NightShares([], long.MaxValue), long.MinValue);
        foreach (var shares in NightShares.Divide(source))
        {
            var laid = GapFilling.Fill(source, source.Pinned.Concat(Lay(source, shares)));
            var worth = Objective(source, laid);
            (best, division, most) = worth > most ? (laid, shares, worth) : (best, division with { Bound = shares.Bound }, most);
            if (IsNear(source, most, shares.Bound))
            {
                break;
            }
        }

        return (best, division);
    }

    private static IEnumerable<PlacedSet> Lay(SourceNights source, NightShares shares) =>
        Enumerable.Range(0, source.Nights.Count).SelectMany(n =>
        {
            var wanted = shares.Sets.Where(s => s.Night == n).Select(s => new WantedSet(s.Need, s.Quarters, Math.Max(1, (long)(Scale * s.Need.WorthPerQuarter)))).ToList();
            var pinned = source.Pinned.Where(p => p.Night == n).Select(p => new TimedSet(p.Need, p.StartQuarter, p.Quarters)).ToList();
            return NightClock.Lay(wanted, pinned, source.MostFlow, source.Nights[n].Quarters).Select(s => new PlacedSet(s.Need, n, s.StartQuarter, s.Quarters));
        });

    /// <summary>What the sets spare, less what their nights and openings cost.</summary>
    public static long Objective(SourceNights source, IReadOnlyList<PlacedSet> sets) => source.Needs.Sum(need =>
    {
        var mine = sets.Where(s => s.Need == need).ToList();
        var left = mine.Sum(s => s.Quarters);
        var worth = -mine.Sum(s => OpeningCost(need) + (s.Quarters * NightCost(need, s.Night)));

        // Sets that people were told of may be longer than their need is now: what is beyond it is worth nothing.
        for (var piece = 0; left > 0 && piece < need.WorthByPiece.Count; piece++, left -= ValveNeed.PieceQuarters)
        {
            worth += Math.Min(left, ValveNeed.PieceQuarters) * PieceWorth(need, piece);
        }

        return worth;
    });
}
