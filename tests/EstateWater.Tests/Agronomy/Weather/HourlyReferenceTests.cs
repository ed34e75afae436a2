using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Weather;

public sealed class HourlyReferenceTests
{
    // Allen et al. (1998), FAO-56, Example 19: N'Diaye, 16°13′N 16°15′W, 8 m, 1 October, clock of 15° W.
    private static readonly StationSite NDiaye = new(16 + (13 / 60.0), -(16 + (15 / 60.0)), 8);
    private static readonly HourlyWeather Night = new(Clock(2), 28, 90, 1.9, 0);
    private static readonly HourlyWeather Afternoon = new(Clock(14), 38, 52, 3.3, 2.450);

    [Fact]
    public void Example_19_the_sun()
    {
        var night = HourlySun.Of(Night.Start, NDiaye.LatitudeDegrees, NDiaye.LongitudeDegrees);
        var afternoon = HourlySun.Of(Afternoon.Start, NDiaye.LatitudeDegrees, NDiaye.LongitudeDegrees);

        Assert.Equal(274, night.DayOfYear);
        Assert.Equal(-2.46, night.MidAngleRad, 0.005);
        Assert.Equal(0, night.ExtraterrestrialMjPerM2);
        Assert.Equal(0.682, afternoon.MidAngleRad, 0.0005);
        Assert.Equal(3.543, afternoon.ExtraterrestrialMjPerM2, 0.0005);
        Assert.Equal(2.658, SolarRadiation.ClearSkyMjPerM2(afternoon.ExtraterrestrialMjPerM2, 8), 0.0005);
    }

    [Fact]
    public void Example_19_the_night()
    {
        var et = HourlyReferenceEvapotranspiration.Of(Night, NDiaye, clearnessAtNight: 0.8);

        Assert.Equal(-0.100, et.NetRadiationMjPerM2, 0.0005);
        Assert.Equal(-0.050, et.SoilHeatMjPerM2, 0.0005);
        Assert.Equal(0.00, et.Mm, 0.005);
    }

    [Fact]
    public void Example_19_the_afternoon()
    {
        var et = HourlyReferenceEvapotranspiration.Of(Afternoon, NDiaye);

        Assert.Equal(1.749, et.NetRadiationMjPerM2, 0.0005);
        Assert.Equal(0.175, et.SoilHeatMjPerM2, 0.0005);
        Assert.Equal(0.63, et.Mm, 0.005);
    }

    // Fallon, Nevada, 1 July 2015, 18–19 h UTC: constants of the RefET test suite.
    [Fact]
    public void The_sun_meets_an_independent_library_in_universal_time()
    {
        var sun = HourlySun.Of(new DateTimeOffset(2015, 7, 1, 18, 0, 0, TimeSpan.Zero), 39.4575, -118.77388);

        Assert.Equal(-0.05874, HourlySun.SeasonalCorrectionH(182), 0.000005);
        Assert.Equal(4.30635, sun.ExtraterrestrialMjPerM2, 0.00001);
    }

    [Fact]
    public void The_hours_of_a_day_add_up_to_its_radiation_and_the_offset_of_the_clock_does_not_matter()
    {
        var midnight = new DateTimeOffset(2025, 7, 15, 0, 0, 0, TimeSpan.FromHours(-8));
        var hours = Enumerable.Range(0, 24).Sum(h => HourlySun.Of(midnight.AddHours(h), 38.5, -122.5).ExtraterrestrialMjPerM2);

        Assert.Equal(ExtraterrestrialRadiation.DailyMjPerM2(38.5, 196), hours, 0.01);
        Assert.Equal(HourlySun.Of(midnight, 38.5, -122.5), HourlySun.Of(midnight.ToUniversalTime(), 38.5, -122.5));
    }

    [Fact]
    public void A_wrong_hour_is_refused_by_name() => Assert.Equal(
        "hour.SolarMjPerM2",
        Assert.Throws<ArgumentOutOfRangeException>(() => HourlyReferenceEvapotranspiration.Of(Night with { SolarMjPerM2 = 6 }, NDiaye)).ParamName);

    private static DateTimeOffset Clock(int hour) => new(2025, 10, 1, hour, 0, 0, TimeSpan.FromHours(-1));
}
