using EstateWater.Agronomy.Statistics;

namespace EstateWater.Tests.Statistics;

public sealed class SpreadAndSizeTests
{
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1: eight masses of a uranium isotope study.
    private static readonly double[] Masses = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];

    private static readonly double[] Leaves = [1.18, 1.24, 1.10, 1.32, 1.21, 1.27, 1.15, 1.19];

    // Printed by NIST: G 2.4687, upper one-tailed 5 % critical value 2.032.
    [Fact]
    public void Grubbs_finds_the_outlier_of_the_NIST_handbook()
    {
        var upper = Outliers.Grubbs(Masses, OutlierSide.Upper);
        Assert.Equal(7, upper.Index);
        Assert.Equal(2.4687, upper.Statistic, 0.0001); // NIST cuts 2.46876 off rather than rounding it
        Assert.Equal(2.032, upper.Critical, 0.0005);
        Assert.True(upper.IsOutlier);
        Assert.Equal(2.1266, Outliers.Grubbs(Masses).Critical, 0.00005);
        Assert.False(Outliers.Grubbs(Masses, OutlierSide.Lower).IsOutlier);
    }

    // Grubbs (1969), as tabulated: one-sided 5 %, then two-sided.
    [Theory]
    [InlineData(3, 1.1531, 1.1543)]
    [InlineData(6, 1.8221, 1.8871)]
    [InlineData(10, 2.1761, 2.2900)]
    [InlineData(20, 2.5566, 2.7082)]
    public void Grubbs_critical_values_are_the_tabulated_ones(int n, double oneSided, double bothSides)
    {
        Assert.Equal(oneSided, Outliers.GrubbsCritical(n, OutlierSide.Upper), 0.00005);
        Assert.Equal(bothSides, Outliers.GrubbsCritical(n), 0.00005);
    }

    // Iglewicz & Hoaglin's score by hand on the same masses: median 201.37, MAD 0.995.
    [Fact]
    public void Modified_z_flags_the_same_mass()
    {
        Assert.Equal(201.37, Descriptive.Median(Masses), 1e-9);
        Assert.Equal(0.995, Descriptive.MedianAbsoluteDeviation(Masses), 1e-9);
        double[] expected = [-1.3965, -1.2473, -0.7999, -0.3728, 0.3728, 0.3932, 0.5491, 29.9627];
        Assert.All(Outliers.ModifiedZ(Masses).Zip(expected), z => Assert.Equal(z.Second, z.First, 0.00005));
        Assert.Equal([7], Outliers.ByModifiedZ(Masses));
        Assert.Empty(Outliers.ByModifiedZ(Leaves));
        Assert.Equal(1.798667, Outliers.ModifiedZ(Leaves).Max(Math.Abs), 0.0000005);
    }

    [Fact]
    public void Modified_z_still_works_when_more_than_half_are_alike()
    {
        // Median 1.2, MAD 0; mean absolute deviation 0.1, so (2.0 − 1.2)∕0.12533 = 6.383.
        Assert.Equal(6.383, Outliers.ModifiedZ([1.2, 1.2, 1.2, 1.2, 1.2, 1.2, 1.2, 2.0])[7], 0.0005);
        Assert.All(Outliers.ModifiedZ([1.2, 1.2, 1.2]), z => Assert.Equal(0, z));
    }

    // Quantiles of Student's t as tabulated everywhere, 97.5 %.
    [Theory]
    [InlineData(1, 12.7062)]
    [InlineData(3, 3.1824)]
    [InlineData(7, 2.3646)]
    [InlineData(11, 2.2010)]
    [InlineData(29, 2.0452)]
    public void Student_t_is_the_tabulated_one(int freedom, double expected) => Assert.Equal(expected, Descriptive.StudentT(freedom), 0.00005);

    // Iterated by hand with tabulated t: for s 0.07 and E 0.05 ten give 0.05007 and eleven 0.0470.
    [Theory]
    [InlineData(0.07, 0.05, 11)]
    [InlineData(0.10, 0.05, 18)]
    [InlineData(0.10, 0.10, 7)]
    [InlineData(0.15, 0.10, 12)]
    [InlineData(0.12, 0.05, 25)]
    [InlineData(0.08, 0.10, 5)]
    public void Asks_for_as_many_leaves_as_the_half_width_takes(double deviation, double halfWidth, int expected) =>
        Assert.Equal(expected, SampleSize.ForHalfWidth(deviation, halfWidth));

    // Three groups of four vines; textbook formulas of one-way random effects, worked out beside the program.
    [Fact]
    public void Groups_of_vines_have_the_error_of_two_levels()
    {
        double[][] groups = [[-1.10, -1.16, -1.05, -1.13], [-1.28, -1.22, -1.31, -1.25], [-1.18, -1.12, -1.20, -1.16]];
        var anova = OneWayAnova.Of(groups);
        Assert.Equal(0.0247, anova.MeanSquareBetween, 1e-9);
        Assert.Equal(0.001622222, anova.MeanSquareWithin, 5e-10);
        Assert.Equal(15.226, anova.F, 0.0005);
        Assert.Equal(0.005769444, anova.BetweenVariance, 5e-10);
        Assert.Equal(0.78053, TwoLevel.IntraclassCorrelation(groups), 0.000005);
        Assert.Equal(0.0453689, TwoLevel.StandardErrorOfMean(groups), 5e-8);
        Assert.Equal(1.06, TwoLevel.BestVinesPerGroup(groups, 4), 0.005);
    }

    [Fact]
    public void Unequal_groups_weigh_by_their_vines()
    {
        // Means 1 and 3 of 1 and 3 values: grand mean 2.5, √(2·((1·1.5)² + (3·0.5)²))∕4 = 0.75.
        Assert.Equal(0.75, TwoLevel.StandardErrorOfMean([[1.0], [3.0, 3.0, 3.0]]), 1e-12);
    }

    [Fact]
    public void Refuses_too_little_and_what_is_no_number()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Descriptive.Mean([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Descriptive.StandardDeviation([1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Descriptive.Mean([1, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Descriptive.StudentT(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Outliers.Grubbs([1, 1, 1]));
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleSize.ForHalfWidth(0.1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => OneWayAnova.Of([[1.0], [2.0]]));
        Assert.Throws<ArgumentOutOfRangeException>(() => TwoLevel.StandardErrorOfMean([[1.0, 2.0]]));
    }
}
