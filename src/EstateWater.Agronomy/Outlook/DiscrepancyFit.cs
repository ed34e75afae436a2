using Trial = (EstateWater.Agronomy.Outlook.Discrepancy Discrepancy, double Wandering, double Apart);

namespace EstateWater.Agronomy.Outlook;

/// <summary>Learns from an estate's own sets how far the model leaves them, for how long, how far water use wanders, and how far blocks differ.</summary>
/// <remarks>
/// Type-II maximum likelihood (Rasmussen and Williams 2006, section 5.4.1) over a grid, one number at a time, with a
/// lognormal prior about <see cref="Discrepancy.Unread"/> so that an estate with few sets stays near it. Searched are the
/// whole spread, the share of it that stays, its days to fade, <see cref="UseDrift"/> and the spread between blocks: these
/// hardly pull at one another.
/// </remarks>
internal static class DiscrepancyFit
{
    private const int Sweeps = 3;

    // Spread of the logarithms before any set is read. Ours.
    private const double PriorSpread = 0.8;

    // A few dozen sets can take wandering for a block's own nature: only an estate of many blocks that agree is believed. Ours.
    private const double WanderingPriorSpread = 0.25;

    // Likewise what all blocks share on a day can pass for blocks that differ, or hide that they do. Ours.
    private const double ApartPriorSpread = 0.25;

    // What fades within days cannot be told from what is new with every weekly set.
    private static readonly double[] DaysToFade = [7, 10, 14, 20, 28, 40, 56, 80];
    private static readonly double[] SpreadMpa = [0.005, 0.007, 0.01, 0.014, 0.02, 0.028, 0.035, 0.045, 0.056, 0.07, 0.085, 0.1, 0.12, 0.15, 0.2];
    private static readonly double[] Wandering = [0.1, 0.15, 0.25, 0.35, 0.5, 0.7, 1, 1.4];
    private static readonly double[] Apart = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.5];
    private static readonly double[] ShareThatStays = [0.02, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 0.98];

    // From one trial, those that differ from it in one number.
    private static readonly Func<Trial, IEnumerable<Trial>>[] Along =
    [
        here => SpreadMpa.Select(spread => here with { Discrepancy = Of(spread, Share(here.Discrepancy), here.Discrepancy.DaysToFade) }),
        here => ShareThatStays.Select(share => here with { Discrepancy = Of(Spread(here.Discrepancy), share, here.Discrepancy.DaysToFade) }),
        here => DaysToFade.Select(days => here with { Discrepancy = here.Discrepancy with { DaysToFade = days } }),
        here => Wandering.Select(wandering => here with { Wandering = wandering }),
        here => Apart.Select(apart => here with { Apart = apart }),
    ];

    /// <summary>Before any set is read.</summary>
    public static Trial Unread { get; } = (Discrepancy.Unread, 1, 1);

    /// <summary>What makes the estate's surprises likeliest.</summary>
    /// <param name="blocks">In any one order.</param>
    /// <param name="options">How many trials at once, and until when.</param>
    /// <returns>The discrepancy, how far water use wanders in parts of the usual, and how far blocks differ in parts of what the prior says.</returns>
    public static Trial Fit(IReadOnlyList<Innovation> blocks, ParallelOptions options)
    {
        var best = Unread;
        if (blocks.Count == 0)
        {
            return best;
        }

        for (var sweep = 0; sweep < Sweeps; sweep++)
        {
            foreach (var trials in Along)
            {
                best = Best(blocks, [.. trials(best)], options);
            }
        }

        return best;
    }

    private static Trial Best(IReadOnlyList<Innovation> blocks, IReadOnlyList<Trial> trials, ParallelOptions options)
    {
        var worth = new double[trials.Count];
        Parallel.For(0, trials.Count, options, t => worth[t] = blocks.Sum(b => b.LogLikelihood(trials[t].Discrepancy, trials[t].Wandering, trials[t].Apart)) + Prior(trials[t]));
        return trials[Array.IndexOf(worth, worth.Max())];
    }

    private static double Prior(Trial trial) => -0.5 * (
        Squared(Spread(trial.Discrepancy) / Spread(Discrepancy.Unread), PriorSpread)
        + Squared(trial.Discrepancy.DaysToFade / Discrepancy.Unread.DaysToFade, PriorSpread)
        + Squared(trial.Wandering, WanderingPriorSpread)
        + Squared(trial.Apart, ApartPriorSpread));

    private static double Squared(double factor, double spread) => Math.Pow(Math.Log(factor) / spread, 2);

    private static Discrepancy Of(double spreadMpa, double share, double daysToFade) =>
        new(spreadMpa * Math.Sqrt(share), daysToFade, spreadMpa * Math.Sqrt(1 - share));

    private static double Spread(Discrepancy d) => Math.Sqrt((d.SlowMpa * d.SlowMpa) + (d.SetMpa * d.SetMpa));

    private static double Share(Discrepancy d) => d.SlowMpa * d.SlowMpa / (Spread(d) * Spread(d));
}
