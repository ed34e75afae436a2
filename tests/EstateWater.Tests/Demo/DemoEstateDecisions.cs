using EstateWater.Data.Folder;
using EstateWater.Planning;
using EstateWater.Simulation.Demo;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Tests.Demo;

/// <summary>The plan of the demo estate takes the decisions its troubles call for.</summary>
public sealed class DemoEstateDecisions
{
    private static readonly Plan Plan = Planner.Plan(PlanRequests.From(EstateFolder.Read(DemoFolderTests.Folder()).Contents!, DemoEstate.Clock));

    [Fact]
    public void The_heat_ahead_is_seen_five_days_before_it_comes()
    {
        var spell = Assert.Single(Plan.HeatSpells, s => s.Station == "creek");
        Assert.Equal(DemoEstate.ClockDay.AddDays(5), spell.From);
        Assert.True(spell.PeakTMaxC >= 38);
    }

    [Fact]
    public void Thirsty_blocks_are_watered_before_the_heat()
    {
        var heat = DemoEstate.Site.At(DemoEstate.ClockDay.AddDays(5), 12);
        Assert.All(DemoEstate.Thirsty, code =>
        {
            Assert.True(Block(code).Hours > 0, code);
            Assert.Contains(Plan.Sets, s => s.Valve == ValveOf(code) && s.Start < heat);
        });
    }

    [Fact]
    public void Wet_blocks_are_left_dry() =>
        Assert.All(DemoEstate.TooWet, code =>
        {
            Assert.Equal(0, Block(code).Hours);
            Assert.DoesNotContain(Plan.Sets, s => s.Valve == ValveOf(code));
            Assert.Contains("under its floor", Block(code).Reason.ToString(), StringComparison.Ordinal);
        });

    [Fact]
    public void Bad_readings_are_named_one_by_one()
    {
        var checks = string.Join(" ", Block(DemoEstate.BadlyRead).Latest!.Checks);
        Assert.Contains("after solar noon", checks, StringComparison.Ordinal);
        Assert.Contains("from cut to chamber", checks, StringComparison.Ordinal);
        Assert.Contains("shade", checks, StringComparison.Ordinal);
        Assert.Contains("spread", checks, StringComparison.Ordinal);
    }

    [Fact]
    public void Blocked_valve_is_mentioned() =>
        Assert.Contains($"valve {ValveOf(DemoEstate.BehindBlockedValve)}", Block(DemoEstate.BehindBlockedValve).Reason.ToString(), StringComparison.Ordinal);

    [Fact]
    public void Sudden_jump_is_found() =>
        Assert.Contains(Block(DemoEstate.BurstLine).Latest!.Checks, c => c.ToString().Contains("drier than the set before", StringComparison.Ordinal));

    [Fact]
    public void Unread_block_says_so_and_keeps_a_wide_band()
    {
        var block = Block(DemoEstate.NewlyPlanted);
        Assert.Null(block.Latest);
        Assert.Contains("not read yet", block.Reason.ToString(), StringComparison.Ordinal);
        var (unread, read) = (block.Outlook[7].UnwateredBar, Block("A1").Outlook[7].UnwateredBar);
        Assert.True((unread.P90 - unread.P10) / unread.P50 > (read.P90 - read.P10) / read.P50);
    }

    private static BlockPlan Block(string code) => Plan.Blocks.First(b => b.Block == code);

    private static string ValveOf(string code) => DemoEstate.Spec().Blocks.First(b => b.Code == code).Valve;
}
