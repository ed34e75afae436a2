using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Weather;

public sealed class DayNormalTests
{
    // numpy and R both give these for 1 to 10.
    [Fact]
    public void Quantiles_of_one_to_ten()
    {
        double[] values = [10, 1, 9, 2, 8, 3, 7, 4, 6, 5];

        Assert.Equal(9.1, Quantile.Of(values, 90), 1e-12);
        Assert.Equal(9.6333, Quantile.Of(values, 90, QuantileType.MedianUnbiased8), 0.00005);
        Assert.Equal(5.5, Quantile.Of(values, 50), 1e-12);
        Assert.Equal(5.5, Quantile.Of(values, 50, QuantileType.MedianUnbiased8), 1e-12);
        Assert.Equal((1, 10), (Quantile.Of(values, 0), Quantile.Of(values, 100, QuantileType.MedianUnbiased8)));
    }

    [Fact]
    public void Pools_seven_days_either_side_of_every_year()
    {
        var normal = DayNormal.Of(Years(2021, 4, d => d.Day), new DateOnly(1999, 7, 15));

        Assert.NotNull(normal);
        Assert.Equal((60, 4), (normal.Count, normal.Years));
        Assert.Equal(15, normal.Mean, 1e-12);
        Assert.Null(normal.Percentile(90));
        // 8 to 22 four times over: the 90th percentile lies between the 54th and 55th of 60, both 21.
        Assert.Equal(21, normal.PercentileOfAnyRecord(90), 1e-12);
    }

    [Fact]
    public void Runs_across_the_turn_of_the_year_without_counting_a_year_twice()
    {
        var normal = DayNormal.Of(Years(2021, 5, _ => 1).Where(d => d.Date >= new DateOnly(2021, 6, 1)), new DateOnly(2025, 1, 2));

        Assert.NotNull(normal);
        // Four turns of the year in full and the December of the last.
        Assert.Equal((4 * 15) + 6, normal.Count);
        Assert.Equal(5, normal.Years);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void The_leap_day_joins_its_neighbours(int month)
    {
        var day = month == 2 ? new DateOnly(2024, 2, 29) : new DateOnly(2024, 3, 1);

        Assert.Equal(16, DayNormal.Of(Years(2024, 1, _ => 1), day)?.Count);
        Assert.Equal(15, DayNormal.Of(Years(2023, 1, _ => 1), day)?.Count);
    }

    [Fact]
    public void Nothing_near_is_no_normal() =>
        Assert.Null(DayNormal.Of([(new DateOnly(2025, 1, 1), 5)], new DateOnly(2025, 7, 1)));

    [Fact]
    public void The_stations_percentile_comes_on_with_the_years_of_the_rule()
    {
        var date = new DateOnly(2030, 7, 15);
        var four = StationPercentile.For(Years(2021, 4, d => d.Day), HeatSpellRule.Default);
        var five = StationPercentile.For(Years(2021, 5, d => d.Day), HeatSpellRule.Default);

        Assert.Null(four(date));
        // 8 to 22 five times over: the 90th percentile is at rank 67.6 of 75, among the 21s (66th to 70th).
        Assert.Equal(21.0, five(date));
        Assert.Null(StationPercentile.For(Years(2021, 5, d => d.Day), HeatSpellRule.Default with { Percentile = null })(date));
        Assert.Equal(21.0, StationPercentile.For(Years(2021, 4, d => d.Day), HeatSpellRule.Default with { PercentileMinYears = 4 })(date));
    }

    [Fact]
    public void Wrong_values_are_refused_by_name()
    {
        Assert.Equal("percent", Assert.Throws<ArgumentOutOfRangeException>(() => Quantile.Of([1], 101)).ParamName);
        Assert.Equal("values", Assert.Throws<ArgumentOutOfRangeException>(() => Quantile.Of([], 50)).ParamName);
        Assert.Equal("halfWindowDays", Assert.Throws<ArgumentOutOfRangeException>(() => DayNormal.Of([], default, 46)).ParamName);
    }

    private static IEnumerable<(DateOnly Date, double Value)> Years(int first, int count, Func<DateOnly, double> value)
    {
        for (var date = new DateOnly(first, 1, 1); date.Year < first + count; date = date.AddDays(1))
        {
            yield return (date, value(date));
        }
    }
}
