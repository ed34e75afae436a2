using EstateWater.Data.Model;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Blocks;
using EstateWater.Web.State;

namespace EstateWater.Tests.Web.BlockPages;

public sealed class HistoryDaysTests
{
    private static readonly EstateSnapshot Snapshot = SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1"), SmallEstate.BlockPlanOf("B2", 2)) with { Contents = StoredEstate.Contents };

    [Fact]
    public void Applied_hours_become_depth_by_the_emitters_of_a_vine()
    {
        var day = Day(Snapshot, -9);
        // Two emitters of 2.3 L/h on 2.4 m × 1.5 m: 1.2778 mm/h, six hours.
        Assert.Equal(7.667, day.AppliedMm!.Value, 3);
        Assert.Null(Day(Snapshot, -8).AppliedMm);
    }

    [Fact]
    public void Days_behind_are_measured_and_days_ahead_expected()
    {
        Assert.Equal((false, 31.0), (Day(Snapshot, -1).IsForecast, Day(Snapshot, -1).TMaxC));
        Assert.Equal((true, 37.0), (Day(Snapshot, 3).IsForecast, Day(Snapshot, 3).TMaxC));
    }

    [Fact]
    public void Members_of_a_forecast_are_shown_by_their_middle_and_rain_by_its_mean()
    {
        var issued = SmallEstate.AsOf.AddHours(-1);
        var members = new[] { (30.0, 0.0), (32.0, 0.0), (40.0, 6.0) }.Select((m, i) => new ForecastDay
        {
            StationCode = "home",
            Date = SmallEstate.Today.AddDays(1),
            IssuedAt = issued,
            Member = $"{i}",
            TMaxC = m.Item1,
            TMinC = 15,
            RainMm = m.Item2,
        });
        var day = Day(With(members), 1);
        Assert.Equal((32.0, 2.0), (day.TMaxC, day.RainMm));
    }

    [Fact]
    public void Only_the_latest_forecast_that_was_known_counts()
    {
        var old = new ForecastDay { StationCode = "home", Date = SmallEstate.Today, IssuedAt = SmallEstate.AsOf.AddDays(-1), TMaxC = 20, TMinC = 10 };
        var unknown = old with { IssuedAt = SmallEstate.AsOf.AddHours(1), TMaxC = 50 };
        Assert.Equal(37, Day(With([.. StoredEstate.Contents.Forecasts, old, unknown]), 0).TMaxC);
    }

    [Fact]
    public void A_day_without_weather_is_not_zero()
    {
        var day = Day(Snapshot with { Contents = StoredEstate.Contents with { Weather = [] } }, -5);
        Assert.Equal((null, null, null), (day.TMaxC, day.RainMm, day.MiddayVpdKpa));
    }

    private static EstateSnapshot With(IEnumerable<ForecastDay> forecasts) => Snapshot with { Contents = StoredEstate.Contents with { Forecasts = [.. forecasts] } };

    private static HistoryDay Day(EstateSnapshot snapshot, int ahead) =>
        HistoryDays.Of(snapshot.Contents.Blocks[0], snapshot, SmallEstate.Today.AddDays(-20)).Single(day => day.Date == SmallEstate.Today.AddDays(ahead));
}
