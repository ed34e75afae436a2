using EstateWater.Agronomy.Weather;
using EstateWater.Planning;
using EstateWater.Planning.Weather;

namespace EstateWater.Tests.Planning.Weather;

public sealed class MemberSpreadTests
{
    private static readonly DateOnly Today = new(2025, 1, 22);

    [Fact]
    public void Leaves_members_alone_where_no_forecast_was_ever_held_against_a_day()
    {
        var calibrated = MemberSpread.Calibrated(Members(sideC: 4), Errors(pastForecasts: 0, errorC: 0), Today);

        Assert.Equal([36, 28], [calibrated[0][7].TMaxC, calibrated[1][7].TMaxC]);
    }

    // Past errors of 1 °C at every lead beside members 4 °C to either side: by hand, the members' own deviation of a pair
    // is 4 · √2, so a full scale would bring them to 1/√2 of a degree from their middle; they come at least half way.
    [Fact]
    public void Draws_members_together_that_scatter_wider_than_past_errors()
    {
        var calibrated = MemberSpread.Calibrated(Members(sideC: 4), Errors(pastForecasts: 10, errorC: 1), Today);

        Assert.InRange(calibrated[0][7].TMaxC - 32, 1 / Math.Sqrt(2), 2);
        Assert.Equal(32, (calibrated[0][7].TMaxC + calibrated[1][7].TMaxC) / 2, 1e-9);
    }

    [Fact]
    public void Draws_members_apart_that_scatter_less_than_past_errors()
    {
        var calibrated = MemberSpread.Calibrated(Members(sideC: 0.5), Errors(pastForecasts: 10, errorC: 4), Today);

        Assert.True(calibrated[0][7].TMaxC - 32 > 1);
    }

    // At the same vapour a colder day is more humid; never more at its lowest than at its highest, and never beyond 100 %.
    [Theory]
    [InlineData(-5, -3)]
    [InlineData(-8, 0)]
    [InlineData(6, 4)]
    public void A_shifted_day_stays_a_day_that_can_be(double byDayC, double byNightC)
    {
        var day = ForecastError.Warmer(new DailyWeather(Today, 17, 13, RhMaxPct: 98, RhMinPct: 95), byDayC, byNightC);

        Assert.True(day.TMinC <= day.TMaxC);
        Assert.True(day.RhMinPct <= day.RhMaxPct);
        Assert.InRange(day.RhMaxPct!.Value, 1, 100);
    }

    private static List<IssuedForecast> Members(double sideC) =>
        [.. new[] { sideC, -sideC }.Select((side, m) => Issue(Today, $"{m}", 32 + side))];

    private static IssuedForecast Issue(DateOnly day, string? member, double tMaxC) => new(
        new DateTimeOffset(day.ToDateTime(new TimeOnly(5, 0)), TimeSpan.Zero),
        member,
        [.. Enumerable.Range(0, 14).Select(lead => new DailyWeather(day.AddDays(lead), tMaxC, 15, 90, 30))]);

    private static ForecastError Errors(int pastForecasts, double errorC) => ForecastError.Of(
        [.. Enumerable.Range(1, 200).Select(back => new DailyWeather(Today.AddDays(-back), 32, 15, 90, 30))],
        [.. Enumerable.Range(3, pastForecasts).Select(week => Issue(Today.AddDays(-7 * week), null, 32 + (week % 2 == 0 ? errorC : -errorC)))]);
}
