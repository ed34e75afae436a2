using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Weather;

// Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56, chapter 3, worked examples.
// Tolerance: half a unit of the last printed digit, unless a reason stands beside it.
public sealed class Fao56ComponentTests
{
    [Fact]
    public void Example_2_air_pressure_and_psychrometric_constant()
    {
        var pressure = AirPressure.AtElevationKpa(1800);

        Assert.Equal(81.8, pressure, 0.05);
        Assert.Equal(0.054, AirPressure.PsychrometricKpaPerC(pressure), 0.0005);
    }

    [Fact]
    public void Example_3_saturation_vapour_pressure()
    {
        Assert.Equal(3.075, SaturationVapourPressure.AtKpa(24.5), 0.0005);
        Assert.Equal(1.705, SaturationVapourPressure.AtKpa(15), 0.0005);
        Assert.Equal(2.39, SaturationVapourPressure.DailyMeanKpa(15, 24.5), 0.005);
        Assert.Equal(2.30, SaturationVapourPressure.AtKpa(19.75), 0.005);
    }

    [Fact]
    public void Example_4_vapour_pressure_from_a_psychrometer()
    {
        var pressure = AirPressure.AtElevationKpa(1200);

        Assert.Equal(87.9, pressure, 0.05);
        Assert.Equal(2.267, SaturationVapourPressure.AtKpa(19.5), 0.0005);
        Assert.Equal(1.91, ActualVapourPressure.FromPsychrometerKpa(25.6, 19.5, pressure), 0.005);
    }

    [Fact]
    public void Example_5_vapour_pressure_from_relative_humidity()
    {
        Assert.Equal(1.70, ActualVapourPressure.FromExtremesKpa(18, 25, 82, 54), 0.005);
        Assert.Equal(1.78, ActualVapourPressure.FromMeanHumidityKpa(18, 25, 68), 0.005);
        Assert.Equal(1.69, ActualVapourPressure.FromMaximumHumidityKpa(18, 82), 0.005);
    }

    [Fact]
    public void Example_6_vapour_pressure_deficit() =>
        Assert.Equal(0.91, VapourPressureDeficit.DailyKpa(new DailyWeather(new DateOnly(2025, 7, 1), 25, 18, 82, 54)), 0.005);

    [Fact]
    public void Examples_8_and_9_extraterrestrial_radiation_and_daylight_at_20_south_on_3_September()
    {
        const int day = 246;

        Assert.Equal(0.985, ExtraterrestrialRadiation.InverseRelativeDistance(day), 0.0005);
        Assert.Equal(0.120, ExtraterrestrialRadiation.DeclinationRad(day), 0.0005);
        Assert.Equal(1.527, ExtraterrestrialRadiation.SunsetHourAngleRad(-20, day), 0.0005);
        Assert.Equal(32.2, ExtraterrestrialRadiation.DailyMjPerM2(-20, day), 0.05);
        Assert.Equal(11.7, ExtraterrestrialRadiation.DaylightHours(-20, day), 0.05);
    }

    [Fact]
    public void Examples_10_to_12_radiation_at_Rio_de_Janeiro_in_May()
    {
        const double latitude = -(22 + (54 / 60.0));
        var extraterrestrial = ExtraterrestrialRadiation.DailyMjPerM2(latitude, 135);
        var daylight = ExtraterrestrialRadiation.DaylightHours(latitude, 135);
        var solar = SolarRadiation.FromSunshineMjPerM2(extraterrestrial, 220.0 / 31, daylight);
        var clearness = NetRadiation.Clearness(14.5, 18.8);
        var longwave = NetRadiation.LongwaveDailyMjPerM2(19.1, 25.1, 2.1, clearness);

        Assert.Equal(25.1, extraterrestrial, 0.05);
        Assert.Equal(10.9, daylight, 0.05);
        Assert.Equal(14.5, solar, 0.05);
        Assert.Equal(3.5, longwave, 0.05);
        Assert.Equal(11.1, NetRadiation.ShortwaveMjPerM2(solar), 0.05);
        Assert.Equal(7.6, NetRadiation.ShortwaveMjPerM2(solar) - longwave, 0.05);
    }

    [Fact]
    public void Example_13_soil_heat_of_a_month()
    {
        var heat = NetRadiation.SoilHeatMonthlyMjPerM2(14.1, 18.8);

        Assert.Equal(0.33, heat, 0.005);
        Assert.Equal(0.13, heat * ExtraterrestrialRadiation.MmPerMj, 0.005);
    }

    [Fact]
    public void Example_14_wind_at_two_metres() => Assert.Equal(2.4, WindSpeed.At2MMPerS(3.2, 10), 0.05);

    [Fact]
    public void Example_15_radiation_from_the_temperature_range()
    {
        var extraterrestrial = ExtraterrestrialRadiation.DailyMjPerM2(45 + (43 / 60.0), 196);
        var clearSky = SolarRadiation.ClearSkyMjPerM2(extraterrestrial, 200);

        Assert.Equal(40.6, extraterrestrial, 0.05);
        Assert.Equal(22.3, SolarRadiation.FromTemperatureRangeMjPerM2(extraterrestrial, clearSky, 14.8, 26.6), 0.05);
    }

    [Fact]
    public void Example_16_net_radiation_at_Bangkok_without_sunshine_data()
    {
        var extraterrestrial = ExtraterrestrialRadiation.DailyMjPerM2(13 + (44 / 60.0), 105);
        var clearSky = SolarRadiation.ClearSkyMjPerM2(extraterrestrial, 2);
        var solar = SolarRadiation.FromTemperatureRangeMjPerM2(extraterrestrial, clearSky, 25.6, 34.8, coefficient: 0.19);
        var shortwave = NetRadiation.ShortwaveMjPerM2(solar);
        var longwave = NetRadiation.LongwaveDailyMjPerM2(25.6, 34.8, 2.85, NetRadiation.Clearness(solar, clearSky));

        Assert.Equal(16.9, shortwave, 0.05);
        Assert.Equal(3.0, longwave, 0.05);
        Assert.Equal(13.9, shortwave - longwave, 0.05);
    }

    // Rows of FAO-56 Annex 2, Tables 2.1–2.4, recomputed independently from the equations and rounded as printed.
    [Theory]
    [InlineData(0, 101.3, 0.0674)]
    [InlineData(500, 95.5, 0.0635)]
    [InlineData(1000, 90.0, 0.0599)]
    [InlineData(1500, 84.8, 0.0564)]
    [InlineData(2000, 79.8, 0.0531)]
    [InlineData(3000, 70.5, 0.0469)]
    public void Pressure_by_elevation(double elevationM, double pressureKpa, double gamma)
    {
        Assert.Equal(pressureKpa, AirPressure.AtElevationKpa(elevationM), 0.05);
        Assert.Equal(gamma, AirPressure.PsychrometricKpaPerC(AirPressure.AtElevationKpa(elevationM)), 0.00005);
    }

    [Theory]
    [InlineData(1, 0.657, 0.047)]
    [InlineData(10, 1.228, 0.082)]
    [InlineData(20, 2.338, 0.145)]
    [InlineData(25, 3.168, 0.189)]
    [InlineData(30, 4.243, 0.243)]
    [InlineData(40, 7.376, 0.393)]
    public void Saturation_and_its_slope_by_temperature(double celsius, double kpa, double slope)
    {
        Assert.Equal(kpa, SaturationVapourPressure.AtKpa(celsius), 0.0005);
        Assert.Equal(slope, SaturationVapourPressure.SlopeKpaPerC(celsius), 0.0005);
    }

    [Fact]
    public void Radiation_and_daylight_through_the_year_in_both_hemispheres()
    {
        int[] days = [15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349];
        double[] north40 = [15.0, 20.4, 27.2, 34.7, 39.7, 41.8, 40.8, 36.7, 29.9, 22.5, 16.3, 13.6];
        double[] south34 = [43.3, 39.1, 33.0, 25.3, 19.2, 16.2, 17.4, 22.3, 29.7, 36.8, 42.0, 44.3];
        double[] daylight40 = [9.5, 10.5, 11.7, 13.1, 14.2, 14.8, 14.6, 13.6, 12.2, 10.9, 9.7, 9.2];

        for (var month = 0; month < 12; month++)
        {
            Assert.Equal(north40[month], ExtraterrestrialRadiation.DailyMjPerM2(40, days[month]), 0.05);
            Assert.Equal(south34[month], ExtraterrestrialRadiation.DailyMjPerM2(-34, days[month]), 0.05);
            Assert.Equal(daylight40[month], ExtraterrestrialRadiation.DaylightHours(40, days[month]), 0.05);
        }
    }
}
