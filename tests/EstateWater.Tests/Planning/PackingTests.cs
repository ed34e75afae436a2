using EstateWater.Planning;

namespace EstateWater.Tests.Planning;

public sealed class PackingTests
{
    [Theory]
    [InlineData(8, 60.0, 40_000.0)]
    [InlineData(8, 34.0, 40_000.0)]
    [InlineData(12, 45.0, 6_000.0)]
    public void Sets_keep_to_flow_window_allocation_and_one_opening_at_a_time(int blocks, double maxFlow, double allocation)
    {
        var request = SmallEstate.Request(blocks, maxFlow, allocation);
        var plan = Planner.Plan(request, TestContext.Current.CancellationToken);
        Assert.NotEmpty(plan.Sets);
        Assert.All(plan.Sets, s =>
        {
            Assert.Equal(s.Hours, (s.End - s.Start).TotalHours, 9);
            Assert.Equal(0, s.Hours * 4 % 1, 9);
            Assert.True(s.Start >= request.AsOf, "no set before the plan is made");
            Assert.True(s.Start.Hour is >= 20 or < 8, $"{s.Start} is outside 20:00 to 08:00");
            Assert.True(s.End.TimeOfDay <= TimeSpan.FromHours(8) || s.End.Hour >= 20, $"{s.End} is outside 20:00 to 08:00");
        });
        foreach (var moment in plan.Sets.Select(s => s.Start))
        {
            var open = plan.Sets.Where(s => s.Start <= moment && s.End > moment).ToList();
            Assert.True(open.Sum(s => s.FlowM3PerH) <= maxFlow + 1e-6, $"{open.Sum(s => s.FlowM3PerH)} m³/h at {moment}");
            Assert.Equal(open.Count, open.Select(s => s.Valve).Distinct().Count());
        }

        var water = Assert.Single(plan.Water);

        // A published set has hours and flow alone: its water is theirs. The flow is told to a hundredth, the sum of the source to a tenth.
        Assert.All(plan.Sets, s => Assert.Equal(s.Hours * s.FlowM3PerH, s.VolumeM3, 1e-6));
        Assert.Equal(plan.Sets.Sum(s => s.VolumeM3), water.PlannedM3, (0.005 * plan.Sets.Sum(s => s.Hours)) + 0.05 + 1e-9);
        Assert.True(water.LeftM3 >= -0.05, $"{water.LeftM3} m³ left");
        Assert.InRange(plan.Packing.GapPct, 0, 100);
        Assert.True(plan.Packing.Objective <= plan.Packing.Bound);
    }

    // Few valves of awkward flows fill a pump badly: the bound must know it, or good plans would look bad.
    [Theory]
    [InlineData(8, 60.0, 40_000.0)]
    [InlineData(8, 34.0, 40_000.0)]
    [InlineData(12, 45.0, 40_000.0)]
    [InlineData(12, 45.0, 6_000.0)]
    public void The_packing_is_proven_to_be_within_two_percent(int blocks, double maxFlow, double allocation)
    {
        var plan = Planner.Plan(SmallEstate.Request(blocks, maxFlow, allocation), TestContext.Current.CancellationToken);
        Assert.True(plan.Packing.Objective > 0);
        Assert.InRange(plan.Packing.GapPct, 0, 2);
    }

    [Fact]
    public void What_does_not_fit_is_listed_with_the_reason()
    {
        var plan = Planner.Plan(SmallEstate.Request(8, maxFlowM3PerH: 34), TestContext.Current.CancellationToken);
        Assert.NotEmpty(plan.Unmet);
        Assert.All(plan.Unmet, u =>
        {
            Assert.True(u.Hours > 0);
            Assert.Contains("dam is full at 34.0 m³/h", u.Reason.ToString(), StringComparison.Ordinal);
        });
    }

    [Fact]
    public void Hours_of_a_valve_with_two_blocks_are_missing_once()
    {
        var request = SmallEstate.Request(8, maxFlowM3PerH: 34);
        var plan = Planner.Plan(
            request with { Blocks = [.. request.Blocks.Select(b => b.Code == "B8" ? b with { ValveCode = "V7" } : b)], Valves = [.. request.Valves.Where(v => v.Code != "V8")] },
            TestContext.Current.CancellationToken);
        var (seven, eight) = (plan.Unmet.Single(u => u.Block == "B7"), plan.Unmet.Single(u => u.Block == "B8"));
        Assert.Equal(seven.Hours, eight.Hours);
        Assert.Equal(plan.Unmet.Where(u => u.Block != "B8").Sum(u => u.Hours), plan.UnmetSetHours);
    }

    [Fact]
    public void A_valve_that_asks_for_more_than_its_source_gives_says_so()
    {
        var plan = Planner.Plan(SmallEstate.Request(4, maxFlowM3PerH: 8), TestContext.Current.CancellationToken);
        Assert.Empty(plan.Sets);
        Assert.Contains(plan.Unmet, u => u.Reason.ToString().Contains("more than the 8.0 m³/h that dam gives", StringComparison.Ordinal));
    }

    [Fact]
    public void When_the_allocation_is_used_up_nothing_is_planned_and_the_reason_says_so()
    {
        var plan = Planner.Plan(SmallEstate.Request(4, allocationM3: 1), TestContext.Current.CancellationToken);
        Assert.Empty(plan.Sets);
        Assert.Contains(plan.Unmet, u => u.Reason.ToString().Contains("season's water of dam is used up", StringComparison.Ordinal));
    }

    // Everything fits: the packing found is the best there is, whatever the solver's path.
    [Fact]
    public void With_room_enough_every_need_is_met_and_the_bound_is_reached()
    {
        var plan = Planner.Plan(SmallEstate.Request(3, maxFlowM3PerH: 500, allocationM3: null), TestContext.Current.CancellationToken);
        Assert.Empty(plan.Unmet);
        Assert.InRange(plan.Packing.GapPct, 0, 0.5);
        Assert.Null(plan.Water.Single().LeftM3);
    }
}
