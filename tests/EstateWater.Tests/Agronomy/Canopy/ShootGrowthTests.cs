using EstateWater.Agronomy.Canopy;

namespace EstateWater.Tests.Canopy;

public sealed class ShootGrowthTests
{
    // (20 + 0.5·20)∕50, by hand.
    [Theory]
    [InlineData(20, 20, 10, 0.6)]
    [InlineData(50, 0, 0, 1)]
    [InlineData(0, 0, 50, 0)]
    public void Tips_are_weighed_by_their_growth(int growing, int slowed, int stopped, double expected) =>
        Assert.Equal(expected, ShootGrowth.TipIndex(growing, slowed, stopped), 1e-12);

    [Theory]
    [InlineData(89, ShootLengthState.TooShort)]
    [InlineData(95, ShootLengthState.AtTarget)]
    [InlineData(110, ShootLengthState.AtTarget)]
    [InlineData(125, ShootLengthState.TooLong)]
    public void Length_is_held_against_the_target(double lengthCm, ShootLengthState expected) =>
        Assert.Equal(expected, ShootGrowth.Against(lengthCm, 100));

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ShootGrowth.TipIndex(0, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShootGrowth.TipIndex(5, -1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ShootGrowth.Against(100, 0));
    }
}
