using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning;
using EstateWater.Planning.Blocks;
using EstateWater.Planning.Rounds;

namespace EstateWater.Tests.Planning.Rounds;

public sealed class UsualLeavesTests
{
    private static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById("Australia/Adelaide");

    [Fact]
    public void A_block_never_read_asks_for_what_a_usual_set_takes()
    {
        var usual = UsualLeaves.Of([], WaterPotentialMeasure.Leaf, 0.1);
        Assert.Equal(0.10, usual.SpreadMpa, 12);
        Assert.Equal(SampleSize.ForHalfWidth(0.10, 0.1), usual.Leaves);
    }

    [Fact]
    public void The_blocks_own_spread_is_pooled_over_its_sets()
    {
        // Two sets of five leaves, each with s² = 2.5 · 0.06²; five usual leaves of 0.1: (8 · 2.5 · 0.0036 + 5 · 0.01) ∕ 13.
        var sets = Sets([[-2, -1, 0, 1, 2], [-2, -1, 0, 1, 2]], stepBar: 0.6);
        Assert.Equal(Math.Sqrt(((8 * 2.5 * 0.0036) + 0.05) / 13), UsualLeaves.Of(sets, WaterPotentialMeasure.Leaf, 0.1).SpreadMpa, 9);
    }

    [Fact]
    public void An_uneven_block_needs_more_leaves_and_never_more_than_a_round_bears()
    {
        var even = UsualLeaves.Of(Sets([[-1, 0, 1, 0, 0], [-1, 0, 1, 0, 0]], 0.25), WaterPotentialMeasure.Leaf, 0.1);
        var uneven = UsualLeaves.Of(Sets([[-3, -1, 0, 1, 3], [-3, -1, 0, 1, 3]], 0.6), WaterPotentialMeasure.Leaf, 0.1);
        Assert.True(uneven.Leaves > even.Leaves, $"{uneven.Leaves} {even.Leaves}");
        Assert.Equal(UsualLeaves.Most, UsualLeaves.Of(Sets([[-3, -1, 0, 1, 3]], 0.6), WaterPotentialMeasure.Leaf, 0.02).Leaves);
        Assert.Equal(ReadingSetRules.Default.FewestLeaves, UsualLeaves.Of([], WaterPotentialMeasure.Leaf, 1).Leaves);
    }

    [Fact]
    public void Vines_in_groups_count_for_less()
    {
        double[][] leaves = [[-1, -1, -1, 1, 1, 1]];
        var alone = UsualLeaves.Of(Sets(leaves, 0.5), WaterPotentialMeasure.Leaf, 0.1);
        var grouped = UsualLeaves.Of(Sets(leaves, 0.5, i => i < 3 ? "G1" : "G2"), WaterPotentialMeasure.Leaf, 0.1);
        // All the variance lies between groups of three, ρ = 1: three times as many.
        Assert.Equal(Math.Min(UsualLeaves.Most, 3 * alone.Leaves), grouped.Leaves);
        Assert.Equal(alone.SpreadMpa, grouped.SpreadMpa, 12);
    }

    private static IReadOnlyList<ReadingSet> Sets(double[][] steps, double stepBar, Func<int, string>? group = null) => ReadingSets.Of(
        SmallEstate.Block(1) with
        {
            Readings = [.. steps.SelectMany((set, week) => set.Select((step, i) => new LeafReading(
                new DateTimeOffset(2026, 1, 19, 13, 20, 0, TimeSpan.FromHours(10.5)).AddDays(-7 * week).AddMinutes(i),
                WaterPotentialMeasure.Leaf, 12 + (step * stepBar), group?.Invoke(i), $"{i}", LeafExposure.Sun, null, 20)))],
        },
        Zone);
}
