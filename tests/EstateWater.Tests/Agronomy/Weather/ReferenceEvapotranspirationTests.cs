using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Weather;

// Allen et al. (1998), FAO Irrigation and Drainage Paper 56, chapter 4.
public sealed class ReferenceEvapotranspirationTests
{
    private static readonly DateOnly SixJuly = new(2025, 7, 6);

    [Fact]
    public void Example_17_Bangkok_mean_day_of_April()
    {
        var pressure = AirPressure.AtElevationKpa(2);
        var psychrometric = AirPressure.PsychrometricKpaPerC(pressure);
        var saturation = SaturationVapourPressure.DailyMeanKpa(25.6, 34.8);
        var extraterrestrial = ExtraterrestrialRadiation.DailyMjPerM2(13 + (44 / 60.0), 105);
        var daylight = ExtraterrestrialRadiation.DaylightHours(13 + (44 / 60.0), 105);
        var solar = SolarRadiation.FromSunshineMjPerM2(extraterrestrial, 8.5, daylight);
        var clearSky = SolarRadiation.ClearSkyMjPerM2(extraterrestrial, 2);
        var longwave = NetRadiation.LongwaveDailyMjPerM2(25.6, 34.8, 2.85, NetRadiation.Clearness(solar, clearSky));
        var net = NetRadiation.ShortwaveMjPerM2(solar) - longwave;
        var heat = NetRadiation.SoilHeatMonthlySoFarMjPerM2(29.2, 30.2);

        Assert.Equal(0.246, SaturationVapourPressure.SlopeKpaPerC(30.2), 0.0005);
        Assert.Equal(101.3, pressure, 0.05);
        // Printed from the rounded pressure: a whole last digit.
        Assert.Equal(0.0674, psychrometric, 0.0001);
        Assert.Equal(4.42, saturation, 0.005);
        Assert.Equal(38.06, extraterrestrial, 0.005);
        Assert.Equal(12.31, daylight, 0.005);
        // 28.545 is printed as 28.54: a whole last digit.
        Assert.Equal(28.54, clearSky, 0.01);
        Assert.Equal(17.44, NetRadiation.ShortwaveMjPerM2(solar), 0.005);
        Assert.Equal(14.33, net, 0.005);
        Assert.Equal(0.14, heat, 0.005);
        Assert.Equal(5.72, PenmanMonteith.DailyMm(30.2, net, heat, psychrometric, 2, saturation - 2.85), 0.005);
    }

    [Fact]
    public void Example_18_Uccle_on_6_July_component_by_component()
    {
        const double latitude = 50.8;
        var day = new DailyWeather(SixJuly, 21.5, 12.3, 84, 63);
        var vapour = ActualVapourPressure.OfDayKpa(day, out _);
        var extraterrestrial = ExtraterrestrialRadiation.DailyMjPerM2(latitude, 187);
        var solar = UccleRadiation();
        var clearSky = SolarRadiation.ClearSkyMjPerM2(extraterrestrial, 100);
        var shortwave = NetRadiation.ShortwaveMjPerM2(solar);
        var longwave = NetRadiation.LongwaveDailyMjPerM2(12.3, 21.5, vapour, NetRadiation.Clearness(solar, clearSky));

        Assert.Equal(2.078, WindSpeed.At2MMPerS(10 / 3.6, 10), 0.0005);
        Assert.Equal(100.1, AirPressure.AtElevationKpa(100), 0.05);
        Assert.Equal(0.0666, AirPressure.PsychrometricKpaPerC(AirPressure.AtElevationKpa(100)), 0.00005);
        Assert.Equal(0.122, SaturationVapourPressure.SlopeKpaPerC(16.9), 0.0005);
        // 1.9975 is printed as 1.997: a whole last digit.
        Assert.Equal(1.997, SaturationVapourPressure.DailyMeanKpa(12.3, 21.5), 0.001);
        Assert.Equal(1.409, vapour, 0.0005);
        Assert.Equal(0.589, VapourPressureDeficit.DailyKpa(day), 0.0005);
        Assert.Equal(41.09, extraterrestrial, 0.005);
        Assert.Equal(16.1, ExtraterrestrialRadiation.DaylightHours(latitude, 187), 0.05);
        Assert.Equal(22.07, solar, 0.005);
        Assert.Equal(30.90, clearSky, 0.005);
        Assert.Equal(17.00, shortwave, 0.006);
        Assert.Equal(3.71, longwave, 0.005);
        Assert.Equal(13.28, shortwave - longwave, 0.005);
    }

    [Fact]
    public void Example_18_Uccle_from_a_station_day()
    {
        var day = new DailyWeather(SixJuly, 21.5, 12.3, 84, 63, 10 / 3.6, UccleRadiation());

        var et = ReferenceEvapotranspiration.Daily(day, new StationSite(50.8, 4.35, 100, 10));

        Assert.Equal(3.9, et.Mm, 0.05);
        Assert.False(et.AnyEstimated);
    }

    // HydPy's documentation of its FAO-56 model: Example 18 with e_s from the mean temperature alone gives 3.75 mm.
    [Fact]
    public void Saturation_from_the_mean_temperature_would_read_three_percent_low()
    {
        var day = new DailyWeather(SixJuly, 21.5, 12.3, 84, 63, 10 / 3.6, UccleRadiation());
        var vapour = ActualVapourPressure.OfDayKpa(day, out _);
        var gamma = AirPressure.PsychrometricKpaPerC(AirPressure.AtElevationKpa(100));

        var tooLow = PenmanMonteith.DailyMm(16.9, 13.28, 0, gamma, 2.078, SaturationVapourPressure.AtKpa(16.9) - vapour);

        Assert.Equal(3.75, tooLow, 0.005);
    }

    [Fact]
    public void Example_20_Lyon_from_temperatures_alone()
    {
        var day = new DailyWeather(new DateOnly(2025, 7, 15), 26.6, 14.8);

        var et = ReferenceEvapotranspiration.Daily(day, new StationSite(45.72, 4.85, 200));

        Assert.Equal(196, day.Date.DayOfYear);
        Assert.Equal(1.68, ActualVapourPressure.OfDayKpa(day, out _), 0.005);
        // Two independent recomputations give 4.560.
        Assert.Equal(4.56, et.Mm, 0.005);
        Assert.Equal(InputOrigin.Estimated, et.Humidity);
        Assert.Equal(InputOrigin.Estimated, et.Radiation);
        Assert.Equal(InputOrigin.Estimated, et.Wind);
    }

    [Fact]
    public void Says_of_each_input_whether_it_was_measured()
    {
        var site = new StationSite(45.72, 4.85, 200);
        var bare = new DailyWeather(new DateOnly(2025, 7, 15), 26.6, 14.8);

        Assert.Equal(InputOrigin.Measured, ReferenceEvapotranspiration.Daily(bare with { RhMinPct = 40 }, site).Humidity);
        Assert.Equal(InputOrigin.Measured, ReferenceEvapotranspiration.Daily(bare with { SolarMjPerM2 = 20 }, site).Radiation);
        Assert.Equal(InputOrigin.Measured, ReferenceEvapotranspiration.Daily(bare with { WindMPerS = 1 }, site).Wind);
    }

    [Fact]
    public void Wind_counts_as_half_a_metre_per_second_at_least()
    {
        var site = new StationSite(45.72, 4.85, 200);
        var day = new DailyWeather(new DateOnly(2025, 7, 15), 26.6, 14.8, 80, 40, SolarMjPerM2: 20);

        var still = ReferenceEvapotranspiration.Daily(day with { WindMPerS = 0 }, site).Mm;

        Assert.Equal(ReferenceEvapotranspiration.Daily(day with { WindMPerS = 0.5 }, site).Mm, still, 0.0005);
        Assert.True(ReferenceEvapotranspiration.Daily(day with { WindMPerS = 0.6 }, site).Mm > still);
    }

    private static double UccleRadiation() => SolarRadiation.FromSunshineMjPerM2(
        ExtraterrestrialRadiation.DailyMjPerM2(50.8, 187), 9.25, ExtraterrestrialRadiation.DaylightHours(50.8, 187));
}
