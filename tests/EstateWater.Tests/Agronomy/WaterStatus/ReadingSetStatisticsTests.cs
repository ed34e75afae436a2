using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Tests.WaterStatus;

public sealed class ReadingSetStatisticsTests
{
    private static readonly DateTimeOffset Noon = new(2025, 1, 14, 12, 30, 0, TimeSpan.FromHours(2));

    // Three groups of four vines. Expected numbers worked out beside the program from the textbook formulas of one-way random effects.
    private static readonly double[][] Groups = [[1.10, 1.16, 1.05, 1.13], [1.28, 1.22, 1.31, 1.25], [1.18, 1.12, 1.20, 1.16]];

    private static LeafFact[] Leaves(params IEnumerable<double> tensions) =>
        [.. tensions.Select(t => new LeafFact(Noon, WaterPotentialMeasure.Stem, t))];

    private static LeafFact[] Grouped() =>
        [.. Groups.SelectMany((g, i) => g.Select(t => new LeafFact(Noon, WaterPotentialMeasure.Stem, t, Group: $"G{i}")))];

    // mean 1.2075, SE 0.02447667, t(7) 2.364624, half-width 0.05787812.
    [Fact]
    public void A_set_without_groups_has_the_plain_interval()
    {
        var set = ReadingSetStatistics.Of(Leaves(1.18, 1.24, 1.10, 1.32, 1.21, 1.27, 1.15, 1.19));
        Assert.Equal(8, set.Leaves);
        Assert.Equal(1.2075, set.MeanMpa, 1e-12);
        Assert.Equal(0.02447667, set.StandardErrorMpa!.Value, 5e-9);
        Assert.Equal(0.05787812, set.HalfWidthMpa()!.Value, 5e-9);
        Assert.False(set.IsTwoLevel);
        Assert.Empty(set.OutlierLeaves);
        Assert.Equal(set.MeanMpa, set.RobustMeanMpa);
    }

    [Fact]
    public void Vines_in_groups_have_the_two_level_interval()
    {
        var set = ReadingSetStatistics.Of(Grouped());
        Assert.True(set.IsTwoLevel);
        Assert.Equal(1.180, set.MeanMpa, 1e-12);
        Assert.Equal(0.0453689, set.StandardErrorMpa!.Value, 5e-8);
        Assert.Equal(0.195206, set.HalfWidthMpa()!.Value, 5e-7);
    }

    [Fact]
    public void The_order_of_the_leaves_does_not_matter()
    {
        var set = ReadingSetStatistics.Of(Grouped());
        var turned = ReadingSetStatistics.Of([.. Grouped().Reverse()]);
        Assert.Equal(set.MeanMpa, turned.MeanMpa, 1e-13);
        Assert.Equal(set.StandardErrorMpa!.Value, turned.StandardErrorMpa!.Value, 1e-13);
    }

    [Fact]
    public void Groups_that_agree_by_chance_do_not_make_the_mean_surer_than_its_vines()
    {
        LeafFact[] leaves = [.. Leaves(1.0, 1.4).Select(l => l with { Group = "A" }), .. Leaves(1.0, 1.4).Select(l => l with { Group = "B" })];
        var set = ReadingSetStatistics.Of(leaves);
        Assert.Equal(0.2 / Math.Sqrt(3), set.StandardErrorMpa!.Value, 1e-12); // s = √(4·0.2²∕3), over √4
        Assert.Equal(1, set.DegreesOfFreedom);
    }

    [Fact]
    public void One_bad_leaf_is_named_and_does_not_steer_the_robust_mean()
    {
        var set = ReadingSetStatistics.Of(Leaves(1.18, 1.24, 1.21, 1.27, 2.40, 1.15));
        Assert.Equal([4], set.OutlierLeaves);
        Assert.Equal(1.21, set.RobustMeanMpa, 1e-12);
        Assert.Equal(5, set.Robust.Leaves);
        Assert.True(set.MeanMpa > 1.4);
    }

    [Fact]
    public void Vines_that_agree_to_a_quarter_bar_do_not_make_their_neighbour_an_outlier()
    {
        // Median 0.725, MAD 0.025: the scores of 0.875 and 0.50 are 4.0 and −6.1, yet 0.875 lies within 0.175 MPa.
        var set = ReadingSetStatistics.Of(Leaves(0.725, 0.725, 0.75, 0.75, 0.70, 0.725, 0.70, 0.875, 0.50));
        Assert.Equal([8], set.OutlierLeaves);
    }

    [Fact]
    public void Leaves_that_their_handling_spoils_do_not_steer_the_robust_mean()
    {
        LeafFact[] sound = [.. Leaves(1.2, 1.25, 1.3, 1.35).Select(l => new LeafFact(Noon, WaterPotentialMeasure.Leaf, l.TensionMpa, LeafExposure.Sun, 0, 15))];
        var shaded = ReadingSetStatistics.Of([.. sound, sound[0] with { TensionMpa = 1.1, Exposure = LeafExposure.Shade }]);
        Assert.Equal([4], shaded.SpoiledLeaves);
        Assert.Equal(1.275, shaded.RobustMeanMpa, 1e-12);
        Assert.Equal(1.24, shaded.MeanMpa, 1e-12);
        Assert.Equal([4], ReadingSetStatistics.Of([.. sound, sound[0] with { DelayS = 90 }]).SpoiledLeaves);

        // A stem leaf may hang in the shade, but not go unbagged; two sound leaves are too few to leave the others out.
        LeafFact[] stem = [.. sound.Select(l => l with { Measure = WaterPotentialMeasure.Stem, BaggedMin = 60, DelayS = 90 })];
        Assert.Empty(ReadingSetStatistics.Of([.. stem, stem[0] with { Exposure = LeafExposure.Shade }]).SpoiledLeaves);
        Assert.Equal([4], ReadingSetStatistics.Of([.. stem, stem[0] with { BaggedMin = 5 }]).SpoiledLeaves);
        Assert.Empty(ReadingSetStatistics.Of([.. stem[..2], stem[0] with { BaggedMin = 5 }]).SpoiledLeaves);
    }

    [Fact]
    public void Two_leaves_of_a_vine_count_as_one_vine()
    {
        LeafFact[] leaves =
        [
            new(Noon, WaterPotentialMeasure.Leaf, 1.0, Vine: "1"), new(Noon, WaterPotentialMeasure.Leaf, 1.2, Vine: "1"),
            new(Noon, WaterPotentialMeasure.Leaf, 1.3, Vine: "2"),
        ];
        var set = ReadingSetStatistics.Of(leaves);
        Assert.Equal((3, 2), (set.Leaves, set.Vines));
        Assert.Equal(1.2, set.MeanMpa, 1e-12);
    }

    [Fact]
    public void A_single_leaf_has_a_mean_and_no_interval()
    {
        var set = ReadingSetStatistics.Of(Leaves(1.1));
        Assert.Equal(1.1, set.MeanMpa);
        Assert.Null(set.StandardErrorMpa);
        Assert.Null(set.HalfWidthMpa());
        Assert.Null(set.LeavesNeededFor(0.1));
    }

    [Fact]
    public void Refuses_nothing_mixed_measures_and_negative_tension()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ReadingSetStatistics.Of([]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ReadingSetStatistics.Of(Leaves(1.0, -1.1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ReadingSetStatistics.Of([.. Leaves(1.0), new LeafFact(Noon, WaterPotentialMeasure.Leaf, 1.2)]));
    }
}
