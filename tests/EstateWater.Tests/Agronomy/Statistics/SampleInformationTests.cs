using EstateWater.Agronomy.Statistics;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;

namespace EstateWater.Tests.Statistics;

public sealed class SampleInformationTests
{
    // Raiffa & Schlaifer (1961), two choices with linear costs and a normal quantity: σ* times the unit normal loss of the
    // distance between mean and break-even, σ* the standard deviation of the mean after the reading. The loss
    // ∫ (x − z) φ(x) dx from z on is integrated here, and no table is copied.
    [Theory]
    [InlineData(13, 13, 1, 0.5)]
    [InlineData(13, 14, 1, 0.5)]
    [InlineData(13, 14, 1, 2)]
    [InlineData(12, 14, 1.5, 0.3)]
    public void Two_choices_and_a_normal_quantity_give_the_normal_loss(double mean, double breakEven, double spread, double error)
    {
        const int versions = 2000;
        double[] quantity = [.. Enumerable.Range(0, versions).Select(i => Normal.InvCDF(mean, spread, (i + 0.5) / versions))];
        double[] dry = [.. quantity.Select(q => q - breakEven)];
        double[] watered = new double[versions];

        var after = spread * spread / Math.Sqrt((spread * spread) + (error * error));
        var z = Math.Abs(mean - breakEven) / after;
        var loss = GaussLegendreRule.Integrate(x => (x - z) * Normal.PDF(0, 1, x), z, z + 10, 128);

        Assert.Equal(after * loss, SampleInformation.Expected(quantity, [dry, watered], error), 0.01 * spread);
    }

    [Fact]
    public void A_quantity_that_straddles_the_limit_teaches_more_than_one_beside_it()
    {
        double Worth(double mean)
        {
            double[] quantity = [.. Enumerable.Range(0, 256).Select(i => Normal.InvCDF(mean, 0.8, (i + 0.5) / 256))];
            return SampleInformation.Expected(quantity, [[.. quantity.Select(q => q > 14 ? 1.0 : 0)], [.. quantity.Select(_ => 0.3)]], 0.4);
        }

        Assert.True(Worth(13.6) > 10 * Worth(11), $"{Worth(13.6)} against {Worth(11)}");
        Assert.True(Worth(13.6) > 10 * Worth(17), $"{Worth(13.6)} against {Worth(17)}");
    }

    [Fact]
    public void No_reading_spares_more_than_perfect_knowledge_and_a_blunt_one_spares_nothing()
    {
        double[] quantity = [1, 2, 3, 4];
        double[][] costs = [[4, 0, 2, 1], [1, 3, 0, 5]];
        // By hand: the best choice costs 7/4 now; knowing the version, (1 + 0 + 0 + 1)/4.
        Assert.Equal(5.0 / 4, SampleInformation.Expected(quantity, costs, 0.02), 6);
        Assert.Equal(0, SampleInformation.Expected(quantity, costs, 1000), 3);
    }

    [Fact]
    public void One_choice_has_nothing_to_learn() => Assert.Equal(0, SampleInformation.Expected([1, 5], [[3, 8]], 0.1), 12);

    [Fact]
    public void Bad_input_is_named()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleInformation.Expected([], [[1]], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleInformation.Expected([1], [], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleInformation.Expected([1, 2], [[1]], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SampleInformation.Expected([1], [[1]], 0));
    }
}
