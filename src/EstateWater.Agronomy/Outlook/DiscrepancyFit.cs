namespace EstateWater.Agronomy.Outlook;

/// <summary>Learns from an estate's own sets how far the model leaves them, and for how long.</summary>
/// <remarks>
/// Type-II maximum likelihood (Rasmussen and Williams 2006, section 5.4.1) over a grid, one number at a time, with a
/// lognormal prior about <see cref="Discrepancy.Unread"/> so that an estate with few sets stays near it. Searched are the
/// whole spread, the share of it that stays and its days to fade: these three hardly pull at one another.
/// </remarks>
internal static class DiscrepancyFit
{
    private const int Sweeps = 3;
    private const int MostBlocks = 60;

    // Spread of the logarithms before any set is read. Ours.
    private const double PriorSpread = 0.8;

    // What fades within days cannot be told from what is new with every weekly set.
    private static readonly double[] DaysToFade = [7, 10, 14, 20, 28, 40, 56, 80];
    private static readonly double[] SpreadMpa = [0.005, 0.007, 0.01, 0.014, 0.02, 0.028, 0.035, 0.045, 0.056, 0.07, 0.085, 0.1, 0.12, 0.15, 0.2];
    private static readonly double[] ShareThatStays = [0.02, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 0.98];

    public static Discrepancy Fit(IReadOnlyList<Innovation> blocks, ParallelOptions options)
    {
        var read = blocks.Where(b => b.Observations.Count > 1).ToList();
        if (read.Count == 0)
        {
            return Discrepancy.Unread;
        }

        var every = ((read.Count - 1) / MostBlocks) + 1;
        var chosen = read.Where((_, i) => i % every == 0).ToList();
        var best = Discrepancy.Unread;
        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            var (spread, share) = (Spread(best), Share(best));
            best = Best(chosen, [.. SpreadMpa.Select(s => Of(s, share, best.DaysToFade))], options);
            spread = Spread(best);
            best = Best(chosen, [.. ShareThatStays.Select(s => Of(spread, s, best.DaysToFade))], options);
            best = Best(chosen, [.. DaysToFade.Select(d => best with { DaysToFade = d })], options);
        }

        return best;
    }

    private static Discrepancy Best(List<Innovation> blocks, IReadOnlyList<Discrepancy> trials, ParallelOptions options)
    {
        var worth = new double[trials.Count];
        Parallel.For(0, trials.Count, options, t => worth[t] = blocks.Sum(b => b.LogLikelihood(trials[t])) + Prior(trials[t]));
        return trials[Array.IndexOf(worth, worth.Max())];
    }

    private static double Prior(Discrepancy d) =>
        -0.5 * (Squared(Spread(d) / Spread(Discrepancy.Unread)) + Squared(d.DaysToFade / Discrepancy.Unread.DaysToFade));

    private static double Squared(double factor) => Math.Pow(Math.Log(factor) / PriorSpread, 2);

    private static Discrepancy Of(double spreadMpa, double share, double daysToFade) =>
        new(spreadMpa * Math.Sqrt(share), daysToFade, spreadMpa * Math.Sqrt(1 - share));

    private static double Spread(Discrepancy d) => Math.Sqrt((d.SlowMpa * d.SlowMpa) + (d.SetMpa * d.SetMpa));

    private static double Share(Discrepancy d) => d.SlowMpa * d.SlowMpa / (Spread(d) * Spread(d));
}
