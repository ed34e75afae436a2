using EstateWater.Agronomy.Outlook;
using EstateWater.Agronomy.WaterStatus;
using MathNet.Numerics.LinearAlgebra;

namespace EstateWater.Tests.Agronomy.Outlook;

public sealed class EstateMeanTests
{
    // Groups of unequal size, one way: the mean weighs each group's by 1 / (σ²between + σ²within / n) (Searle, Casella and
    // McCulloch 1992, Variance Components, from memory). By hand: σ²between 1, σ²within 2; group means 5 of one and 8 of
    // four readings weigh 1/3 and 2/3, so 7; a prior about 0 with standard deviation 1 adds the weight 1: 7 · 1 / 2 = 3.5.
    [Theory]
    [InlineData(1e6, 7.0)]
    [InlineData(1.0, 3.5)]
    public void Weighs_unequal_groups_as_the_textbook_does(double spread, double mean)
    {
        var zero = Vector<double>.Build.Dense(1);

        var learned = EstateMean.Solve([Group([5]), Group([7, 9, 8.5, 7.5])], zero, zero, spread);

        Assert.Equal(mean, learned[0], 1e-6);
    }

    // Of a straight line Gauss and Newton's step leads to the same mean from wherever it starts.
    [Fact]
    public void Leads_to_the_same_mean_from_elsewhere()
    {
        var here = Vector<double>.Build.Dense(1, 2.0);
        var usual = Vector<double>.Build.Dense(1, 0.5);

        var learned = EstateMean.Solve([Group([5 - 2]), Group([7 - 2, 9 - 2, 8.5 - 2, 7.5 - 2])], here, usual, spread: 1.0);

        Assert.Equal(0.5 + ((7 - 0.5) / 2), learned[0], 1e-9);
    }

    // Four blocks whose sets all stand 0.2 MPa higher: together they move the estate further than one alone.
    [Fact]
    public void Blocks_that_agree_tell_more_than_each_of_them()
    {
        var day = new DateOnly(2024, 10, 1);
        double[] Dry(double value) => [.. Enumerable.Repeat(value, 120)];
        var season = new SeasonForcing { FirstDay = day, Et0Mm = Dry(5), VpdKpa = Dry(2), LightShare = Dry(1), RainMm = Dry(0), AppliedMm = Dry(0), ShadedFraction = Dry(0.3) };
        BlockEvidence Block(int i, double aboveMpa) => new()
        {
            Code = FormattableString.Invariant($"B{i}"),
            Declared = new BlockDeclaration(150, 0.14, 0.4, 1),
            Season = season,
            Tensions = [.. Enumerable.Range(0, 3).Select(week => 20 + (7 * week)).Select(d => new TensionEvidence(day.AddDays(d), WaterPotentialMeasure.Leaf, 0.65 + aboveMpa, 0.03))],
        };
        var options = new ParallelOptions();
        double Offset(double aboveMpa, int blocks)
        {
            var fitted = Enumerable.Range(1, blocks).Select(i => BlockFit.Fit(Block(i, aboveMpa), EstateKnowledge.Unread)).ToList();
            return EstateMean.Learn(fitted, EstatePrior.Unread, EstatePrior.Unread.Mean, Discrepancy.Unread, options)[Unknowns.Offset];
        }

        double Moved(int blocks) => Offset(0.2, blocks) - Offset(0, blocks);
        Assert.InRange(Moved(1), 0.05, 10);
        Assert.InRange(Moved(4), 1.2 * Moved(1), 10);
    }

    // Written in closed form for one unknown: n blocks about a mean that has a prior of its own (Gelman et al., Bayesian Data
    // Analysis, Eq. 2.12: precisions add). Blocks that differ less say more of what they have in common.
    [Theory]
    [InlineData(1.0)]
    [InlineData(0.4)]
    public void Blocks_that_differ_less_move_it_further(double apart)
    {
        const double error = 0.5;
        const double spread = 0.7;
        double[] read = [0.9, 1.3, 0.8];
        var own = (apart * apart) + (error * error);
        var parts = read.Select(r => new EstateMean.Part(
            Matrix<double>.Build.Dense(1, 1, 1), Vector<double>.Build.Dense(1, r), Matrix<double>.Build.Dense(1, 1, own))).ToList();
        var zero = Vector<double>.Build.Dense(1);

        var expected = read.Sum() / own / ((read.Length / own) + (1 / (spread * spread)));
        Assert.Equal(expected, EstateMean.Solve(parts, zero, zero, spread)[0], 9);
    }

    [Fact]
    public void Stays_where_it_was_without_blocks() =>
        Assert.Equal(EstatePrior.Unread.Mean, EstateMean.Learn([], EstatePrior.Unread, EstatePrior.Unread.Mean, Discrepancy.Unread, new ParallelOptions()));

    private static EstateMean.Part Group(double[] read) => new(
        Matrix<double>.Build.Dense(1, read.Length, 1),
        Vector<double>.Build.DenseOfArray(read),
        Matrix<double>.Build.Dense(read.Length, read.Length, (i, j) => i == j ? 3 : 1));
}
