using EstateWater.Agronomy.Phenology;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Phenology;

public sealed class SeasonSumTests
{
    // 214 days of April to October at 20/10 °C: 5 °C·d each.
    [Fact]
    public void Winkler_sums_April_to_October_in_the_north()
    {
        var sum = WinklerIndex.Of(Steady(new DateOnly(2024, 12, 1), 450, 20, 10), 2025, 45);

        Assert.Equal(new SeasonSum(new DateOnly(2025, 4, 1), new DateOnly(2025, 10, 31), 214 * 5, 0), sum);
    }

    // 212 days of October to April at 20/10 °C; 213 when 29 February is among them.
    [Theory]
    [InlineData(2025, 212)]
    [InlineData(2024, 213)]
    public void Winkler_sums_October_to_April_in_the_south(int harvest, int days)
    {
        var sum = WinklerIndex.Of(Steady(new DateOnly(harvest - 1, 7, 1), 365, 20, 10), harvest, -34);

        Assert.Equal(new SeasonSum(new DateOnly(harvest - 1, 10, 1), new DateOnly(harvest, 4, 30), days * 5, 0), sum);
    }

    [Fact]
    public void Cold_days_take_nothing_away_and_missing_ones_are_counted()
    {
        DailyWeather[] days = [new(new DateOnly(2025, 4, 1), 5, -5), new(new DateOnly(2025, 4, 2), 30, 10)];

        var sum = WinklerIndex.Of(days, 2025, 45);

        Assert.Equal(10, sum.DegreeDays, 1e-12);
        Assert.Equal(212, sum.MissingDays);
    }

    [Fact]
    public void A_date_given_twice_is_refused()
    {
        var day = new DailyWeather(new DateOnly(2025, 4, 1), 25, 15);

        Assert.Throws<ArgumentException>(() => WinklerIndex.Of([day, day], 2025, 45));
    }

    // Amerine & Winkler (1944): 2500, 3000, 3500 and 4000 °F·d, that is 1388.9, 1666.7, 1944.4 and 2222.2 °C·d.
    [Theory]
    [InlineData(1388.8, 1)]
    [InlineData(1389.0, 2)]
    [InlineData(1666.6, 2)]
    [InlineData(1666.8, 3)]
    [InlineData(1944.5, 4)]
    [InlineData(2222.2, 4)]
    [InlineData(2222.3, 5)]
    public void Winkler_regions(double degreeDays, int region) => Assert.Equal(region, WinklerIndex.Region(degreeDays));

    // Recomputed by hand: 30/14 °C gives 16.0, at 43° 16.48.
    [Fact]
    public void Huglin_day_and_its_latitude()
    {
        var day = new DailyWeather(new DateOnly(2025, 7, 1), 30, 14);

        Assert.Equal(16.0, HuglinIndex.OfDay(14, 30), 1e-12);
        Assert.Equal(16.48, HuglinIndex.Of([day], 2025, 43).DegreeDays, 0.005);
        Assert.Equal(17.6, HuglinIndex.Of([day], 2025, 43, 1.1).DegreeDays, 1e-9);
    }

    // 183 days April to September and 182 October to March, at 30/14 °C.
    [Fact]
    public void Huglin_windows_in_both_hemispheres()
    {
        Assert.Equal(183 * 16.0, HuglinIndex.Of(Steady(new DateOnly(2025, 1, 1), 365, 30, 14), 2025, 40).DegreeDays, 1e-6);
        Assert.Equal(182 * 16.0, HuglinIndex.Of(Steady(new DateOnly(2024, 7, 1), 365, 30, 14), 2025, -34).DegreeDays, 1e-6);
    }

    // As documented by xclim.
    [Theory]
    [InlineData(40, 1.00)]
    [InlineData(-42, 1.02)]
    [InlineData(43, 1.03)]
    [InlineData(46, 1.04)]
    [InlineData(-48, 1.05)]
    [InlineData(50, 1.06)]
    public void Huglin_coefficient_by_latitude(double latitude, double k) => Assert.Equal(k, HuglinIndex.DayLengthCoefficient(latitude));

    private static IEnumerable<DailyWeather> Steady(DateOnly from, int days, double tMax, double tMin) =>
        Enumerable.Range(0, days).Select(i => new DailyWeather(from.AddDays(i), tMax, tMin));
}
