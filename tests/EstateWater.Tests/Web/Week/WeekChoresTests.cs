using EstateWater.Data.Model;
using EstateWater.Tests.Web.Host;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Tests.Web.Week;

public sealed class WeekChoresTests
{
    private static EstateSnapshot Whole => SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1"), SmallEstate.BlockPlanOf("B2", 2)) with { Contents = StoredEstate.Contents };

    [Fact]
    public void Nothing_is_missing_where_all_is_fresh() => Assert.Empty(Of(Whole.Contents));

    [Fact]
    public void Blocks_that_were_not_read_for_more_than_eight_days_are_named()
    {
        var chore = Assert.Single(Of(Whole.Contents with { ChamberReadings = [.. Whole.Contents.ChamberReadings.Where(r => r.BlockCode != "B2" || r.TakenAt < SmallEstate.AsOf.AddDays(-8))] }));
        Assert.Equal(("One block not read for more than 8 days: B2.", "/readings/round"), (chore.What.Replace("1 block", "One block", StringComparison.Ordinal), chore.Href));
    }

    [Fact]
    public void A_forecast_older_than_a_day_and_a_silent_station_are_named()
    {
        var contents = Whole.Contents with
        {
            Forecasts = [.. Whole.Contents.Forecasts.Select(f => f with { IssuedAt = SmallEstate.AsOf.AddHours(-25) })],
            Weather = [.. Whole.Contents.Weather.Where(w => w.Date < SmallEstate.Today.AddDays(-2))],
        };
        Assert.Equal(
            ["The forecast at home is of Tue 21 Jan 2025, 05:00, older than 24 h.", "The station home has been silent since Sun 19 Jan."],
            Of(contents).Select(c => c.What));
    }

    [Fact]
    public void Sets_that_ended_unconfirmed_are_named_and_those_ahead_are_not()
    {
        SetLine Line(int id, int hoursAgo) => new()
        {
            SetId = id,
            Valve = $"V{id}",
            Source = "dam",
            Blocks = [],
            Start = SmallEstate.AsOf.AddHours(-hoursAgo - 4),
            End = SmallEstate.AsOf.AddHours(-hoursAgo),
            Hours = 4,
            FlowM3PerH = 20,
            Night = SmallEstate.Today,
        };
        var said = Line(3, 2) with { Confirmed = new ConfirmedHours(4, null, "Ben", null, SmallEstate.AsOf) };
        var chore = Assert.Single(WeekChores.Of(Whole, [Line(1, 2), Line(2, -2), said], SmallEstate.AsOf, UnitChoice.Metric));
        Assert.Contains("V1 of Wed 22 Jan 00:00", chore.What, StringComparison.Ordinal);
        Assert.DoesNotContain("V2", chore.What, StringComparison.Ordinal);
        Assert.Equal("/sets", chore.Href);
    }

    private static IReadOnlyList<Chore> Of(EstateContents contents) => WeekChores.Of(Whole with { Contents = contents }, [], SmallEstate.AsOf, UnitChoice.Metric);
}
