using EstateWater.Planning;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Tests.Planning;

public sealed class PlannerTests
{
    [Fact]
    public void The_same_input_gives_the_same_plan_byte_for_byte() =>
        Assert.Equal(PlanJson.Write(Plan(SmallEstate.Request())), PlanJson.Write(Plan(SmallEstate.Request())));

    [Fact]
    public void The_order_of_rows_changes_nothing()
    {
        var request = SmallEstate.Request();
        var shuffled = request with { Blocks = [.. request.Blocks.Reverse()], Valves = [.. request.Valves.Reverse()] };
        Assert.Equal(PlanJson.Write(Plan(request)), PlanJson.Write(Plan(shuffled)));
    }

    [Fact]
    public void Every_block_is_ranked_once_and_has_a_day_for_every_day_of_the_horizon()
    {
        var plan = Plan(SmallEstate.Request());
        Assert.Equal([1, 2, 3, 4], plan.Blocks.Select(b => b.Rank));
        Assert.Equal(4, plan.Blocks.Select(b => b.Block).Distinct().Count());
        Assert.All(plan.Blocks, b => Assert.Equal(Enumerable.Range(0, 11).Select(SmallEstate.Today.AddDays), b.Outlook.Select(o => o.Date)));
    }

    [Fact]
    public void Bands_are_ordered_and_planned_water_never_raises_tension()
    {
        var plan = Plan(SmallEstate.Request());
        Assert.All(plan.Blocks.SelectMany(b => b.Outlook), o =>
        {
            Assert.True(o.UnwateredBar.P10 <= o.UnwateredBar.P50 && o.UnwateredBar.P50 <= o.UnwateredBar.P90, $"{o}");
            Assert.True(o.PlannedBar.P10 <= o.UnwateredBar.P10 && o.PlannedBar.P50 <= o.UnwateredBar.P50 && o.PlannedBar.P90 <= o.UnwateredBar.P90, $"{o}");
        });
        Assert.Contains(plan.Blocks, b => b.Outlook[^1].PlannedBar.P50 < b.Outlook[^1].UnwateredBar.P50 - 0.2);
    }

    [Fact]
    public void Blocks_near_their_ceiling_are_watered_before_the_heat()
    {
        var plan = Plan(SmallEstate.Request());
        var spell = Assert.Single(plan.HeatSpells);
        Assert.Equal((SmallEstate.Today.AddDays(5), SmallEstate.Today.AddDays(8), 39.0), (spell.From, spell.To, spell.PeakTMaxC));
        var driest = plan.Blocks.Single(b => b.Block == "B4");
        Assert.True(driest.Hours > 0, driest.Reason.ToString());
        Assert.Contains("39 °C", driest.Reason.ToString(), StringComparison.Ordinal);
        var worstHot = driest.Outlook.Where(o => o.Date >= spell.From && o.Date <= spell.To).Max(o => o.PlannedBar.P50);
        Assert.True(worstHot <= driest.CeilingBar, $"{worstHot} bar in the heat, ceiling {driest.CeilingBar}");
    }

    [Fact]
    public void Nothing_is_watered_that_stays_below_its_ceiling_by_itself()
    {
        var request = SmallEstate.Request(hotC: 26);
        var easy = request with { Blocks = [.. request.Blocks.Select(b => b with { Targets = [.. b.Targets.Select(t => t with { CeilingBar = 25 })] })] };
        var plan = Plan(easy);
        Assert.All(plan.Blocks, b => Assert.Equal(0, b.Hours));
        Assert.All(plan.Blocks, b => Assert.StartsWith("Leave dry", b.Reason.ToString(), StringComparison.Ordinal));
        Assert.Empty(plan.Sets);
        Assert.Empty(plan.Unmet);
    }

    [Fact]
    public void Hours_by_hand_are_planned_as_they_are()
    {
        var plan = Plan(SmallEstate.Request() with { HoursByHand = new Dictionary<string, double> { ["B1"] = 7.25, ["B4"] = 0 } });
        Assert.Equal(7.25, plan.Blocks.Single(b => b.Block == "B1").Hours);
        Assert.Equal(0, plan.Blocks.Single(b => b.Block == "B4").Hours);
    }

    [Fact]
    public void A_block_that_was_never_read_says_so_and_its_band_is_wider()
    {
        var request = SmallEstate.Request();
        var plan = Plan(request with { Blocks = [.. request.Blocks.Select(b => b.Code == "B1" ? b with { Readings = [] } : b)] });
        var unread = plan.Blocks.Single(b => b.Block == "B1");
        Assert.Null(unread.Latest);
        Assert.Contains("not read yet", unread.Reason.ToString(), StringComparison.Ordinal);
        Assert.True(Width(unread) > 1.3 * plan.Blocks.Where(b => b.Block != "B1").Max(Width), $"{Width(unread)}");
    }

    [Fact]
    public void A_short_meter_is_told_and_its_valve_waters_less()
    {
        var plan = Plan(SmallEstate.Request());
        Assert.Contains("Look at valve V2", plan.Blocks.Single(b => b.Block == "B2").Reason.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(plan.Blocks.Where(b => b.Block != "B2"), b => b.Reason.ToString().Contains("Look at valve", StringComparison.Ordinal));
    }

    [Fact]
    public void A_station_that_fell_silent_weeks_ago_with_no_forecast_is_still_planned()
    {
        var request = SmallEstate.Request();
        var silent = request with { Stations = [.. request.Stations.Select(s => s with { Days = [.. s.Days.SkipLast(45)], Forecasts = [] })] };
        var plan = Plan(silent);
        Assert.All(plan.Blocks, b => Assert.Equal(11, b.Outlook.Count));
        Assert.Empty(plan.HeatSpells);
    }

    [Fact]
    public void A_horizon_outside_its_range_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Planner.Plan(SmallEstate.Request() with { HorizonDays = 31 }, TestContext.Current.CancellationToken));

    private static Plan Plan(PlanRequest request) => Planner.Plan(request, TestContext.Current.CancellationToken);

    private static double Width(BlockPlan block) => block.Outlook[3].UnwateredBar.P90 - block.Outlook[3].UnwateredBar.P10;
}
