using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Packing;

/// <summary>Packs the needs of a source's valves into its nights.</summary>
/// <remarks>
/// <para>
/// First CP-SAT gives quarter hours to nights under the source's flow times hours, its allocation and the length of a
/// night (<see cref="NightShares"/>): nothing laid on a clock can be worth more, so its bound holds for the whole. Then
/// each night is laid on the clock (<see cref="NightClock"/>), which loses something only where flows do not fit beside
/// each other, and what room is left goes to those who lost most (<see cref="GapFilling"/>).
/// </para>
/// <para>One worker, a fixed seed and a limit in the solver's own work units: the same input gives the same plan.</para>
/// </remarks>
internal static class SourcePacking
{
    public const string Solver = "num_workers:1,random_seed:1,relative_gap_limit:0.005,max_deterministic_time:";

    private const double Scale = 100_000;

    // Opening a valve once more is worth doing only for more water than this. [quarter hours]; ours.
    private const double OpeningQuarters = 1;

    public static PackedSource Pack(SourceNights source)
    {
        if (source.Nights.Count == 0 || source.Needs.All(n => n.Quarters == 0))
        {
            return new PackedSource(source.Pinned, 0, 0);
        }

        var shares = NightShares.Divide(source);
        var sets = GapFilling.Fill(source, source.Pinned.Concat(Lay(source, shares)));
        var objective = Objective(source, sets);

        // Hours by hand outweigh all else, so that they are kept; counted, they would hide what the rest may lack.
        var byHand = source.Needs.Where(n => n.ByHand).Sum(n => n.WorthByPiece.Select((_, k) => Quarters(n, k) * PieceWorth(n, k)).Sum());
        return new PackedSource(sets, Math.Max(0, objective - byHand), Math.Max(0, Math.Max(shares.Bound, objective) - byHand));
    }

    /// <summary>What a quarter hour of the k-th piece is worth, as a whole number of at least 1.</summary>
    public static long PieceWorth(ValveNeed need, int piece) => 1 + (long)Math.Round(Scale * need.WorthByPiece[piece] / ValveNeed.PieceQuarters);

    /// <summary>What a quarter hour loses by standing in this night.</summary>
    public static long NightCost(ValveNeed need, int night) => (long)Math.Round(Scale * need.WorthPerQuarter * (1 - need.NightShare[night]));

    /// <summary>What opening a valve costs.</summary>
    public static long OpeningCost(ValveNeed need) => (long)Math.Round(OpeningQuarters * Scale * need.WorthPerQuarter);

    private static int Quarters(ValveNeed need, int piece) => Math.Min(ValveNeed.PieceQuarters, need.Quarters - (piece * ValveNeed.PieceQuarters));

    private static IEnumerable<PlacedSet> Lay(SourceNights source, NightShares shares) =>
        Enumerable.Range(0, source.Nights.Count).SelectMany(n =>
        {
            var wanted = source.Needs
                .Select((need, v) => new WantedSet(need, shares.Quarters[v][n], Math.Max(1, (long)(Scale * need.WorthPerQuarter))))
                .Where(w => w.Quarters > 0)
                .ToList();
            var pinned = source.Pinned.Where(p => p.Night == n).Select(p => new TimedSet(p.Need, p.StartQuarter, p.Quarters)).ToList();
            return NightClock.Lay(wanted, pinned, source.Source.MaxFlowM3PerH, source.Nights[n].Quarters)
                .Select(s => new PlacedSet(s.Need, n, s.StartQuarter, s.Quarters));
        });

    /// <summary>What sets are worth to the needs of a source.</summary>
    public static long Objective(SourceNights source, IReadOnlyList<PlacedSet> sets) => source.Needs.Sum(need =>
    {
        var mine = sets.Where(s => s.Need == need).ToList();
        var left = mine.Sum(s => s.Quarters);
        var worth = -mine.Sum(s => OpeningCost(need) + (s.Quarters * NightCost(need, s.Night)));
        for (var piece = 0; left > 0; piece++, left -= ValveNeed.PieceQuarters)
        {
            worth += Math.Min(left, ValveNeed.PieceQuarters) * PieceWorth(need, piece);
        }

        return worth;
    });
}
