using CsCheck;
using EstateWater.Agronomy.Sun;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Tests.Weather;

public sealed class DayCourseTests
{
    // Linvill (1990), recomputed independently: sunrise at 5 h, 14 h of day, 35/15 °C and 15 °C the next morning.
    [Theory]
    [InlineData(0, 18.250)]
    [InlineData(6, 18.473)]
    [InlineData(9, 27.856)]
    [InlineData(12, 33.794)]
    [InlineData(15, 34.696)]
    [InlineData(17, 32.321)]
    [InlineData(21, 21.966)]
    [InlineData(23, 19.227)]
    public void Linvills_course(double hour, double celsius) =>
        Assert.Equal(celsius, Linvill.TemperatureC(15, 35, 15, 14, hour >= 5 ? hour - 5 : hour + 19), 0.0005);

    // Parton & Logan (1981), Denver's lags, recomputed independently: noon at 12 h, 14.5 h of day, 35/15 °C.
    [Theory]
    [InlineData(6, 19.848)]
    [InlineData(9, 28.809)]
    [InlineData(12, 34.157)]
    [InlineData(15, 34.492)]
    [InlineData(18, 29.727)]
    public void Parton_and_Logans_course(double hour, double celsius) =>
        Assert.Equal(celsius, PartonLogan.TemperatureC(15, 35, 14.5, hour - 4.75), 0.0005);

    // The lags as printed: Parton & Logan (1981) for Denver, Wann et al. (1985) for North Carolina.
    [Fact]
    public void Lags_stand_in_their_own_places()
    {
        Assert.Equal((1.86, 2.20, -0.17), (PartonLoganLags.Denver.MaximumLagH, PartonLoganLags.Denver.NightDecay, PartonLoganLags.Denver.MinimumLagH));
        Assert.Equal((2.59, 2.2, 1.55), (PartonLoganLags.NorthCarolina.MaximumLagH, PartonLoganLags.NorthCarolina.NightDecay, PartonLoganLags.NorthCarolina.MinimumLagH));
    }

    [Fact]
    public void Linvill_meets_both_extremes_and_tomorrows_lowest_and_never_jumps() =>
        Gen.Select(Gen.Double[-5, 25], Gen.Double[1, 25], Gen.Double[-5, 5], Gen.Double[6, 18]).Sample((tMin, range, change, length) =>
        {
            double At(double hours) => Linvill.TemperatureC(tMin, tMin + range, tMin + change, length, hours);
            return Near(At(0), tMin) && Near(At((length / 2) + 2), tMin + range) && Near(At(24), tMin + change)
                && Math.Abs(At(length) - At(length + 1e-9)) < 1e-6;
        });

    [Fact]
    public void Parton_and_Logan_starts_at_the_lowest_stays_within_the_day_and_never_jumps() =>
        Gen.Select(Gen.Double[-5, 25], Gen.Double[1, 25], Gen.Double[8, 16], Gen.Double[0, 1]).Sample((tMin, range, length, share) =>
        {
            var lag = PartonLoganLags.Denver.MinimumLagH;
            double At(double hours) => PartonLogan.TemperatureC(tMin, tMin + range, length, hours);
            return Near(At(lag), tMin) && At(lag + (24 * share)) >= tMin - 1e-9 && At(lag + (24 * share)) <= tMin + range + 1e-9
                && Math.Abs(At(length) - At(length + 1e-9)) < 1e-6;
        });

    // Linvill with a dew point of 10 °C, recomputed independently: 4.031 kPa at 12 h, 4.301 at 15 h.
    [Fact]
    public void Deficit_of_the_rebuilt_hours()
    {
        var (day, sun) = RoundDay();

        var hours = DayCourse.Hours(day, null, null, sun, TimeZoneInfo.Utc);

        Assert.Equal(24, hours.Count);
        Assert.Equal(4.031, hours[12].DeficitKpa, 0.0005);
        Assert.Equal(4.301, hours[15].DeficitKpa, 0.0005);
        Assert.All(hours, h => Assert.InRange(h.RhPct, 0, 100));
        Assert.Equal(100 * SaturationVapourPressure.AtKpa(10) / SaturationVapourPressure.AtKpa(34.696), hours[15].RhPct, 0.005);
    }

    [Fact]
    public void The_night_comes_from_the_day_before_and_goes_to_the_day_after()
    {
        var (day, sun) = RoundDay();
        var warmer = day with { TMaxC = 40 };
        var colder = day with { TMinC = 5 };

        var alone = DayCourse.Hours(day, null, null, sun, TimeZoneInfo.Utc);
        var between = DayCourse.Hours(day, warmer, colder, sun, TimeZoneInfo.Utc);

        Assert.True(between[0].TempC > alone[0].TempC);
        Assert.True(between[23].TempC < alone[23].TempC);
        Assert.Equal(alone[12].TempC, between[12].TempC);
    }

    [Theory]
    [InlineData(2025, 3, 9, 23)]
    [InlineData(2025, 3, 10, 24)]
    [InlineData(2025, 11, 2, 25)]
    public void A_day_has_the_hours_of_its_clock(int year, int month, int dayOfMonth, int count)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById("America/Los_Angeles");
        var date = new DateOnly(year, month, dayOfMonth);

        Assert.Equal(count, DayCourse.Hours(new DailyWeather(date, 20, 8), null, null, SolarDay.For(date, 38.5, -122.5, zone), zone).Count);
    }

    private static (DailyWeather Day, SolarDay Sun) RoundDay()
    {
        var date = new DateOnly(2025, 7, 15);
        var vapour = SaturationVapourPressure.AtKpa(10);
        var day = new DailyWeather(date, 35, 15, 100 * vapour / SaturationVapourPressure.AtKpa(15), 100 * vapour / SaturationVapourPressure.AtKpa(35));
        var noon = new DateTimeOffset(2025, 7, 15, 12, 0, 0, TimeSpan.Zero);
        return (day, new SolarDay(date, noon, noon.AddHours(-7), noon.AddHours(7), TimeSpan.FromHours(14), 0, 70));
    }

    private static bool Near(double a, double b) => Math.Abs(a - b) < 1e-9;
}
