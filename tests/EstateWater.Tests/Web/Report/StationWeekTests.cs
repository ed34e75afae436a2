using EstateWater.Agronomy.Weather;
using EstateWater.Data.Model;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Report;

namespace EstateWater.Tests.Web.Report;

public sealed class StationWeekTests
{
    private static readonly DateOnly Today = SmallEstate.Today;

    [Fact]
    public void The_past_week_is_the_seven_days_before_today()
    {
        var rainy = Weather.Select(day => day.Date == Today.AddDays(-7) ? day with { TMaxC = 38, RainMm = 4 } : day.Date == Today.AddDays(-8) ? day with { RainMm = 50 } : day);
        var past = Of(StoredEstate.Contents with { Weather = [.. rainy] }).Past!;
        // By hand: six days of 31 and one of 38.
        Assert.Equal((7, 32.0, 38.0, Today.AddDays(-7), 15.0, 4.0), (past.Days, past.TMaxC, past.HottestC, past.HottestOn, past.TMinC, past.RainMm));
        Assert.Equal((Today.AddDays(-7), Today.AddDays(-1)), (past.From, past.To));
    }

    [Fact]
    public void Reference_evapotranspiration_is_the_sum_of_the_days()
    {
        // The day's own value is held against FAO-56 elsewhere; the seven days are alike but for the date.
        var site = new StationSite(-33.9, 19, 140);
        var expected = Enumerable.Range(1, 7).Sum(ago => ReferenceEvapotranspiration.Daily(new DailyWeather(Today.AddDays(-ago), 31, 15, 90, 30, 2, 26, 0), site).Mm);
        Assert.Equal(expected, Of(StoredEstate.Contents).Past!.Et0Mm, 1e-9);
    }

    [Fact]
    public void Days_that_were_not_measured_are_counted_out_and_no_rain_gauge_is_not_no_rain()
    {
        var past = Of(StoredEstate.Contents with { Weather = [.. Weather.Where(day => day.Date < Today.AddDays(-2)).Select(day => day with { RainMm = null })] }).Past!;
        Assert.Equal((5, null), (past.Days, past.RainMm));
        Assert.Null(Of(StoredEstate.Contents with { Weather = [] }).Past);
    }

    [Fact]
    public void The_week_expected_is_the_middle_of_the_members_and_the_mean_of_their_rain()
    {
        var members = StoredEstate.Contents.Forecasts.SelectMany(day => new[]
        {
            day with { Member = "1", TMaxC = 30, RainMm = 0 }, day with { Member = "2", TMaxC = 33, RainMm = 0 }, day with { Member = "3", TMaxC = 45, RainMm = 3 },
        });
        var week = Of(StoredEstate.Contents with { Forecasts = [.. members] });
        // By hand: the middle of 30, 33 and 45, and a third of 3 mm on seven days.
        Assert.Equal((7, 33.0, 7.0), (week.Ahead!.Days, week.Ahead.TMaxC, Math.Round(week.Ahead.RainMm!.Value, 9)));
        Assert.Equal((Today, Today.AddDays(6)), (week.Ahead.From, week.Ahead.To));
        Assert.Equal(new DateTimeOffset(2025, 1, 22, 5, 0, 0, TimeSpan.FromHours(2)), week.ForecastIssuedAt);
        Assert.Equal((null, null), (Of(StoredEstate.Contents with { Forecasts = [] }).Ahead, Of(StoredEstate.Contents with { Forecasts = [] }).ForecastIssuedAt));
    }

    [Fact]
    public void Usual_is_of_earlier_years_within_a_week_of_the_date()
    {
        Assert.Null(Of(StoredEstate.Contents).Usual);
        WeatherDay Past(int years, int days, double tMax, double rain) => Weather[0] with { Date = Today.AddYears(-years).AddDays(days), TMaxC = tMax, RainMm = rain };
        var usual = Of(StoredEstate.Contents with { Weather = [Past(2, -7, 28, 0), Past(1, 7, 34, 1), Past(1, 8, 20, 90), .. Weather] }).Usual!;
        // By hand: 28 and 34 within seven days, 20 on the eighth day left out; half a millimetre a day.
        Assert.Equal((2, 31.0, 15.0, 3.5), (usual.Years, usual.TMaxC, usual.TMinC, usual.RainMm));
    }

    private static IReadOnlyList<WeatherDay> Weather => StoredEstate.Contents.Weather;

    private static StationWeek Of(EstateContents contents) => StationWeek.All(SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1")) with { Contents = contents })["home"];
}
