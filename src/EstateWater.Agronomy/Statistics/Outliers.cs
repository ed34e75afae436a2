using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Statistics;

/// <summary>Tests that point at values which do not belong; a person decides what to do with them.</summary>
[Method(
    "Modified z score and Grubbs' test",
    Source = "Iglewicz & Hoaglin (1993); Grubbs (1969), Technometrics 11:1–21; NIST/SEMATECH e-Handbook 1.3.5.17",
    Check = "NIST/SEMATECH e-Handbook 1.3.5.17.1: G 2.4687, critical 2.032; tabulated critical values")]
public static class Outliers
{
    /// <summary>Iglewicz &amp; Hoaglin's limit of the modified z score. [–]</summary>
    public const double ModifiedZLimit = 3.5;

    /// <summary>Modified z score of each value. [–]</summary>
    /// <param name="values">At least one finite value.</param>
    /// <exception cref="ArgumentOutOfRangeException">The list is empty or holds a value that is not finite.</exception>
    /// <remarks>
    /// <para>M = 0.6745·(x − median) ∕ MAD. Iglewicz &amp; Hoaglin (1993), How to Detect and Handle Outliers; NIST/SEMATECH e-Handbook 1.3.5.17.</para>
    /// <para>When more than half the values are alike MAD is 0; then (x − median) ∕ (1.2533 · mean absolute deviation), and 0 when all are alike.</para>
    /// </remarks>
    public static IReadOnlyList<double> ModifiedZ(IReadOnlyList<double> values)
    {
        var median = Descriptive.Median(values);
        var mad = Descriptive.MedianAbsoluteDeviation(values);
        var meanDeviation = Descriptive.Mean([.. values.Select(x => Math.Abs(x - median))]);
        return [.. values.Select(x => Score(x - median))];

        double Score(double deviation) => (mad, meanDeviation) switch
        {
            ( > 0, _) => 0.6745 * deviation / mad,
            (_, > 0) => deviation / (1.2533 * meanDeviation),
            _ => 0,
        };
    }

    /// <summary>Places, from 0, of the values whose modified z score passes the limit.</summary>
    /// <param name="values">At least one finite value.</param>
    /// <param name="limit">Above 0. [–]</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public static IReadOnlyList<int> ByModifiedZ(IReadOnlyList<double> values, double limit = ModifiedZLimit)
    {
        Require.Above(limit, 0, "(score)");
        return [.. ModifiedZ(values).Select((z, i) => (z, i)).Where(p => Math.Abs(p.z) > limit).Select(p => p.i)];
    }

    /// <summary>Grubbs' test for a single outlier in values that are normal otherwise.</summary>
    /// <param name="values">At least three finite values, not all alike.</param>
    /// <param name="side">On which side an outlier is looked for.</param>
    /// <param name="significance">Between 0 and 0.5, both excluded.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than three values, one that is not finite, or no variation.</exception>
    /// <remarks>
    /// <para>Grubbs (1969), Technometrics 11:1–21; NIST/SEMATECH e-Handbook 1.3.5.17.1. Not meant to be repeated, nor for six values or fewer.</para>
    /// </remarks>
    public static GrubbsResult Grubbs(IReadOnlyList<double> values, OutlierSide side = OutlierSide.Both, double significance = 0.05)
    {
        Require.Values(values, 3);
        var mean = Descriptive.Mean(values);
        var deviation = Require.Above(Descriptive.StandardDeviation(values), 0, "(standard deviation of the values)", nameof(values));
        double Distance(double x) => side switch
        {
            OutlierSide.Upper => x - mean,
            OutlierSide.Lower => mean - x,
            _ => Math.Abs(x - mean),
        };
        var farthest = Enumerable.Range(0, values.Count).MaxBy(i => Distance(values[i]));
        return new GrubbsResult(farthest, Distance(values[farthest]) / deviation, GrubbsCritical(values.Count, side, significance));
    }

    /// <summary>Critical value of Grubbs' statistic. [–]</summary>
    /// <param name="count">Number of values, at least 3.</param>
    /// <param name="side">One side or both.</param>
    /// <param name="significance">Between 0 and 0.5, both excluded.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    /// <remarks>(n − 1)∕√n · √(t² ∕ (n − 2 + t²)), t the upper α∕n (one side) or α∕2n (both) quantile with n − 2 degrees of freedom.</remarks>
    public static double GrubbsCritical(int count, OutlierSide side = OutlierSide.Both, double significance = 0.05)
    {
        double n = Require.AtLeast(count, 3, "values");
        Require.InRange(significance, 1e-9, 0.5 - 1e-9, "(share)");
        var tail = side == OutlierSide.Both ? significance / (2 * n) : significance / n;
        var t = Descriptive.StudentTQuantile(1 - tail, n - 2);
        return (n - 1) / Math.Sqrt(n) * Math.Sqrt(t * t / (n - 2 + (t * t)));
    }
}

/// <summary>Where an outlier is looked for.</summary>
public enum OutlierSide
{
    /// <summary>The farthest value on either side.</summary>
    Both,

    /// <summary>The largest value.</summary>
    Upper,

    /// <summary>The smallest value.</summary>
    Lower,
}

/// <summary>What Grubbs' test says of the farthest value.</summary>
/// <param name="Index">Its place, from 0.</param>
/// <param name="Statistic">Its distance from the mean in standard deviations. [–]</param>
/// <param name="Critical">Statistic above which it is an outlier. [–]</param>
public sealed record GrubbsResult(int Index, double Statistic, double Critical)
{
    /// <summary>Whether the value is an outlier.</summary>
    public bool IsOutlier => Statistic > Critical;
}
