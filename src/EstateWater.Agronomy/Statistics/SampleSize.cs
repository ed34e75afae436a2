using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Statistics;

/// <summary>How many independent readings a wanted precision takes.</summary>
[Method(
    "Readings for a wanted half-width",
    Source = "Smallest n with t(n − 1)·s∕√n ≤ E, Student (1908), Biometrika 6:1–25; as in any textbook",
    Check = "Six pairs of spread and half-width iterated with tabulated t")]
public static class SampleSize
{
    /// <summary>Most readings it will ask for; more than this is not a plan but a wrong input.</summary>
    public const int Most = 100_000;

    /// <summary>Smallest n with t(n − 1)·s∕√n no larger than the wanted half-width.</summary>
    /// <param name="standardDeviation">Above 0. [any unit]</param>
    /// <param name="halfWidth">Half of the confidence interval's width, above 0. [same unit]</param>
    /// <param name="confidence">Between 0 and 1, both excluded.</param>
    /// <returns>At least 2.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range, or more than <see cref="Most"/> readings were needed.</exception>
    /// <remarks>The quantile of t depends on n, so the customary (z·s∕E)² is too small for few readings.</remarks>
    public static int ForHalfWidth(double standardDeviation, double halfWidth, double confidence = 0.95)
    {
        Require.Above(standardDeviation, 0, "(unit of the values)");
        Require.Above(halfWidth, 0, "(unit of the values)");
        Require.InRange(confidence, 1e-9, 1 - 1e-9, "(share)");
        Require.InRange(standardDeviation / halfWidth, 0, Math.Sqrt(Most) / 5, "(standard deviation over half-width)", nameof(halfWidth));

        var n = 2;
        while (Descriptive.StudentT(n - 1, confidence) * standardDeviation / Math.Sqrt(n) > halfWidth && n < Most)
        {
            n++;
        }

        return n;
    }
}
