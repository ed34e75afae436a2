namespace EstateWater.Agronomy.Outlook;

/// <summary>What a block is likely to be before its own readings count, as the estate's other blocks tell.</summary>
/// <param name="Mean">Of each unknown, in standard units.</param>
/// <param name="Spread">Of each unknown, in standard units.</param>
public sealed record EstatePrior(IReadOnlyList<double> Mean, IReadOnlyList<double> Spread)
{
    /// <summary>Before any block is known.</summary>
    public static EstatePrior Unread { get; } = new(new double[Unknowns.Count], [.. Enumerable.Repeat(1.0, Unknowns.Count)]);

    /// <summary>Learns the prior from blocks that were fitted with <see cref="Unread"/>.</summary>
    /// <remarks>
    /// Empirical Bayes (Efron and Morris 1973): the mean over blocks, and the spread between blocks plus what is left
    /// unknown within them. Three imaginary blocks from the unread prior keep a small estate from certainty.
    /// </remarks>
    public static EstatePrior From(IReadOnlyList<FittedBlock> blocks)
    {
        var read = blocks.Where(b => b.WasRead).ToList();
        if (read.Count == 0)
        {
            return Unread;
        }

        const double imaginary = 3;
        var mean = new double[Unknowns.Count];
        var spread = new double[Unknowns.Count];
        for (var p = 0; p < Unknowns.Count; p++)
        {
            var means = read.Select(b => b.Unknowns[p].Average()).ToArray();
            var average = means.Average();
            var between = means.Sum(m => (m - average) * (m - average)) / means.Length;
            var within = read.Average(b => Variance(b.Unknowns[p]));
            mean[p] = read.Count * average / (read.Count + imaginary);
            spread[p] = Math.Sqrt(Math.Min(1, ((read.Count * (between + within)) + imaginary) / (read.Count + imaginary)));
        }

        return new EstatePrior(mean, spread);
    }

    private static double Variance(double[] values)
    {
        var average = values.Average();
        return values.Sum(v => (v - average) * (v - average)) / (values.Length - 1);
    }
}
