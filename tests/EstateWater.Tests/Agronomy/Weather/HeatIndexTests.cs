using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Weather;

public sealed class HeatIndexTests
{
    // The chart of the US National Weather Service, °F, relative humidity 40, 45, 50 … %.
    // It shows the bare regression. At 90 °F and 45 % it prints 93 where the regression gives 92.49: a whole degree there.
    [Theory]
    [InlineData(80, new[] { 80, 80, 81, 81, 82, 82, 83, 84, 84, 85, 86, 86, 87 })]
    [InlineData(84, new[] { 83, 84, 85, 86, 88, 89, 90, 92, 94, 96, 98, 100, 103 })]
    [InlineData(88, new[] { 88, 89, 91, 93, 95, 98, 100, 103, 106, 110, 113, 117, 121 })]
    [InlineData(90, new[] { 91, 93, 95, 97, 100, 103, 106, 109, 113, 117, 122, 127, 132 })]
    [InlineData(92, new[] { 94, 96, 99, 101, 105, 108, 112, 116, 121, 126, 131 })]
    [InlineData(94, new[] { 97, 100, 103, 106, 110, 114, 119, 124, 129, 135 })]
    [InlineData(96, new[] { 101, 104, 108, 112, 116, 121, 126, 132 })]
    [InlineData(100, new[] { 109, 114, 118, 124, 129, 136 })]
    [InlineData(104, new[] { 119, 124, 131, 137 })]
    [InlineData(108, new[] { 130, 137 })]
    [InlineData(110, new[] { 136 })]
    public void Regression_meets_the_printed_chart(double tempF, int[] printed)
    {
        for (var i = 0; i < printed.Length; i++)
        {
            var humidity = 40 + (5 * i);
            var misprint = tempF == 90 && humidity == 45;
            Assert.Equal(printed[i], HeatIndex.RegressionF(tempF, humidity), misprint ? 1 : 0.5);
        }
    }

    // Recomputed independently from the Weather Prediction Center's page, two decimals.
    [Theory]
    [InlineData(90, 50, 94.60)]
    [InlineData(95, 30, 94.41)]
    [InlineData(95, 10, 89.45)]
    [InlineData(100, 10, 94.12)]
    [InlineData(100, 40, 109.26)]
    [InlineData(104, 20, 102.88)]
    [InlineData(86, 90, 105.39)]
    [InlineData(80, 40, 79.58)]
    [InlineData(75, 50, 74.55)]
    public void With_its_adjustments(double tempF, double humidity, double indexF) =>
        Assert.Equal(indexF, HeatIndex.OfF(tempF, humidity), 0.005);

    // Test values of xclim in whole °C. One degree: another fit of Steadman's tables, without the simple form.
    [Theory]
    [InlineData(30, 25, 28)]
    [InlineData(30, 50, 31)]
    [InlineData(35, 25, 34)]
    [InlineData(35, 50, 41)]
    [InlineData(40, 25, 41)]
    [InlineData(40, 50, 55)]
    public void In_Celsius_beside_another_fit(double celsius, double humidity, double indexC) =>
        Assert.Equal(indexC, HeatIndex.OfC(celsius, humidity), 1.0);

    // Bands of the National Weather Service: 80, 90, 103 and 125 °F.
    [Theory]
    [InlineData(79.9, HeatCaution.None)]
    [InlineData(80.1, HeatCaution.Caution)]
    [InlineData(89.9, HeatCaution.Caution)]
    [InlineData(90.1, HeatCaution.ExtremeCaution)]
    [InlineData(102.9, HeatCaution.ExtremeCaution)]
    [InlineData(103.1, HeatCaution.Danger)]
    [InlineData(124.9, HeatCaution.Danger)]
    [InlineData(125.1, HeatCaution.ExtremeDanger)]
    public void Bands(double indexF, HeatCaution caution) => Assert.Equal(caution, HeatIndexBands.Default.Of((indexF - 32) / 1.8));

    [Fact]
    public void Bounds_can_be_set_and_equal_belongs_to_the_hotter_band() =>
        Assert.Equal(HeatCaution.Danger, (HeatIndexBands.Default with { DangerC = 38 }).Of(38));

    [Fact]
    public void Wrong_values_are_refused_by_name()
    {
        Assert.Equal("rhPct", Assert.Throws<ArgumentOutOfRangeException>(() => HeatIndex.OfC(30, 101)).ParamName);
        Assert.Equal("tempC", Assert.Throws<ArgumentOutOfRangeException>(() => HeatIndex.OfC(double.NaN, 50)).ParamName);
        Assert.Equal("DangerC", Assert.Throws<ArgumentOutOfRangeException>(() => new HeatIndexBands { DangerC = 10 }).ParamName);
    }
}
