using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Statistics;
using MathNet.Numerics.Distributions;

namespace EstateWater.Agronomy.Soil;

/// <summary>Whether repeated standard counts scatter as counts do; if not, the gauge wants service by those licensed to do it.</summary>
[Method(
    "Standard count test of a neutron probe",
    Source = "Index of dispersion of Poisson counts, variance = mean, Fisher (1925), Statistical Methods for Research Workers; the customary 0.75–1.25 for s/√m is the 95 % interval for 32 counts",
    Check = "95 % limits of the ratio for 10, 20 and 32 counts from tabulated chi-square")]
public sealed record StandardCountTest
{
    private StandardCountTest()
    {
    }

    /// <summary>Mean count, as shown.</summary>
    public required double Mean { get; init; }

    /// <summary>Standard deviation of the counts, as shown.</summary>
    public required double StandardDeviation { get; init; }

    /// <summary>s∕√m of the true counts; near 1 when the gauge is sound. [–]</summary>
    public required double Ratio { get; init; }

    /// <summary>(n − 1)·s²∕m of the true counts. [–]</summary>
    public required double ChiSquare { get; init; }

    /// <summary>Lowest ratio that passes. [–]</summary>
    public required double LowestRatio { get; init; }

    /// <summary>Highest ratio that passes. [–]</summary>
    public required double HighestRatio { get; init; }

    /// <summary>Whether the ratio lies within its limits.</summary>
    public bool Passes => Ratio >= LowestRatio && Ratio <= HighestRatio;

    /// <summary>Tests repeated counts in the standard.</summary>
    /// <param name="counts">At least three, above 0.</param>
    /// <param name="prescale">Counts for each one shown, at least 1: some gauges show the count divided by 16.</param>
    /// <param name="confidence">Between 0 and 1, both excluded.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few, or outside their range.</exception>
    public static StandardCountTest Of(IReadOnlyList<double> counts, double prescale = 1, double confidence = 0.95)
    {
        foreach (var count in Require.Values(counts, 3))
        {
            Require.Above(count, 0, "counts", nameof(counts));
        }

        Require.AtLeast(prescale, 1, "counts for each one shown");
        var mean = Descriptive.Mean(counts);
        var deviation = Descriptive.StandardDeviation(counts);
        var (lowest, highest) = RatioLimits(counts.Count, confidence);
        return new StandardCountTest
        {
            Mean = mean,
            StandardDeviation = deviation,
            Ratio = deviation / Math.Sqrt(mean / prescale),
            ChiSquare = (counts.Count - 1) * deviation * deviation / (mean / prescale),
            LowestRatio = lowest,
            HighestRatio = highest,
        };
    }

    /// <summary>Limits of the ratio s∕√m. [–]</summary>
    /// <param name="count">Number of counts, at least 2.</param>
    /// <param name="confidence">Between 0 and 1, both excluded.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static (double Lowest, double Highest) RatioLimits(int count, double confidence = 0.95)
    {
        var freedom = Require.AtLeast(count, 2, "counts") - 1;
        var tail = (1 - Require.InRange(confidence, 1e-9, 1 - 1e-9, "(share)")) / 2;
        return (Math.Sqrt(ChiSquared.InvCDF(freedom, tail) / freedom), Math.Sqrt(ChiSquared.InvCDF(freedom, 1 - tail) / freedom));
    }
}
