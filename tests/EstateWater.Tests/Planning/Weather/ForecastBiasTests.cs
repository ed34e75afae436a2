using EstateWater.Agronomy.Weather;
using EstateWater.Planning;
using EstateWater.Planning.Weather;

namespace EstateWater.Tests.Planning.Weather;

public sealed class ForecastBiasTests
{
    private static readonly DateOnly Today = new(2025, 1, 22);

    [Fact]
    public void Believes_a_forecast_that_was_never_held_against_a_day() =>
        Assert.Equal(new ForecastBias(0, 0), ForecastBias.Of(Measured(), []));

    // By hand, Gelman et al. Eq. 2.12: two forecasts of one day each at lead 0, 1.8 °C usual error, four days counting as
    // one: precision 1 / 0.7² + 2 / (1.8² · 4) = 2.195137; each 3 °C too warm by day, 1 °C too cold by night.
    [Fact]
    public void One_or_two_forecasts_move_it_little()
    {
        var bias = ForecastBias.Of(Measured(), [Issue(Today.AddDays(-9), days: 1), Issue(Today.AddDays(-2), days: 1)]);

        Assert.Equal(3 * 0.154321 / 2.195137, bias.ByDayC, 1e-5);
        Assert.Equal(-0.154321 / 2.195137, bias.ByNightC, 1e-5);
    }

    [Fact]
    public void A_season_of_forecasts_that_are_all_too_warm_is_believed_and_taken_off()
    {
        var bias = ForecastBias.Of(Measured(), [.. Enumerable.Range(1, 30).Select(i => Issue(Today.AddDays(-5 * i), days: 5))]);
        var corrected = bias.Correct([Issue(Today, days: 5)]);

        Assert.InRange(bias.ByDayC, 2, 3);
        Assert.Equal(35 - bias.ByDayC, corrected[0].Days[4].TMaxC, 1e-9);
        Assert.Equal(14 - bias.ByNightC, corrected[0].Days[4].TMinC, 1e-9);
    }

    [Fact]
    public void Members_tell_nothing_of_it() =>
        Assert.Equal(new ForecastBias(0, 0), ForecastBias.Of(Measured(), [Issue(Today.AddDays(-9), days: 5) with { Member = "01" }]));

    private static List<DailyWeather> Measured() =>
        [.. Enumerable.Range(1, 200).Select(back => new DailyWeather(Today.AddDays(-back), 32, 15, 90, 30))];

    private static IssuedForecast Issue(DateOnly day, int days) => new(
        new DateTimeOffset(day.ToDateTime(new TimeOnly(5, 0)), TimeSpan.Zero),
        Member: null,
        [.. Enumerable.Range(0, days).Select(lead => new DailyWeather(day.AddDays(lead), 35, 14, 90, 30))]);
}
