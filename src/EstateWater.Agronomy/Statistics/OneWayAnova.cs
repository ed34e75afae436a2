using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Statistics;

/// <summary>One-way analysis of variance: how much groups differ, against how much values within a group differ.</summary>
[Method(
    "One-way analysis of variance",
    Source = "Fisher (1925), Statistical Methods for Research Workers, chapter 7",
    Check = "NIST StRD: SiRstvt, AtmWtAgt")]
public sealed record OneWayAnova
{
    private OneWayAnova()
    {
    }

    /// <summary>Number of groups.</summary>
    public required int Groups { get; init; }

    /// <summary>Number of values.</summary>
    public required int Values { get; init; }

    /// <summary>Mean of all values. [unit of the values]</summary>
    public required double GrandMean { get; init; }

    /// <summary>Sum of squares between groups. [unit²]</summary>
    public required double SumOfSquaresBetween { get; init; }

    /// <summary>Sum of squares within groups. [unit²]</summary>
    public required double SumOfSquaresWithin { get; init; }

    /// <summary>Mean square between groups. [unit²]</summary>
    public double MeanSquareBetween => SumOfSquaresBetween / (Groups - 1);

    /// <summary>Mean square within groups. [unit²]</summary>
    public double MeanSquareWithin => SumOfSquaresWithin / (Values - Groups);

    /// <summary>Ratio of the mean squares; infinite when nothing varies within groups. [–]</summary>
    public double F => MeanSquareBetween / MeanSquareWithin;

    /// <summary>Share of the variation that the groups explain, 0–1. [–]</summary>
    public double RSquared => SumOfSquaresBetween / (SumOfSquaresBetween + SumOfSquaresWithin);

    /// <summary>Standard deviation within groups. [unit of the values]</summary>
    public double ResidualStandardDeviation => Math.Sqrt(MeanSquareWithin);

    /// <summary>Variance of the group effects, (MSB − MSW) ∕ m for groups of m values; 0 when that is negative. [unit²]</summary>
    public double BetweenVariance => Math.Max(0, (MeanSquareBetween - MeanSquareWithin) / ((double)Values / Groups));

    /// <summary>Analyses groups of values.</summary>
    /// <param name="groups">At least two groups, none empty, and at least one with two values.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few groups or values, or a value that is not finite.</exception>
    public static OneWayAnova Of(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        Require.AtLeast(groups.Count, 2, "groups", nameof(groups));
        var means = groups.Select(Descriptive.Mean).ToArray();
        var all = groups.SelectMany(g => g).ToArray();
        Require.Above(all.Length, groups.Count, "values (one group must hold two)", nameof(groups));
        var grand = Descriptive.Mean(all);
        return new OneWayAnova
        {
            Groups = groups.Count,
            Values = all.Length,
            GrandMean = grand,
            SumOfSquaresBetween = groups.Select((g, i) => g.Count * (means[i] - grand) * (means[i] - grand)).Sum(),
            SumOfSquaresWithin = groups.Select((g, i) => g.Sum(x => (x - means[i]) * (x - means[i]))).Sum(),
        };
    }
}
