namespace EstateWater.Agronomy.Outlook;

/// <summary>What a block is likely to be before its own readings count, as the estate's other blocks tell.</summary>
/// <param name="Mean">Of each unknown, in standard units.</param>
/// <param name="Spread">Of each unknown, in standard units.</param>
public sealed record EstatePrior(IReadOnlyList<double> Mean, IReadOnlyList<double> Spread)
{
    private const double Imaginary = 3;

    // One pass does not believe that less than this share of an unknown was settled, nor shrink its variance further. Ours.
    private const double LeastSettled = 0.05;
    private const double LeastFactor = 0.3;

    /// <summary>Before any block is known.</summary>
    public static EstatePrior Unread { get; } = new(new double[Unknowns.Count], [.. Enumerable.Repeat(1.0, Unknowns.Count)]);

    /// <summary>Learns the prior from blocks that were fitted with this one.</summary>
    /// <remarks>
    /// Empirical Bayes. Where the blocks' readings settle a share γ of an unknown, the blocks' means scatter by γ times
    /// their true variance, so variance and mean are scaled by what was seen over γ (MacKay 1992, Neural Computation
    /// 4:415–447, the evidence update). Three imaginary blocks that agree with this prior keep a small estate from certainty.
    /// </remarks>
    public EstatePrior Learn(IReadOnlyList<FittedBlock> blocks)
    {
        var read = blocks.Where(b => b.WasRead).ToList();
        if (read.Count == 0)
        {
            return this;
        }

        var mean = new double[Unknowns.Count];
        var spread = new double[Unknowns.Count];
        Array.Fill(spread, 1, Unknowns.Shared, UseDrift.Knots); // A block's drift tells nothing of its neighbour's.
        for (var p = 0; p < Unknowns.Shared; p++)
        {
            var means = read.Select(b => b.Unknowns[p].Average()).ToArray();
            var average = means.Average();
            var prior = Spread[p] * Spread[p];
            var settled = Math.Clamp(1 - (read.Average(b => Variance(b.Unknowns[p])) / prior), LeastSettled, 1);
            var between = means.Sum(m => (m - average) * (m - average)) / means.Length;
            var factor = ((read.Count * between / (settled * prior)) + Imaginary) / (read.Count + Imaginary);
            spread[p] = Math.Min(1, Spread[p] * Math.Sqrt(Math.Max(LeastFactor, factor)));
            mean[p] = Math.Clamp(Mean[p] + (read.Count * (average - Mean[p]) / (read.Count + Imaginary)), -2, 2);
        }

        return new EstatePrior(mean, spread);
    }

    /// <summary>The same with water use that wanders by so much, in parts of the usual.</summary>
    public EstatePrior WithWandering(double wandering) =>
        this with { Spread = [.. Spread.Select((s, p) => p < Unknowns.Shared ? s : wandering)] };

    private static double Variance(double[] values)
    {
        var average = values.Average();
        return values.Sum(v => (v - average) * (v - average)) / (values.Length - 1);
    }
}
