using EstateWater.Agronomy.Outlook;

namespace EstateWater.Tests.Agronomy.Outlook;

public sealed class EstatePriorTests
{
    private const int Blocks = 400;
    private const int Members = 256;
    private const double TrueMean = 0.8;
    private const double TrueSpread = 0.4;
    private const double ReadingVariance = 0.25;

    // Blocks drawn from a known normal distribution, each read once with a known error: with Bayes' own posterior of
    // every block (Gelman et al., Bayesian Data Analysis, Eq. 2.10) the learned prior settles at the distribution that
    // they were drawn from. Tolerance: four standard errors of 400 blocks.
    [Fact]
    public void Settles_at_the_distribution_that_blocks_were_drawn_from()
    {
        var numbers = new NormalNumbers("estate");
        var read = Enumerable.Range(0, Blocks).Select(_ => TrueMean + (TrueSpread * numbers.Next()) + (Math.Sqrt(ReadingVariance) * numbers.Next())).ToArray();
        var prior = EstatePrior.Unread;
        for (var pass = 0; pass < 40; pass++)
        {
            var last = prior;
            prior = prior.Learn([.. read.Select((y, i) => Posterior(last, y, i))]);
        }

        Assert.Equal(TrueMean, prior.Mean[Unknowns.Offset], 4 * Math.Sqrt(((TrueSpread * TrueSpread) + ReadingVariance) / Blocks));
        Assert.Equal(TrueSpread, prior.Spread[Unknowns.Offset], 0.1);
    }

    [Fact]
    public void Learns_nothing_where_nothing_was_read()
    {
        var prior = EstatePrior.Unread.Learn([Block([.. Enumerable.Range(0, Unknowns.Count).Select(_ => new double[Members])], [])]);

        Assert.Equal(EstatePrior.Unread.Mean, prior.Mean);
        Assert.Equal(EstatePrior.Unread.Spread, prior.Spread);
    }

    private static FittedBlock Posterior(EstatePrior prior, double read, int block)
    {
        var before = prior.Spread[Unknowns.Offset] * prior.Spread[Unknowns.Offset];
        var gain = before / (before + ReadingVariance);
        var mean = prior.Mean[Unknowns.Offset] + (gain * (read - prior.Mean[Unknowns.Offset]));
        var numbers = new NormalNumbers(FormattableString.Invariant($"block {block}"));
        var unknowns = Enumerable.Range(0, Unknowns.Count).Select(p => Enumerable.Range(0, Members)
            .Select(_ => p == Unknowns.Offset ? mean + (Math.Sqrt((1 - gain) * before) * numbers.Next()) : prior.Mean[p] + (prior.Spread[p] * numbers.Next()))
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
        [.. observations.Select(_ => 1.0)],
        [.. observations.Select(_ => unknowns[Unknowns.Offset])]);
}
