using EstateWater.Agronomy.Outlook;
using MathNet.Numerics.LinearAlgebra;

namespace EstateWater.Tests.Agronomy.Outlook;

public sealed class EnsembleSmootherTests
{
    // Emerick and Reynolds (2013), section 3: in the linear Gaussian case the smoother with multiple data assimilation
    // gives the posterior of Bayes. For y = x + e the textbook posterior has mean σx² y ∕ (σx² + σe²) and variance
    // σx² σe² ∕ (σx² + σe²) (Gelman et al., Bayesian Data Analysis, Eq. 2.10). Tolerance: sampling error of 4096 members.
    [Theory]
    [InlineData(2.0, 0.5)]
    [InlineData(-1.0, 1.0)]
    [InlineData(3.0, 0.2)]
    public void Gives_the_posterior_of_Bayes_where_all_is_linear_and_Gaussian(double observed, double errorDeviation)
    {
        const int members = 4096;
        const int steps = 4;
        var numbers = new NormalNumbers("linear");
        var x = new[] { Enumerable.Range(0, members).Select(_ => numbers.Next()).ToArray() };
        for (var step = 0; step < steps; step++)
        {
            EnsembleSmoother.Update(x, [[.. x[0]]], [observed], Matrix<double>.Build.Dense(1, 1, steps * errorDeviation * errorDeviation), numbers);
        }

        var variance = errorDeviation * errorDeviation / (1 + (errorDeviation * errorDeviation));
        var mean = x[0].Average();
        Assert.Equal(observed / (1 + (errorDeviation * errorDeviation)), mean, 0.05);
        Assert.Equal(variance, x[0].Average(v => (v - mean) * (v - mean)), 0.15 * variance);
    }

    [Fact]
    public void Normal_numbers_depend_on_their_name_alone()
    {
        Assert.Equal(Take("B1"), Take("B1"));
        Assert.NotEqual(Take("B1"), Take("B2"));

        // Standard normal: mean 0, variance 1, 5 % beyond ±1.96 (any table); tolerance three standard errors of 100 000.
        var many = Take("many", 100_000);
        Assert.Equal(0, many.Average(), 0.01);
        Assert.Equal(1, many.Average(v => v * v), 0.015);
        Assert.Equal(0.05, many.Count(v => Math.Abs(v) > 1.959964) / 100_000.0, 0.0021);
    }

    private static double[] Take(string name, int count = 8)
    {
        var numbers = new NormalNumbers(name);
        return [.. Enumerable.Range(0, count).Select(_ => numbers.Next())];
    }
}
