using CsCheck;
using EstateWater.Agronomy.Phenology;

namespace EstateWater.Tests.Phenology;

public sealed class DegreeDayTests
{
    // Zalom, Goodell, Wilson, Barnett & Bentley (1983), UC Leaflet 21373, Table 7: °F, thresholds 55 and 90, two decimals.
    // Computed in °C and brought back, since a Fahrenheit degree day is 1/1.8 of a Celsius one. Tolerance 0.01: some cells are cut, not rounded.
    [Theory]
    [InlineData(96, 110, 91, 35.00, 35.00)]
    [InlineData(45, 54, 38, 0.00, 0.00)]
    [InlineData(60, 80, 75, 15.00, 18.75)]
    [InlineData(75, 88, 60, 26.50, 22.75)]
    [InlineData(50, 82, 45, 11.85, 11.31)]
    [InlineData(45, 70, 50, 5.31, 5.70)]
    [InlineData(60, 100, 75, 22.82, 26.26)]
    [InlineData(75, 95, 60, 28.91, 25.30)]
    [InlineData(50, 101, 48, 18.95, 18.69)]
    [InlineData(48, 95, 50, 16.96, 17.23)]
    public void Sine_meets_the_published_table(double tMinF, double tMaxF, double nextF, double oneSine, double twoSines)
    {
        Assert.Equal(oneSine, 1.8 * DegreeDays.SingleSine(C(tMinF), C(tMaxF), C(55), C(90)), 0.01);
        Assert.Equal(twoSines, 1.8 * DegreeDays.DoubleSine(C(tMinF), C(tMaxF), C(nextF), C(55), C(90)), 0.01);
    }

    // A station day of the California network, worked in the documentation of a public degree-day package: 36/67 °F, 55 and 93.9.
    [Fact]
    public void Sine_meets_a_worked_day_of_a_station() =>
        Assert.Equal(3.31, 1.8 * DegreeDays.SingleSine(C(36), C(67), C(55), C(93.9)), 0.005);

    // McMaster & Wilhelm (1997), Agric. For. Meteorol. 87: 291–300, Table 1, base 0 °C.
    [Theory]
    [InlineData(20, 10, 15.0, 15.0)]
    [InlineData(10, 1, 5.5, 5.5)]
    [InlineData(8, -2, 3.0, 4.0)]
    [InlineData(6, 0, 3.0, 3.0)]
    [InlineData(5, -5, 0.0, 2.5)]
    [InlineData(-2, -7, 0.0, 0.0)]
    [InlineData(10, -2, 4.0, 5.0)]
    [InlineData(15, 2, 8.5, 8.5)]
    public void Simple_averages_meet_the_published_table(double tMax, double tMin, double method1, double method2)
    {
        Assert.Equal(method1, DegreeDays.AverageOfMean(tMin, tMax, 0), 0.05);
        Assert.Equal(method2, DegreeDays.AverageOfClippedExtremes(tMin, tMax, 0), 0.05);
    }

    [Fact]
    public void Caps_hold_the_mean_or_the_extremes()
    {
        Assert.Equal(20, DegreeDays.AverageOfMean(28, 38, 10, 30), 1e-12);
        Assert.Equal(19, DegreeDays.AverageOfClippedExtremes(28, 38, 10, 30), 1e-12);
    }

    [Fact]
    public void Sine_without_cutoff_is_the_average_where_the_threshold_is_below_the_day_and_never_less() =>
        Gen.Select(Gen.Double[-10, 30], Gen.Double[0, 25], Gen.Double[0, 20]).Sample((tMin, range, lower) =>
        {
            var sine = DegreeDays.SingleSine(tMin, tMin + range, lower);
            var average = DegreeDays.AverageOfMean(tMin, tMin + range, lower);
            return sine >= average - 1e-9 && (tMin < lower || Math.Abs(sine - average) < 1e-9);
        });

    [Fact]
    public void A_cutoff_never_adds_and_the_two_thresholds_bound_the_day() =>
        Gen.Select(Gen.Double[-10, 30], Gen.Double[0, 25], Gen.Double[-10, 30], Gen.Double[0, 15], Gen.Double[0, 20]).Sample((tMin, range, next, lower, width) =>
        {
            var capped = DegreeDays.DoubleSine(tMin, tMin + range, next, lower, lower + width);
            return capped >= -1e-9 && capped <= width + 1e-9
                && capped <= DegreeDays.DoubleSine(tMin, tMin + range, next, lower) + 1e-9;
        });

    [Fact]
    public void Wrong_values_are_refused_by_name()
    {
        Assert.Equal("tMaxC", Assert.Throws<ArgumentOutOfRangeException>(() => DegreeDays.SingleSine(10, 9, 5)).ParamName);
        Assert.Equal("baseC", Assert.Throws<ArgumentOutOfRangeException>(() => DegreeDays.AverageOfMean(10, 20, double.NaN)).ParamName);
        Assert.Equal("upperC", Assert.Throws<ArgumentOutOfRangeException>(() => DegreeDays.SingleSine(10, 20, 10, 9)).ParamName);
        Assert.Equal("nextTMinC", Assert.Throws<ArgumentOutOfRangeException>(() => DegreeDays.DoubleSine(10, 20, -99, 10)).ParamName);
    }

    private static double C(double fahrenheit) => (fahrenheit - 32) / 1.8;
}
