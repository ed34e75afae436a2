using System.Globalization;
using EstateWater.Web.Parts.Drawing;

namespace EstateWater.Tests.Web.Drawing;

public sealed class LinearScaleTests
{
    [Theory]
    [InlineData(3, 17, "0 5 10 15 20")]
    [InlineData(0, 1, "0.0 0.2 0.4 0.6 0.8 1.0")]
    [InlineData(12, 12, "12.000000 12.000005")]
    [InlineData(-3, 2, "-3 -2 -1 0 1 2")]
    [InlineData(180, 301, "150 200 250 300 350")]
    public void Round_numbers_hold_all_values(double low, double high, string written)
    {
        var scale = LinearScale.Holding([low, high], 100, 0);
        Assert.Equal(written, string.Join(' ', scale.Ticks.Select(tick => scale.Words(tick, NumberFormatInfo.InvariantInfo))));
        Assert.True(scale.Low <= low && high <= scale.High);
    }

    [Fact]
    public void Values_lie_in_proportion_and_a_rising_axis_runs_upward()
    {
        var scale = LinearScale.Holding([0, 20], 110, 10);
        Assert.Equal((110.0, 60.0, 10.0), (scale.At(0), scale.At(10), scale.At(20)));
        Assert.Equal("35", scale.Place(15));
    }

    [Fact]
    public void Nothing_to_draw_still_gives_an_axis() => Assert.True(LinearScale.Holding([], 0, 10) is { High: > 0, Step: > 0 });
}
