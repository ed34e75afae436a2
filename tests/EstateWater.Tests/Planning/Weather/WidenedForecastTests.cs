using EstateWater.Agronomy.Weather;
using EstateWater.Planning;
using EstateWater.Planning.Weather;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace EstateWater.Tests.Planning.Weather;

public sealed class WidenedForecastTests
{
    private const int Versions = 16;
    private const double ForecastC = 31;
    private static readonly DateOnly Today = new(2025, 1, 22);

    [Fact]
    public void Is_spread_on_every_day_as_evenly_as_a_normal_error_lies()
    {
        var errors = Errors(lasting: true);
        var versions = Widen(errors, Versions);

        Assert.All(Enumerable.Range(0, 10), lead => Assert.Equal(
            Enumerable.Range(0, Versions).Select(rank => ForecastC + (errors.SigmaC(lead) * Normal.InvCDF(0, 1, (rank + 0.5) / Versions))),
            versions.Select(v => v[lead].TMaxC).Order(),
            (a, b) => Math.Abs(a - b) < 1e-9));
    }

    // An autoregressive course of the first order: two days k apart correlate by r to the power of k (Box and Jenkins 1970,
    // from memory). Tolerance: two standard errors of 200 courses, each with its mirror image.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Errors_last_as_long_as_past_ones_did(bool lasting)
    {
        var errors = Errors(lasting);
        var versions = Widen(errors, 400);

        Assert.Equal(errors.Persistence, Correlation(4, 5), 0.15);
        Assert.Equal(Math.Pow(errors.Persistence, 3), Correlation(4, 7), 0.15);

        double Correlation(int lead, int other) => MathNet.Numerics.Statistics.Correlation.Pearson(versions.Select(v => v[lead].TMaxC), versions.Select(v => v[other].TMaxC));
    }

    [Fact]
    public void A_warm_version_stands_beside_each_cold_one()
    {
        var versions = Widen(Errors(lasting: true), Versions);

        Assert.All(Enumerable.Range(0, Versions / 2), pair => Assert.All(
            versions[2 * pair].Zip(versions[(2 * pair) + 1]), days => Assert.Equal(2 * ForecastC, days.First.TMaxC + days.Second.TMaxC, 1e-9)));
    }

    [Fact]
    public void Begins_today_also_where_the_forecast_is_some_days_old() =>
        Assert.All(
            WidenedForecast.Versions(Issue(Today.AddDays(-4), ForecastC), Errors(lasting: true), Today, "home", Versions),
            v => Assert.Equal(Today, v[0].Date));

    private static List<DailyWeather[]> Widen(ForecastError errors, int versions) =>
        WidenedForecast.Versions(Issue(Today, ForecastC), errors, Today, "home", versions);

    // Forecasts that were 2 °C off all the way, or warm and cold from day to day.
    private static ForecastError Errors(bool lasting) => ForecastError.Of(
        [.. Enumerable.Range(1, 200).Select(back => new DailyWeather(Today.AddDays(-back), ForecastC, 15, 90, 30))],
        [.. Enumerable.Range(2, 12).Select(i => Issue(Today.AddDays(-10 * i), lead => ForecastC + ((lasting ? i : i + lead) % 2 == 0 ? 2 : -2)))]);

    private static IssuedForecast Issue(DateOnly day, double tMaxC) => Issue(day, _ => tMaxC);

    private static IssuedForecast Issue(DateOnly day, Func<int, double> tMaxC) => new(
        new DateTimeOffset(day.ToDateTime(new TimeOnly(5, 0)), TimeSpan.Zero),
        Member: null,
        [.. Enumerable.Range(0, 10).Select(lead => new DailyWeather(day.AddDays(lead), tMaxC(lead), 15, 90, 30))]);
}
