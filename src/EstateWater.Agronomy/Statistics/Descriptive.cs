using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Statistics;

/// <summary>Plain statistics of a list of values; every result keeps the unit of the values unless stated.</summary>
[Method(
    "Mean, standard deviation, autocorrelation, median and Student's t",
    Source = "Chan, Golub & LeVeque (1983), Am. Stat. 37:242–247 (two passes); NIST StRD (lag-1 autocorrelation)",
    Check = "NIST StRD: Michelso, Mavro, Lew, Lottery, NumAcc1–4; tabulated t")]
public static class Descriptive
{
    /// <summary>Arithmetic mean. [unit of the values]</summary>
    /// <param name="values">At least one finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The list is empty or holds a value that is not finite.</exception>
    /// <remarks>Corrected by the mean of the residuals, so that a large common offset costs no digits.</remarks>
    public static double Mean(IReadOnlyList<double> values)
    {
        Require.Values(values, 1);
        var n = (double)values.Count;
        var first = values.Sum() / n;
        return first + (values.Sum(x => x - first) / n);
    }

    /// <summary>Standard deviation of a sample, divisor n − 1. [unit of the values]</summary>
    /// <param name="values">At least two finite values.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two values, or one that is not finite.</exception>
    /// <remarks>Corrected two-pass algorithm, Chan, Golub &amp; LeVeque (1983), Am. Stat. 37:242–247. The one-pass formula loses every digit when the mean is large.</remarks>
    public static double StandardDeviation(IReadOnlyList<double> values)
    {
        Require.Values(values, 2);
        var mean = Mean(values);
        double squares = 0, residuals = 0;
        foreach (var x in values)
        {
            squares += (x - mean) * (x - mean);
            residuals += x - mean;
        }

        var n = values.Count;
        return Math.Sqrt(Math.Max(0, squares - (residuals * residuals / n)) / (n - 1));
    }

    /// <summary>Standard error of the mean of independent values, s∕√n. [unit of the values]</summary>
    /// <param name="values">At least two finite values.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two values, or one that is not finite.</exception>
    public static double StandardError(IReadOnlyList<double> values) => StandardDeviation(values) / Math.Sqrt(values.Count);

    /// <summary>Middle value; the mean of the two middle ones for an even count. [unit of the values]</summary>
    /// <param name="values">At least one finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The list is empty or holds a value that is not finite.</exception>
    public static double Median(IReadOnlyList<double> values)
    {
        Require.Values(values, 1);
        double[] sorted = [.. values];
        Array.Sort(sorted);
        var middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /// <summary>Median of the absolute deviations from the median, not scaled. [unit of the values]</summary>
    /// <param name="values">At least one finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The list is empty or holds a value that is not finite.</exception>
    public static double MedianAbsoluteDeviation(IReadOnlyList<double> values)
    {
        var median = Median(values);
        return Median([.. values.Select(x => Math.Abs(x - median))]);
    }

    /// <summary>Lag-1 autocorrelation, −1 to 1. [–]</summary>
    /// <param name="values">At least two finite values, not all alike, in order of time.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two values, one that is not finite, or no variation.</exception>
    /// <remarks>NIST StRD definition: Σ(yᵢ − ȳ)(yᵢ₋₁ − ȳ) ∕ Σ(yᵢ − ȳ)².</remarks>
    public static double Lag1Autocorrelation(IReadOnlyList<double> values)
    {
        Require.Values(values, 2);
        var mean = Mean(values);
        double products = 0, squares = 0;
        for (var i = 0; i < values.Count; i++)
        {
            squares += (values[i] - mean) * (values[i] - mean);
            products += i == 0 ? 0 : (values[i] - mean) * (values[i - 1] - mean);
        }

        return products / Require.Above(squares, 0, "(sum of squares of the values)", nameof(values));
    }

    /// <summary>Quantile of Student's t that leaves (1 − confidence)∕2 above it. [–]</summary>
    /// <param name="degreesOfFreedom">At least 1.</param>
    /// <param name="confidence">Between 0 and 1, both excluded.</param>
    /// <exception cref="ArgumentOutOfRangeException">Either is outside its range.</exception>
    public static double StudentT(double degreesOfFreedom, double confidence = 0.95)
    {
        Require.AtLeast(degreesOfFreedom, 1, "degrees of freedom");
        Require.InRange(confidence, 1e-9, 1 - 1e-9, "(share)");
        return StudentTQuantile(1 - ((1 - confidence) / 2), degreesOfFreedom);
    }

    internal static double StudentTQuantile(double probability, double degreesOfFreedom) =>
        MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, degreesOfFreedom, probability);
}
