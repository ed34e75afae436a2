using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Statistics;

/// <summary>Error of a mean whose values come in groups that are alike: vines in groups along a block.</summary>
[Method(
    "Error of a mean of values in groups",
    Source = "One-way random effects; for unequal groups Cochran (1977), Sampling Techniques, 3rd ed., chapter 9 (from memory, to be checked)",
    Check = "Three groups of four vines and unequal groups, by hand")]
public static class TwoLevel
{
    /// <summary>Standard error of the mean of all values, with k − 1 degrees of freedom. [unit of the values]</summary>
    /// <param name="groups">At least two groups, none empty.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few groups, an empty one, or a value that is not finite.</exception>
    /// <remarks>
    /// <para>Groups of equal size m: √(MSB∕(k·m)), the textbook estimator of cluster sampling. Unequal groups: the mean is a ratio of two totals,
    /// √(k∕(k − 1) · Σ nᵢ²(ȳᵢ − ȳ)²) ∕ n, which is the same number for equal groups. Cochran (1977), Sampling Techniques, 3rd ed., chapter 9 (from memory, to be checked).</para>
    /// </remarks>
    public static double StandardErrorOfMean(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        double k = Require.AtLeast(groups.Count, 2, "groups", nameof(groups));
        double n = groups.Sum(g => g.Count);
        var grand = groups.Sum(g => Descriptive.Mean(g) * g.Count) / n;
        var squares = groups.Sum(g => Math.Pow(g.Count * (Descriptive.Mean(g) - grand), 2));
        return Math.Sqrt(k / (k - 1) * squares) / n;
    }

    /// <summary>Share of the variance that lies between groups, 0–1. [–]</summary>
    /// <param name="groups">At least two groups of the same size, two or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few groups or values, or a value that is not finite.</exception>
    /// <remarks>Intraclass correlation σ²b∕(σ²b + σ²w) of one-way random effects.</remarks>
    public static double IntraclassCorrelation(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        var anova = OneWayAnova.Of(groups);
        var total = anova.BetweenVariance + anova.MeanSquareWithin;
        return total > 0 ? anova.BetweenVariance / total : 0;
    }

    /// <summary>Vines in each group that give the best precision for the walking. [vines, not rounded]</summary>
    /// <param name="groups">At least two groups of the same size, with a difference between groups.</param>
    /// <param name="groupCostInVines">Cost of walking to another group, in readings of one more vine, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range; without a difference between groups there is no best number.</exception>
    /// <remarks>m* = (σw∕σb)·√(c_group∕c_vine).</remarks>
    public static double BestVinesPerGroup(IReadOnlyList<IReadOnlyList<double>> groups, double groupCostInVines)
    {
        Require.Above(groupCostInVines, 0, "vines");
        var anova = OneWayAnova.Of(groups);
        Require.Above(anova.BetweenVariance, 0, "(variance between groups)", nameof(groups));
        return Math.Sqrt(anova.MeanSquareWithin / anova.BetweenVariance * groupCostInVines);
    }
}
