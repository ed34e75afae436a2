using EstateWater.Agronomy.Outlook;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Statistics;

namespace EstateWater.Tests.Agronomy.Outlook;

public sealed class EstatePriorTests
{
    private const int Blocks = 400;
    private const int Members = 256;
    private const double TrueMean = 0.8;
    private const double TrueSpread = 0.4;
    private const double ReadingVariance = 0.25;

    // Blocks drawn from a known normal distribution, each read once with a known error: with Bayes' own posterior of
    // every block (Gelman et al., Bayesian Data Analysis, Eq. 2.10) expectation-maximisation settles at the distribution
    // that they were drawn from. Tolerance: four standard errors of 400 blocks.
    [Fact]
    public void Settles_at_the_distribution_that_blocks_were_drawn_from()
    {
        var numbers = new NormalNumbers("estate");
        var read = Enumerable.Range(0, Blocks).Select(_ => TrueMean + (TrueSpread * numbers.Next()) + (Math.Sqrt(ReadingVariance) * numbers.Next())).ToArray();
        var prior = EstatePrior.Unread with { Mean = Vector<double>.Build.Dense(Unknowns.Shared, p => p == Unknowns.Offset ? TrueMean : 0) };
        for (var pass = 0; pass < 40; pass++)
        {
            var last = prior;
            prior = prior.Learn([.. read.Select((y, i) => Posterior(last, y, i))]);
        }

        Assert.Equal(TrueSpread, Math.Sqrt(prior.Covariance[Unknowns.Offset, Unknowns.Offset]), 0.1);
    }

    // By hand: two blocks that are sure of themselves, apart by 2 in both unknowns: off their middle by ±1, so that they add
    // 2 to the variances and the covariance alike; three imaginary blocks add 3 to the variances. Over five: 1 and 0.4.
    [Fact]
    public void Unknowns_that_go_together_stay_together()
    {
        double[][] Sure(double value) => [.. Enumerable.Range(0, Unknowns.Count)
            .Select(p => Enumerable.Repeat(p is Unknowns.Climb or Unknowns.Bend ? value : 0, Members).ToArray())];
        Observation[] set = [new(ObservationKind.Leaf, 1, false, 0.8, 0.02)];

        var prior = EstatePrior.Unread.Learn([Block(Sure(0.5), set), Block(Sure(2.5), set)]);

        Assert.Equal(1, prior.Covariance[Unknowns.Climb, Unknowns.Climb], 1e-9);
        Assert.Equal(0.4, prior.Covariance[Unknowns.Climb, Unknowns.Bend], 1e-9);
        Assert.Equal(0.6, prior.Covariance[Unknowns.Offset, Unknowns.Offset], 1e-9);
        Assert.Equal(0, prior.Covariance[Unknowns.Climb, Unknowns.Offset], 1e-9);
    }

    // What is drawn has the prior's mean and covariance: four standard errors of 256 members.
    [Fact]
    public void Members_are_drawn_as_it_says()
    {
        var covariance = Matrix<double>.Build.DenseIdentity(Unknowns.Shared);
        covariance[Unknowns.Climb, Unknowns.Bend] = covariance[Unknowns.Bend, Unknowns.Climb] = -0.8;
        var prior = new EstatePrior(Vector<double>.Build.Dense(Unknowns.Shared, 0.5), covariance, Wandering: 0.3);

        var drawn = BlockFit.Draw(prior, new NormalNumbers("B1"));

        Assert.Equal(0.5, drawn[Unknowns.Bend].Average(), 0.25);
        Assert.Equal(1, drawn[Unknowns.Bend].StandardDeviation(), 0.18);
        Assert.Equal(-0.8, Correlation.Pearson(drawn[Unknowns.Climb], drawn[Unknowns.Bend]), 0.1);
        Assert.Equal(0.3, drawn[Unknowns.Shared].StandardDeviation(), 0.06);
        Assert.Equal(0, drawn[Unknowns.Shared].Average(), 0.08);
    }

    // Four standard errors of 256 members.
    [Fact]
    public void Blocks_that_differ_half_as_far_are_drawn_half_as_far_apart()
    {
        var drawn = BlockFit.Draw(EstatePrior.Unread.With(apart: 0.5, wandering: 0.3), new NormalNumbers("B1"));

        Assert.Equal(0.5, drawn[Unknowns.Climb].StandardDeviation(), 0.09);
        Assert.Equal(0.3, drawn[Unknowns.Shared].StandardDeviation(), 0.06);
    }

    [Fact]
    public void Learns_nothing_where_nothing_was_read() =>
        Assert.Same(EstatePrior.Unread, EstatePrior.Unread.Learn([Block([.. Enumerable.Range(0, Unknowns.Count).Select(_ => new double[Members])], [])]));

    private static FittedBlock Posterior(EstatePrior prior, double read, int block)
    {
        var before = prior.Covariance[Unknowns.Offset, Unknowns.Offset];
        var gain = before / (before + ReadingVariance);
        var mean = prior.Mean[Unknowns.Offset] + (gain * (read - prior.Mean[Unknowns.Offset]));
        var numbers = new NormalNumbers(FormattableString.Invariant($"block {block}"));
        var unknowns = Enumerable.Range(0, Unknowns.Count).Select(p => Enumerable.Range(0, Members)
            .Select(_ => p == Unknowns.Offset ? mean + (Math.Sqrt((1 - gain) * before) * numbers.Next()) : numbers.Next())
            .ToArray()).ToArray();
        return Block(unknowns, [new Observation(ObservationKind.Leaf, 1, false, read, 0.02)]);
    }

    private static FittedBlock Block(double[][] unknowns, IReadOnlyList<Observation> observations) => new(
        new BlockEvidence
        {
            Code = "B1",
            Declared = new BlockDeclaration(120, 0.12, 0.4, 1),
            Season = new SeasonForcing { FirstDay = new DateOnly(2024, 10, 1), Et0Mm = [], VpdKpa = [], LightShare = [], RainMm = [], AppliedMm = [], ShadedFraction = [] },
        },
        Discrepancy.Unread,
        unknowns,
        observations,
        [.. observations.Select(_ => unknowns[Unknowns.Offset])]);
}
