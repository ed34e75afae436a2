using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Statistics;

namespace EstateWater.Agronomy.WaterStatus;

/// <summary>Mean of a block's reading set and how sure it is.</summary>
/// <remarks>
/// <para>Vines in groups are alike, so a set in groups has fewer independent readings than leaves: the error then comes from the differences between groups.</para>
/// <para>Two leaves of one named vine count as one vine.</para>
/// <para>The robust statistics leave out leaves that their handling spoils (<see cref="ReadingSetRules.IsSpoiled"/>), and of the others those whose modified
/// z score passes 3.5 and that lie farther from the median than that many of the smallest usual spread.</para>
/// </remarks>
[Method(
    "Mean and confidence interval of a reading set",
    Source = "Student's t; for vines in groups one-way random effects, SE = √(MSB∕(k·m)) with k − 1 degrees of freedom; robust mean without leaves flagged by the modified z score, Iglewicz & Hoaglin (1993)",
    Check = "Two sets worked out beside the program from the textbook formulas")]
public sealed record ReadingSetStatistics
{
    /// <summary>Smallest usual standard deviation between vines: a leaf within 3.5 of it is no outlier, however well the others agree. From memory, to be checked. [MPa]</summary>
    /// <remarks>Gauges are read to a quarter of a bar, so ten leaves often show four alike and a spread near nothing.</remarks>
    public const double SmallestUsualSpreadMpa = 0.05;

    private const int FewestSoundLeaves = 3;

    private ReadingSetStatistics()
    {
    }

    /// <summary>Leaves in the set.</summary>
    public required int Leaves { get; init; }

    /// <summary>Vines, or leaves where the vine was not named.</summary>
    public required int Vines { get; init; }

    /// <summary>Mean tension of the vines. [MPa, positive]</summary>
    public required double MeanMpa { get; init; }

    /// <summary>Standard deviation between vines; <see langword="null"/> for a single one. [MPa]</summary>
    public double? StandardDeviationMpa { get; init; }

    /// <summary>Standard error of the mean; <see langword="null"/> for a single vine. [MPa]</summary>
    public double? StandardErrorMpa { get; init; }

    /// <summary>Degrees of freedom of the standard error; 0 for a single vine.</summary>
    public required int DegreesOfFreedom { get; init; }

    /// <summary>Whether the error comes from the differences between groups of vines.</summary>
    public required bool IsTwoLevel { get; init; }

    /// <summary>Places, from 0, of the leaves that do not belong to the others.</summary>
    public required IReadOnlyList<int> OutlierLeaves { get; init; }

    /// <summary>Places, from 0, of the leaves that their handling spoils; empty where fewer than three others would be left.</summary>
    public required IReadOnlyList<int> SpoiledLeaves { get; init; }

    /// <summary>The same of the set without outliers and spoiled leaves; this one itself when there are none. Use it where one bad leaf must not steer a computation.</summary>
    /// <remarks>The leaves left out are not deleted: show them, and let a person decide.</remarks>
    public ReadingSetStatistics Robust { get => field ?? this; private init; }

    /// <summary>Mean tension without outliers and spoiled leaves. [MPa, positive]</summary>
    public double RobustMeanMpa => Robust.MeanMpa;

    /// <summary>Half the width of the confidence interval of the mean, t·SE; <see langword="null"/> for a single vine. [MPa]</summary>
    /// <param name="confidence">Between 0 and 1, both excluded.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside its range.</exception>
    public double? HalfWidthMpa(double confidence = 0.95) =>
        StandardErrorMpa is { } se ? se * Descriptive.StudentT(DegreesOfFreedom, confidence) : null;

    /// <summary>Vines to read, independent of each other, for a wanted half-width; <see langword="null"/> where the set tells no spread.</summary>
    /// <param name="halfWidthMpa">Above 0. [MPa]</param>
    /// <param name="confidence">Between 0 and 1, both excluded.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is outside its range.</exception>
    public int? LeavesNeededFor(double halfWidthMpa, double confidence = 0.95) =>
        StandardDeviationMpa is > 0 and { } s ? SampleSize.ForHalfWidth(s, halfWidthMpa, confidence) : null;

    /// <summary>Statistics of a set of leaves of one measure.</summary>
    /// <param name="leaves">At least one leaf, tensions 0 to 10 MPa, all of one measure.</param>
    /// <param name="rules">What spoils a leaf; the shipped rules when <see langword="null"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">No leaf, a tension outside its range, or leaves of different measures.</exception>
    public static ReadingSetStatistics Of(IReadOnlyList<LeafFact> leaves, ReadingSetRules? rules = null)
    {
        ArgumentNullException.ThrowIfNull(leaves);
        Require.AtLeast(leaves.Count, 1, "leaves", nameof(leaves));
        foreach (var leaf in leaves)
        {
            Require.InRange(leaf.TensionMpa, 0, 10, "MPa of tension", nameof(leaves));
        }

        Require.InRange(leaves.Select(l => l.Measure).Distinct().Count(), 1, 1, "measure in a set: leaf, stem and predawn are never averaged", nameof(leaves));

        var spoiled = Spoiled(leaves, rules ?? ReadingSetRules.Default);
        int[] sound = [.. Enumerable.Range(0, leaves.Count).Except(spoiled)];
        int[] outliers = [.. OutliersOf([.. sound.Select(i => leaves[i].TensionMpa)]).Select(i => sound[i])];
        var all = Summarise(leaves) with { OutlierLeaves = outliers, SpoiledLeaves = spoiled };
        return outliers.Length + spoiled.Length == 0 ? all : all with { Robust = Summarise([.. sound.Except(outliers).Select(i => leaves[i])]) };
    }

    /// <summary>Places of the tensions that do not belong to the others.</summary>
    internal static IReadOnlyList<int> OutliersOf(IReadOnlyList<double> tensionsMpa)
    {
        var median = Descriptive.Median(tensionsMpa);
        return [.. Outliers.ByModifiedZ(tensionsMpa).Where(i => Math.Abs(tensionsMpa[i] - median) > Outliers.ModifiedZLimit * SmallestUsualSpreadMpa)];
    }

    private static int[] Spoiled(IReadOnlyList<LeafFact> leaves, ReadingSetRules rules)
    {
        int[] spoiled = [.. Enumerable.Range(0, leaves.Count).Where(i => rules.IsSpoiled(leaves[i]))];
        return leaves.Count - spoiled.Length >= FewestSoundLeaves ? spoiled : [];
    }

    private static ReadingSetStatistics Summarise(IReadOnlyList<LeafFact> leaves)
    {
        var vines = VineMeans(leaves);
        double[] values = [.. vines.Select(v => v.Mpa)];
        var naive = values.Length > 1 ? Descriptive.StandardError(values) : (double?)null;
        var groups = vines.Where(v => v.Group is not null).GroupBy(v => v.Group, v => v.Mpa).Select(g => g.ToArray()).ToArray();
        var twoLevel = vines.All(v => v.Group is not null) && groups.Count(g => g.Length > 1) > 1;
        return new ReadingSetStatistics
        {
            Leaves = leaves.Count,
            Vines = values.Length,
            MeanMpa = Descriptive.Mean(values),
            StandardDeviationMpa = values.Length > 1 ? Descriptive.StandardDeviation(values) : null,
            // By chance groups may agree better than their vines do: that is no reason to be surer than single vines allow.
            StandardErrorMpa = twoLevel ? Math.Max(TwoLevel.StandardErrorOfMean(groups), naive!.Value) : naive,
            DegreesOfFreedom = twoLevel ? groups.Length - 1 : values.Length - 1,
            IsTwoLevel = twoLevel,
            OutlierLeaves = [],
            SpoiledLeaves = [],
        };
    }

    private static (string? Group, double Mpa)[] VineMeans(IReadOnlyList<LeafFact> leaves) =>
    [
        .. leaves
            .Select((leaf, i) => (leaf, Unnamed: leaf.Vine is null ? i : -1))
            .GroupBy(p => (p.leaf.Group, p.leaf.Vine, p.Unnamed))
            .Select(vine => (vine.Key.Group, Descriptive.Mean([.. vine.Select(p => p.leaf.TensionMpa)]))),
    ];
}
