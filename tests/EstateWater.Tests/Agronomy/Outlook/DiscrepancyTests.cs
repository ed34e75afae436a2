using EstateWater.Agronomy.Outlook;
using EstateWater.Agronomy.WaterStatus;
using MathNet.Numerics.LinearAlgebra;

namespace EstateWater.Tests.Agronomy.Outlook;

public sealed class DiscrepancyTests
{
    private const int Members = 256;
    private static readonly Discrepancy Known = new(0.08, 10, 0.03);

    // σ² e^(−|t − t′| ∕ τ) between sets (Rasmussen and Williams 2006, Eq. 4.18, the exponential covariance); a set's own
    // variance is its standard error's and that of sets.
    [Fact]
    public void Sets_share_what_stays_and_keep_what_is_their_own()
    {
        var covariance = Known.Covariance([Leaf(10, 1.0), Leaf(17, 1.0) with { Doubt = 4 }]);

        Assert.Equal(0.0064 * Math.Exp(-0.7), covariance[0, 1], 1e-12);
        Assert.Equal(0.0064 + 0.0009 + 0.0004, covariance[0, 0], 1e-12);
        Assert.Equal(0.0064 + (4 * (0.0009 + 0.0004)), covariance[1, 1], 1e-12);
    }

    [Fact]
    public void Soil_and_another_season_share_nothing_with_a_set()
    {
        var covariance = Known.Covariance(
            [Leaf(10, 1.0), new Observation(ObservationKind.Soil, 10, false, 0.2, 0), new Observation(ObservationKind.Leaf, 10, true, 1.0, 0.02)]);

        Assert.Equal(0, covariance[0, 1]);
        Assert.Equal(0, covariance[0, 2]);
        Assert.True(covariance[2, 2] > covariance[0, 0]);
    }

    // One observation y of a Gaussian process with noise: mean k∕(σ² + s²) · y and variance σ² − k²∕(σ² + s²)
    // (Rasmussen and Williams 2006, Eq. 2.25–2.26). Tolerance: three standard errors of 256 members.
    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(30)]
    public void Carries_a_surprise_ahead_as_a_Gaussian_process_does(int daysLater)
    {
        const double surprise = 0.1;
        var ahead = DiscrepancyAhead.Of(Fitted([Leaf(20, 1.0 + surprise)], predictedMpa: 1.0), WaterPotentialMeasure.Leaf, 20 + daysLater, 1)[0];

        var shared = 0.0064 * Math.Exp(-daysLater / 10.0);
        var ofSet = 0.0064 + 0.0009 + 0.0004;
        var variance = 0.0064 - (shared * shared / ofSet) + (0.03 * 0.03); // the last: vines that are not read
        Assert.Equal(shared / ofSet * surprise, ahead.Average(), 3 * Math.Sqrt(variance / Members));
        var mean = ahead.Average();
        Assert.Equal(variance, ahead.Average(a => (a - mean) * (a - mean)), 3 * variance * Math.Sqrt(2.0 / Members));
    }

    // Data drawn from a known process: the spread of sets and what two sets a week apart share are found again.
    // Tolerance: 20 % of the whole, the step of the grid.
    [Theory]
    [InlineData(0.08, 14, 0.02)]
    [InlineData(0.02, 14, 0.06)]
    public void Finds_again_the_process_that_the_sets_were_drawn_from(double slow, double days, double set)
    {
        var truth = new Discrepancy(slow, days, set);
        var found = DiscrepancyFit.Fit(Drawn("process", truth, Nothing, Nothing, Nothing), new ParallelOptions()).Discrepancy;

        Assert.Equal(Spread(truth, 0), Spread(found, 0), 0.2 * Spread(truth, 0));
        Assert.Equal(Spread(truth, 7), Spread(found, 7), 0.2 * Spread(truth, 0));

        double Spread(Discrepancy d, int daysApart) => Math.Sqrt(d.Covariance([Leaf(0, 1.0), Leaf(daysApart, 1.0)])[0, daysApart == 0 ? 0 : 1]);
    }

    [Fact]
    public void An_estate_without_sets_keeps_what_stands_before_reading() =>
        Assert.Equal((Discrepancy.Unread, 1.0, 1.0), DiscrepancyFit.Fit([], new ParallelOptions()));

    // Surprises drawn from a known process beside a known discrepancy. Water use that wanders shows in sets as a sum of
    // small steps (covariance of a random walk, min(t, t′)); tolerance: a step of the grid on either side.
    [Theory]
    [InlineData(0.25, 0.15, 0.5)]
    [InlineData(1, 0.7, 1.4)]
    public void Finds_again_how_far_water_use_wandered(double wandered, double least, double most)
    {
        var wandering = Matrix<double>.Build.Dense(20, 20, (i, j) => 0.002 * Math.Min(i + 1, j + 1));
        var blocks = Drawn("wandering", Discrepancy.Unread, wandering * (wandered * wandered), Nothing, wandering);

        Assert.InRange(DiscrepancyFit.Fit(blocks, new ParallelOptions()).Wandering, least, most);
    }

    // Surprises drawn from a known process beside a known discrepancy. Blocks that differ lie apart by the same in every set,
    // and by more the longer the season lasts; tolerance: a step of the grid on either side.
    [Theory]
    [InlineData(0.5, 0.4, 0.6)]
    [InlineData(1.25, 1.1, 1.5)]
    public void Finds_again_how_far_blocks_lie_apart(double apart, double least, double most)
    {
        var still = Matrix<double>.Build.Dense(20, 20, (i, j) => 0.02 + (0.0001 * i * j));
        var blocks = Drawn("apart", Discrepancy.Unread, still * (apart * apart), still, Nothing);

        Assert.InRange(DiscrepancyFit.Fit(blocks, new ParallelOptions()).Apart, least, most);
    }

    // Sixty blocks read for twenty weeks, their surprises drawn from a discrepancy and what lies beside it.
    private static List<Innovation> Drawn(string name, Discrepancy discrepancy, Matrix<double> beside, Matrix<double> still, Matrix<double> wandering)
    {
        var numbers = new NormalNumbers(name);
        var observations = Enumerable.Range(0, 20).Select(w => Leaf(7 * w, 1.0)).ToList();
        var root = (beside + discrepancy.Covariance(observations)).Cholesky().Factor;
        return [.. Enumerable.Range(0, 60).Select(_ => new Innovation(observations, root * Vector<double>.Build.Dense(20, _ => numbers.Next()), still, wandering))];
    }

    private static Matrix<double> Nothing => Matrix<double>.Build.Dense(20, 20);

    private static Observation Leaf(int day, double mpa) => new(ObservationKind.Leaf, day, false, mpa, 0.02);

    private static FittedBlock Fitted(IReadOnlyList<Observation> observations, double predictedMpa)
    {
        var unknowns = Enumerable.Range(0, Unknowns.Count).Select(_ => new double[Members]).ToArray();
        double[][] predicted = [.. observations.Select(_ => Enumerable.Repeat(predictedMpa, Members).ToArray())];
        var evidence = new BlockEvidence
        {
            Code = "B1",
            VinesMpa = 0.03,
            Declared = new BlockDeclaration(120, 0.12, 0.4, 1),
            Season = new SeasonForcing { FirstDay = new DateOnly(2024, 10, 1), Et0Mm = [], VpdKpa = [], LightShare = [], RainMm = [], AppliedMm = [], ShadedFraction = [] },
        };
        return new FittedBlock(evidence, Known, unknowns, observations, predicted);
    }
}
