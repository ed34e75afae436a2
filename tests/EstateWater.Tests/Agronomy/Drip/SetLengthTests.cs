using EstateWater.Agronomy.Drip;
using EstateWater.Agronomy.Units;

namespace EstateWater.Tests.Drip;

public sealed class SetLengthTests
{
    // By hand: 0.35·4.459346·0.9·0.06·1000 = 84.28 L = 22.265 gal, at 1 gal/h 22.3 h.
    [Fact]
    public void Longest_set_fills_the_wetted_soil() =>
        Assert.Equal(22.265, SetLength.LongestUsefulH(0.35, 4.459346, 0.9, 0.06, Conversions.LitresPerGallon), 0.0005);

    // By hand: 12∕0.9; 12∕(0.9·(1 − 0.153846)); Keller & Bliesner's limit of 0.1.
    [Theory]
    [InlineData(0.0, 13.3333)]
    [InlineData(0.1, 13.3333)]
    [InlineData(0.153846, 15.7576)]
    public void Leaching_takes_more_water_above_a_tenth(double leaching, double expected) =>
        Assert.Equal(expected, SetLength.GrossWithLeachingMm(12, 0.9, leaching), 0.00005);

    [Theory]
    [InlineData(100, "agree")]
    [InlineData(108, "8 % more than expected: watch")]
    [InlineData(112, "12 % more than expected: look for a leak")]
    [InlineData(93, "7 % less than expected: watch")]
    [InlineData(85, "15 % less than expected: look for clogged")]
    public void A_meter_is_read_against_what_was_expected(double meterM3, string words)
    {
        var check = MeterCheck.Of(25, 4, meterM3);
        Assert.Equal(100, check.ExpectedM3);
        Assert.Contains(words, check.Words, StringComparison.Ordinal);
        Assert.Equal(meterM3 is 112 or 85, check.IsLarge);
    }

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SetLength.LongestUsefulH(0, 4, 0.9, 0.06, 4));
        Assert.Throws<ArgumentOutOfRangeException>(() => SetLength.GrossWithLeachingMm(12, 0.9, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MeterCheck.Of(25, 0, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => MeterCheck.Of(25, 4, double.NaN));
    }
}
