using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Weather;

public sealed class VapourPressureDeficitTests
{
    private static readonly DateOnly Midsummer = new(2025, 7, 15);

    // Test values of the Open-Meteo weather service's own suite, four decimals.
    [Theory]
    [InlineData(25, 13.8, 1.5898)]
    [InlineData(20, -10, 2.0526)]
    [InlineData(25, 25, 0)]
    [InlineData(25, 26, 0)]
    public void Meets_a_weather_service_at_one_moment(double celsius, double dewPointC, double kpa) =>
        Assert.Equal(kpa, VapourPressureDeficit.FromVapourKpa(celsius, ActualVapourPressure.FromDewPointKpa(dewPointC)), 0.00005);

    // Independent recomputation from FAO-56 Eq. 11, three decimals.
    [Theory]
    [InlineData(30, 40, 2.546)]
    [InlineData(35, 25, 4.217)]
    [InlineData(40, 15, 6.269)]
    public void From_temperature_and_humidity(double celsius, double humidityPct, double kpa) =>
        Assert.Equal(kpa, VapourPressureDeficit.AtKpa(celsius, humidityPct), 0.0005);

    // Independent recomputation for 35/15 °C and a steady dew point of 10 °C: daily mean 2.436, 12–14 h 4.107 kPa.
    [Fact]
    public void Midday_is_far_above_the_daily_mean()
    {
        var day = DayWithDewPoint(35, 15, 10);

        Assert.Equal(2.436, VapourPressureDeficit.DailyKpa(day), 0.0005);
        Assert.Equal(4.107, VapourPressureDeficit.NearSolarNoonKpa(day), 0.0005);
    }

    // Independent recomputation of Campbell & Norman (1998) Eq. 2.2–2.3 for 35/15 °C, three decimals.
    [Theory]
    [InlineData(0, 18.317)]
    [InlineData(3, 16.028)]
    [InlineData(6, 16.358)]
    [InlineData(9, 23.484)]
    [InlineData(12, 32.730)]
    [InlineData(15, 34.307)]
    [InlineData(18, 27.795)]
    [InlineData(21, 21.380)]
    public void Course_of_temperature_by_Campbell_and_Norman(double solarHour, double celsius) =>
        Assert.Equal(celsius, CampbellNorman.TemperatureC(15, 35, solarHour), 0.0005);

    [Fact]
    public void Saturated_day_has_none()
    {
        var fog = new DailyWeather(Midsummer, 12, 12, 100, 100);

        Assert.Equal(0, VapourPressureDeficit.DailyKpa(fog), 1e-12);
        Assert.Equal(0, VapourPressureDeficit.NearSolarNoonKpa(fog), 1e-12);
    }

    private static DailyWeather DayWithDewPoint(double tMax, double tMin, double dewPointC)
    {
        var vapour = SaturationVapourPressure.AtKpa(dewPointC);
        return new DailyWeather(
            Midsummer,
            tMax,
            tMin,
            100 * vapour / SaturationVapourPressure.AtKpa(tMin),
            100 * vapour / SaturationVapourPressure.AtKpa(tMax));
    }
}
