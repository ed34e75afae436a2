using EstateWater.Planning;

namespace EstateWater.Tests.Planning;

/// <summary>A reason names the two facts that decided, whichever they are.</summary>
public sealed class DecidingFactTests
{
    [Fact]
    public void Heat_is_named_where_it_takes_a_block_past_its_ceiling()
    {
        var reason = Reason(SmallEstate.Request(hotC: 42), "B3");
        Assert.Matches(@"^Water [\d.]+ h .*: .*42 °C in the heat from Sun 25 Jan takes it \d+\.\d bar past its ceiling of 14 on .*; with it at most \d+\.\d bar on ", reason);
    }

    [Fact]
    public void Without_heat_drying_is_what_the_days_ahead_add()
    {
        var reason = Reason(SmallEstate.Request(hotC: 31), "B4");
        Assert.DoesNotContain("°C", reason, StringComparison.Ordinal);
        Assert.StartsWith("Water ", reason, StringComparison.Ordinal);
        Assert.Contains("drying takes it", reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_block_that_needs_nothing_but_shares_a_valve_says_so()
    {
        var request = SmallEstate.Request();
        var shared = request with
        {
            Valves = [.. request.Valves.Where(v => v.Code != "V1")],
            Blocks = [.. request.Blocks.Select(b => b.Code == "B1" ? b with { ValveCode = "V4", Targets = [.. b.Targets.Select(t => t with { CeilingBar = 30 })] } : b)],
        };
        Assert.Contains("it shares valve V4 with B4, which needs it", Reason(shared, "B1"), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_source_has_no_room_that_is_what_decided()
    {
        var plan = Plan(SmallEstate.Request(8, maxFlowM3PerH: 34));
        var cut = plan.Unmet.MaxBy(u => u.Hours)!;
        Assert.Contains("its source has no room for", plan.Blocks.Single(b => b.Block == cut.Block).Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_seasons_water_ends_that_is_what_decided_and_with_which_priority()
    {
        var plan = Plan(SmallEstate.Request(4, allocationM3: 1));
        Assert.All(plan.Unmet, u => Assert.Matches("the season's water ends before|water is short this season and its priority is 3", plan.Blocks.Single(b => b.Block == u.Block).Reason.ToString()));
        Assert.NotEmpty(plan.Unmet);
    }

    [Fact]
    public void A_dry_block_says_where_it_stands_and_how_far_it_comes()
    {
        var request = SmallEstate.Request(hotC: 26);
        var easy = request with { Blocks = [.. request.Blocks.Select(b => b with { Targets = [.. b.Targets.Select(t => t with { CeilingBar = 25 })] })] };
        Assert.Matches(@"^Leave dry: \d+\.\d bar on 19 Jan.*; without water \d+\.\d bar on .* \(ceiling 25\)\.", Reason(easy, "B1"));
    }

    [Fact]
    public void Every_reason_names_two_facts()
    {
        var plan = Plan(SmallEstate.Request(8, maxFlowM3PerH: 34));
        Assert.All(plan.Blocks, b =>
        {
            Assert.Equal(b.Hours > 0 ? 3 : 2, b.Reason.ToString().Split("; ").Length);
            Assert.True(b.Reason.ToString().Split("past its ceiling").Length <= 2, $"the ceiling is told once: {b.Reason.ToString()}");
        });
    }

    // Three sets of four hours were given this season: twelve.
    [Fact]
    public void More_hours_than_the_whole_season_gave_are_put_in_proportion()
    {
        var request = SmallEstate.Request(hotC: 42);
        var block = Plan(request).Blocks.Single(b => b.Block == "B3");
        Assert.True(block.Hours > 12);
        Assert.Contains("(more than the 12 h of this whole season so far)", block.Reason.ToString(), StringComparison.Ordinal);

        var longer = request with { Valves = [.. request.Valves.Select(v => v with { Applied = [.. v.Applied.Select(a => a with { Hours = 60 })] })] };
        Assert.DoesNotContain("whole season", Reason(longer, "B3"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_peak_that_is_told_is_the_highest_against_the_ceiling_with_the_water()
    {
        var plan = Plan(SmallEstate.Request(8, maxFlowM3PerH: 34));
        Assert.All(plan.Blocks.Where(b => b.Hours > 0), b =>
        {
            // Ceilings stay at 14 within this horizon.
            var peak = b.Outlook.MaxBy(d => d.PlannedBar.P50)!;
            var told = System.Text.RegularExpressions.Regex.Match(b.Reason.ToString(), @"with it at most (\d+\.\d) bar on \w+ \d+ \w+(, still \d+\.\d bar over)?");
            Assert.Equal(peak.PlannedBar.P50, double.Parse(told.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture), 0.1);
            Assert.Equal(peak.PlannedBar.P50 > 14.05, told.Groups[2].Success);
        });
        Assert.Contains(plan.Blocks, b => b.Reason.ToString().Contains("bar over", StringComparison.Ordinal));
    }

    [Fact]
    public void A_set_that_jumped_is_looked_at_before_water_is_given()
    {
        var jumped = WithLastSet(SmallEstate.Request(), r => r with { TensionBar = r.TensionBar + 6.5 });
        Assert.StartsWith("First look whether what its valve gives reaches the vines, or read it again: it jumped. Water ", Reason(jumped, "B1"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_set_that_is_to_be_read_again_is_neither_where_the_block_stands_nor_its_trend()
    {
        var cool = SmallEstate.Request(hotC: 26);
        var request = cool with { Blocks = [.. cool.Blocks.Select(b => b with { Targets = [.. b.Targets.Select(t => t with { CeilingBar = 25 })] })] };
        var days = request.Blocks[0].Readings.Select(r => r.TakenAt.Date).Distinct().OrderDescending().ToList();
        var (last, before) = (days[0], days[1]);
        Assert.Contains($" bar on {last:d MMM}", Reason(request, "B1"), StringComparison.Ordinal);
        var reason = Reason(WithLastSet(request, r => r with { TakenAt = r.TakenAt.AddHours(4) }), "B1");
        Assert.StartsWith("First read it again: ", reason, StringComparison.Ordinal);
        Assert.Contains($" bar on {before:d MMM}", reason, StringComparison.Ordinal);
        Assert.DoesNotContain($" bar on {last:d MMM}", reason, StringComparison.Ordinal);
    }

    // The first block's last set, leaf by leaf.
    private static PlanRequest WithLastSet(PlanRequest request, Func<LeafReading, LeafReading> changed)
    {
        var block = request.Blocks[0];
        var last = block.Readings.Max(r => r.TakenAt.Date);
        return request with { Blocks = [block with { Readings = [.. block.Readings.Select(r => r.TakenAt.Date == last ? changed(r) : r)] }, .. request.Blocks.Skip(1)] };
    }

    private static Plan Plan(PlanRequest request) => Planner.Plan(request, TestContext.Current.CancellationToken);

    private static string Reason(PlanRequest request, string block) => Plan(request).Blocks.Single(b => b.Block == block).Reason.ToString();
}
