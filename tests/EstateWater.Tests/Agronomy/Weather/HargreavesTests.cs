using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Weather;

public sealed class HargreavesTests
{
    // FAO-56 Example 20, Lyon in July.
    [Fact]
    public void Example_20() =>
        Assert.Equal(5.0, Hargreaves.DailyMm(14.8, 26.6, ExtraterrestrialRadiation.DailyMjPerM2(45.72, 196)), 0.05);

    // V. K. Mehta (2006), worked example, as quoted in the tests of PyETo: a mean of its own beside the extremes.
    [Fact]
    public void Worked_example_with_a_measured_mean() => Assert.Equal(6.1, Hargreaves.DailyMm(28, 38, 38.93715, 35), 0.05);

    [Fact]
    public void Never_below_zero() => Assert.Equal(0, Hargreaves.DailyMm(-40, -30, 10));

    [Fact]
    public void Wrong_values_are_refused_by_name()
    {
        Assert.Equal("extraterrestrialMjPerM2", Assert.Throws<ArgumentOutOfRangeException>(() => Hargreaves.DailyMm(10, 20, -1)).ParamName);
        Assert.Equal("tMeanC", Assert.Throws<ArgumentOutOfRangeException>(() => Hargreaves.DailyMm(10, 20, 30, double.NaN)).ParamName);
    }
}
