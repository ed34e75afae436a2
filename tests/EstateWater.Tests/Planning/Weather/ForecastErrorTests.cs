using EstateWater.Agronomy.Weather;
using EstateWater.Planning;
using EstateWater.Planning.Weather;

namespace EstateWater.Tests.Planning.Weather;

public sealed class ForecastErrorTests
{
    private static readonly DateOnly Today = new(2025, 1, 22);
    private const double CameC = 30;

    // Four neighbouring days count as one: n (1 − r) / (1 + r) of a long series (Bayley and Hammersley 1946, J. R. Stat.
    // Soc. Suppl. 8:184–197, from memory) with r = 0.6.
    [Fact]
    public void Before_any_error_is_known_four_days_are_wrong_together() => Assert.Equal(0.6, Errors().Persistence, 1e-12);

    // By hand: one forecast of two days. Leads 0 and 1 see both errors, and their deviation before them is the same; in
    // parts of it they are a and ±a, so that fourteen imaginary pairs at 0.6 and one at ±1 of weight a² are left.
    [Theory]
    [InlineData(3, 3, 1)]
    [InlineData(3, -3, -1)]
    public void Two_days_move_it_by_how_alike_they_were(double firstC, double secondC, int sign)
    {
        var errors = Errors(Issue(Today.AddDays(-9), firstC, secondC));

        var weight = 9 / (errors.SigmaC(0) * errors.SigmaC(0));
        Assert.Equal(((14 * 0.6) + (sign * weight)) / (14 + weight), errors.Persistence, 1e-12);
    }

    [Fact]
    public void Errors_that_swing_from_day_to_day_do_not_last() =>
        Assert.Equal(0, Errors([.. Enumerable.Range(2, 18).Select(i => Issue(Today.AddDays(-10 * i), 2, -2, 2, -2, 2, -2, 2, -2))]).Persistence);

    // σ(d) of the class: 5.27 °C at ten days; a station whose days lie 2.5 °C from its normals cannot be missed by more
    // by a forecast that fades to them, until its own errors say so.
    [Fact]
    public void Before_any_error_is_known_it_is_no_larger_than_days_differ()
    {
        Assert.Equal(5.27, Errors().SigmaC(10), 0.01);
        Assert.Equal(2.5, ForecastError.Of(Measured(), [], mostC: 2.5).SigmaC(10));
        Assert.Equal(1.8, ForecastError.Of(Measured(), [], mostC: 2.5).SigmaC(1), 1e-12);
        Assert.True(ForecastError.Of(Measured(), [Issue(Today.AddDays(-20), 6, 6, 6, 6, 6, 6, 6, 6, 6, 6, 6)], mostC: 2.5).SigmaC(10) > 4);
    }

    // By hand: two other years, every day of one 3 °C above and of the other 3 °C below their mean.
    [Fact]
    public void Days_differ_by_how_far_they_lie_from_the_normals()
    {
        var years = Enumerable.Range(-60, 120).SelectMany(day => new[] { (Years: 1, TMaxC: 33.0), (Years: 2, TMaxC: 27.0) }
            .Select(y => new DailyWeather(Today.AddDays(day - (int)Math.Round(365.2425 * y.Years)), y.TMaxC, 15, 90, 30)));

        Assert.Equal(3, new OtherYears([.. years.OrderBy(d => d.Date)], Today, "home").SpreadC(Today)!.Value, 1e-9);
        Assert.Null(new OtherYears(Measured()[..20], Today, "home").SpreadC(Today));
    }

    private static ForecastError Errors(params IssuedForecast[] forecasts) => ForecastError.Of(Measured(), forecasts);

    private static List<DailyWeather> Measured() =>
        [.. Enumerable.Range(1, 200).Select(back => new DailyWeather(Today.AddDays(-back), CameC, 15, 90, 30))];

    private static IssuedForecast Issue(DateOnly day, params double[] errorsC) => new(
        new DateTimeOffset(day.ToDateTime(new TimeOnly(5, 0)), TimeSpan.Zero),
        Member: null,
        [.. errorsC.Select((error, lead) => new DailyWeather(day.AddDays(lead), CameC + error, 15, 90, 30))]);
}
