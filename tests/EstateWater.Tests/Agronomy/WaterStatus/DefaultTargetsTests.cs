using EstateWater.Agronomy.WaterStatus;
using static EstateWater.Agronomy.WaterStatus.WaterPotentialMeasure;

namespace EstateWater.Tests.WaterStatus;

public sealed class DefaultTargetsTests
{
    private static readonly double[] Stages = [.. Enumerable.Range(2, 93).Select(i => i * 0.5)];

    [Fact]
    public void Floor_is_wetter_than_ceiling_and_the_limit_is_never_wetter_than_that() =>
        Assert.All(Stages, stage => Assert.All(Enum.GetValues<WineStyle>(), style => Assert.All(Enum.GetValues<WaterPotentialMeasure>(), measure =>
        {
            var target = DefaultTargets.For(style, stage, measure);
            Assert.True(target.FloorBar < target.CeilingBar && target.CeilingBar <= target.LimitBar, $"{style} {stage} {measure}: {target}");
        })));

    [Fact]
    public void Whites_are_never_wanted_drier_than_reds() =>
        Assert.All(Stages, stage =>
        {
            var (whiteFloor, whiteCeiling) = DefaultTargets.For(isWhite: true, stage, Leaf);
            var (redFloor, redCeiling) = DefaultTargets.For(isWhite: false, stage, Leaf);
            Assert.True(whiteFloor <= redFloor && whiteCeiling <= redCeiling);
        });

    // From memory, editable: tested for staying put.
    [Theory]
    [InlineData(12, 6, 9)]
    [InlineData(19, 7, 10)]
    [InlineData(27, 11, 14)]
    [InlineData(35, 12, 14)]
    [InlineData(38, 12, 14)]
    [InlineData(38.1, 8, 11)]
    [InlineData(47, 8, 11)]
    public void Reds_follow_the_stage(double stage, double floor, double ceiling)
    {
        var target = DefaultTargets.For(false, stage, Leaf);
        Assert.Equal(floor, target.FloorBar, 1e-9);
        Assert.Equal(ceiling, target.CeilingBar, 1e-9);
    }

    [Fact]
    public void Stem_targets_are_the_leaf_targets_converted()
    {
        var stem = DefaultTargets.For(false, 30, Stem);
        Assert.Equal(9, stem.FloorBar, 1e-9);
        Assert.Equal(14, stem.CeilingBar, 1e-9);
    }

    [Fact]
    public void Refuses_a_stage_that_does_not_exist()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DefaultTargets.For(true, 0, Leaf));
        Assert.Throws<ArgumentOutOfRangeException>(() => DefaultTargets.For(true, 48, Leaf));
    }
}
