namespace EstateWater.Agronomy.Outlook;

/// <summary>Learns from an estate's own sets how far the model leaves them, and for how long.</summary>
/// <remarks>
/// Type-II maximum likelihood (Rasmussen and Williams 2006, section 5.4.1) over a grid, one parameter at a time, with a
/// lognormal prior about <see cref="Discrepancy.Unread"/> so that an estate with few sets stays near it.
/// </remarks>
internal static class DiscrepancyFit
{
    private const int Sweeps = 3;
    private const int MostBlocks = 60;

    // Spread of the logarithms of the three before any set is read. Ours.
    private const double PriorSpread = 0.8;

    // What fades within days cannot be told from what is new with every weekly set.
    private const double LeastDaysFactor = 0.5;

    private static readonly double[] Factors = [0.125, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2, 2.8, 4, 5.6];

    public static Discrepancy Fit(IReadOnlyList<Innovation> blocks)
    {
        var read = blocks.Where(b => b.Observations.Count > 1).ToList();
        var every = ((read.Count - 1) / MostBlocks) + 1;
        var chosen = read.Where((_, i) => i % every == 0).ToList();
        var best = Discrepancy.Unread;
        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            best = Best(chosen, Factors.Select(f => best with { SlowMpa = f * Discrepancy.Unread.SlowMpa }));
            best = Best(chosen, Factors.Select(f => best with { SetMpa = f * Discrepancy.Unread.SetMpa }));
            best = Best(chosen, Factors.Where(f => f >= LeastDaysFactor).Select(f => best with { DaysToFade = f * Discrepancy.Unread.DaysToFade }));
        }

        return best;
    }

    private static Discrepancy Best(List<Innovation> blocks, IEnumerable<Discrepancy> trials) =>
        trials.AsParallel().AsOrdered().Select(t => (Trial: t, Worth: blocks.Sum(b => b.LogLikelihood(t)) + Prior(t))).ToList().MaxBy(t => t.Worth).Trial;

    private static double Prior(Discrepancy d) =>
        -0.5 * (Squared(d.SlowMpa / Discrepancy.Unread.SlowMpa) + Squared(d.SetMpa / Discrepancy.Unread.SetMpa) + Squared(d.DaysToFade / Discrepancy.Unread.DaysToFade));

    private static double Squared(double factor) => Math.Pow(Math.Log(factor) / PriorSpread, 2);
}
