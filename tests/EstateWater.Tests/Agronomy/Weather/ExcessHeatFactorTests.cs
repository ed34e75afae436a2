using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Weather;

public sealed class ExcessHeatFactorTests
{
    private static readonly DateOnly Start = new(2025, 1, 20);

    // Vectors of thermofeel's tests of Nairn & Fawcett (2015).
    [Theory]
    [InlineData(5, 3, 15)]
    [InlineData(5, 0, 5)]
    [InlineData(5, -4, 5)]
    [InlineData(0, 3, 0)]
    [InlineData(-2, 3, -6)]
    [InlineData(-2, 0, -2)]
    public void Meets_a_public_library(double significance, double acclimatisation, double factor) =>
        Assert.Equal(factor, ExcessHeatFactor.Of(significance, acclimatisation), 1e-12);

    // Worked by hand: thirty days of 20.0, 20.1 … 22.9 (mean 21.45), then 30, 32 and 34 (mean 32) over a T95 of 27: 5.0 · 10.55 = 52.75.
    [Fact]
    public void A_month_worked_by_hand() => Assert.Equal(52.75, ExcessHeatFactor.StartingOn(Month(), Start, 27)!.Value, 1e-9);

    [Theory]
    [InlineData(-30)]
    [InlineData(-1)]
    [InlineData(2)]
    public void A_missing_day_gives_no_value(int missing)
    {
        var month = Month();
        month.Remove(Start.AddDays(missing));

        Assert.Null(ExcessHeatFactor.StartingOn(month, Start, 27));
    }

    [Fact]
    public void Wrong_values_are_refused_by_name() =>
        Assert.Equal("percentile95C", Assert.Throws<ArgumentOutOfRangeException>(() => ExcessHeatFactor.StartingOn(Month(), Start, double.NaN)).ParamName);

    private static Dictionary<DateOnly, double> Month()
    {
        var month = Enumerable.Range(0, 30).ToDictionary(i => Start.AddDays(i - 30), i => 20 + (0.1 * i));
        (month[Start], month[Start.AddDays(1)], month[Start.AddDays(2)]) = (30, 32, 34);
        return month;
    }
}
