using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Tests.Planning;

public sealed class RefitTests
{
    // The day after the estate's last readings, so that a further day can be read.
    private static readonly PlanRequest Before = SmallEstate.Request(12) with { AsOf = SmallEstate.AsOf.AddDays(1) };

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Fact]
    public void Nothing_new_gives_the_same_plan_byte_for_byte()
    {
        var estate = Planner.Fit(Before, Cancellation);
        var again = Planner.Refit(estate, Copy(Before), Cancellation);
        Assert.NotSame(estate, again);
        Assert.Equal(Write(Planner.Plan(estate, Before, Cancellation)), Write(Planner.Plan(again, Before, Cancellation)));
    }

    [Fact]
    public void A_new_set_moves_its_block_alone_and_nearly_as_far_as_learning_all_anew_would()
    {
        var after = WithDrySet(Before, "B3");
        var old = Outlooks(Planner.Plan(Before, Cancellation));
        var full = Outlooks(Planner.Plan(after, Cancellation));
        var refitted = Outlooks(Planner.Plan(Planner.Refit(Planner.Fit(Before, Cancellation), after, Cancellation), after, Cancellation));
        Assert.All(old.Keys.Where(code => code != "B3"), code => Assert.Equal(old[code], refitted[code]));

        // The new leaves stand far above the outlook. Of what they move, the part that goes by way of the other blocks is one
        // block's share, a twelfth, and a step of the grid on which the estate's discrepancy is sought: a quarter in all is allowed.
        var moved = full["B3"][0].P50 - old["B3"][0].P50;
        Assert.True(moved > 0.3, $"{moved} bar");
        Assert.Equal(full["B3"][0].P50, refitted["B3"][0].P50, moved / 4);
    }

    [Fact]
    public void The_readings_come_in_any_order_and_leave_the_same_answer()
    {
        var estate = Planner.Fit(Before, Cancellation);
        var both = WithDrySet(WithDrySet(Before, "B3"), "B7");
        var there = Planner.Refit(Planner.Refit(estate, WithDrySet(Before, "B3"), Cancellation), both, Cancellation);
        var back = Planner.Refit(Planner.Refit(estate, WithDrySet(Before, "B7"), Cancellation), both, Cancellation);
        Assert.Equal(Write(Planner.Plan(there, both, Cancellation)), Write(Planner.Plan(back, both, Cancellation)));
        Assert.Equal(Before.AsOf, there.LearnedAsOf);
    }

    // What is kept of the estate before must not show: hours by hand, water left and the like are packed as if from the start.
    [Fact]
    public void What_was_packed_before_serves_again_only_for_the_same_needs()
    {
        var estate = Planner.Fit(Before, Cancellation);
        var plain = Write(Planner.Plan(estate, Before, Cancellation));
        var byHand = Before with { HoursByHand = new Dictionary<string, double> { ["B1"] = 9 } };
        Assert.Equal(Write(Planner.Plan(byHand, Cancellation)), Write(Planner.Plan(estate, byHand, Cancellation)));
        Assert.Equal(plain, Write(Planner.Plan(estate, Before, Cancellation)));

        var scarce = Before with { Sources = [Before.Sources[0] with { SeasonAllocationM3 = 900 }] };
        Assert.Equal(Write(Planner.Plan(scarce, Cancellation)), Write(Planner.Plan(Planner.Refit(estate, scarce, Cancellation), scarce, Cancellation)));
    }

    [Fact]
    public void Anything_else_that_changed_has_all_blocks_learned()
    {
        var estate = Planner.Fit(Before, Cancellation);
        PlanRequest[] others =
        [
            Before with { AsOf = Before.AsOf.AddDays(1) },
            Before with { Stations = [Before.Stations[0] with { Forecasts = [SmallEstate.Forecast(42)] }] },
            Before with { Valves = [Before.Valves[0] with { Applied = [] }, .. Before.Valves.Skip(1)] },
            Before with { Blocks = [Before.Blocks[0] with { RootDepthM = 0.6 }, .. Before.Blocks.Skip(1)] },
            WithDrySet(WithDrySet(WithDrySet(Before, "B3"), "B7"), "B8"),
        ];
        Assert.All(others, other => Assert.Equal(
            Write(Planner.Plan(other, Cancellation)),
            Write(Planner.Plan(Planner.Refit(estate, other, Cancellation), other, Cancellation))));
    }

    private static PlanRequest WithDrySet(PlanRequest request, string block) => request with
    {
        Blocks = [.. request.Blocks.Select(b => b.Code != block ? b : b with
        {
            Readings = [.. b.Readings, .. Enumerable.Range(0, 6).Select(leaf => new LeafReading(
                request.AsOf.AddHours(-17).AddMinutes(leaf), WaterPotentialMeasure.Leaf, b.Readings[^1].TensionBar + 3, "G0", $"{leaf}", LeafExposure.Sun, null, 20))],
        })],
    };

    // As if it had been read from the store anew: equal, and nothing shared.
    private static PlanRequest Copy(PlanRequest request) => request with
    {
        Blocks = [.. request.Blocks.Select(b => b with { Readings = [.. b.Readings], Stages = [.. b.Stages], Targets = [.. b.Targets] })],
        Stations = [.. request.Stations.Select(s => s with { Days = [.. s.Days], Forecasts = [.. s.Forecasts] })],
        Valves = [.. request.Valves.Select(v => v with { Applied = [.. v.Applied] })],
    };

    private static string Write(Plan plan) => PlanJson.Write(plan);

    private static Dictionary<string, List<TensionBand>> Outlooks(Plan plan) =>
        plan.Blocks.ToDictionary(b => b.Block, b => b.Outlook.Select(day => day.UnwateredBar).ToList());
}
