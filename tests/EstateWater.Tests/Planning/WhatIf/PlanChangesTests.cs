using EstateWater.Planning;
using EstateWater.Planning.WhatIf;
using EstateWater.Web.Features.Plan;

namespace EstateWater.Tests.Planning.WhatIf;

public sealed class PlanChangesTests(TwoSourceEstate estate) : IClassFixture<TwoSourceEstate>
{
    private static readonly DateOnly Last = SmallEstate.Today.AddDays(10);

    // The valve that gets most, so that there is something to lose.
    private PlannedSet Longest => estate.First.Sets.OrderByDescending(s => s.Hours).ThenBy(s => s.Valve, StringComparer.Ordinal).First();

    [Fact]
    public void The_estate_is_short_of_flow_and_waters_from_both_sources()
    {
        PlanLimits.AssertKept(estate.First, estate.Request);
        Assert.Equal(["bore", "dam"], estate.First.Sets.Select(s => s.Source).Distinct().Order());
        Assert.NotEmpty(estate.First.Unmet);
    }

    [Fact]
    public void A_closed_valve_gets_no_set_and_its_blocks_are_told_why()
    {
        var valve = Longest.Valve;
        var closed = new ValveClosed(valve, SmallEstate.Today, Last);
        var plan = estate.With(closed);
        PlanLimits.AssertKept(plan, estate.Request);
        Assert.DoesNotContain(plan.Sets, s => s.Valve == valve);
        var block = estate.Request.Blocks.Single(b => b.ValveCode == valve).Code;
        var unmet = Assert.Single(plan.Unmet, u => u.Block == block);
        Assert.True(unmet.Hours >= 1.5, $"{unmet.Hours} h unmet");
        Assert.StartsWith(closed.Words, unmet.Reason.ToString(), StringComparison.Ordinal);
        Assert.StartsWith("No water fits", plan.Blocks.Single(b => b.Block == block).Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Closing_a_valve_makes_no_other_block_worse_and_leaves_the_other_source_alone()
    {
        var request = TwoSourceEstate.Of(blocks: 8, maxFlowM3PerH: 500);
        var fitted = Planner.Fit(request, TestContext.Current.CancellationToken);
        var first = Planner.Plan(fitted, request, TestContext.Current.CancellationToken);
        foreach (var valve in first.Sets.Select(s => s.Valve).Distinct())
        {
            var plan = Planner.Plan(fitted, request with { Changes = [new ValveClosed(valve, SmallEstate.Today, Last)] }, TestContext.Current.CancellationToken);
            var mine = request.Blocks.Single(b => b.ValveCode == valve).Code;
            Assert.All(plan.Blocks.Where(b => b.Block != mine), b => Assert.True(
                Worst(b) <= Worst(first.Blocks.Single(f => f.Block == b.Block)), $"{b.Block} is worse off without {valve}"));

            // Its worst day may come before its water; the days together are drier.
            Assert.True(
                AllDays(plan.Blocks.Single(b => b.Block == mine)) > AllDays(first.Blocks.Single(b => b.Block == mine)),
                $"{mine} is no worse off without its own valve");
        }
    }

    [Fact]
    public void What_a_closed_valve_leaves_goes_to_those_who_lacked_it()
    {
        // Of the valve that opens first: nights after the heat would help nobody.
        var valve = estate.First.Sets[0].Valve;
        var plan = estate.With(new ValveClosed(valve, SmallEstate.Today, Last));
        double Others(Plan of) => of.Unmet.Where(u => estate.Request.Blocks.Single(b => b.Code == u.Block).ValveCode != valve).Sum(u => u.Hours);
        Assert.True(Others(plan) < Others(estate.First), $"{Others(plan)} h unmet, {Others(estate.First)} before");
    }

    [Fact]
    public void A_valve_closed_for_some_nights_opens_on_others()
    {
        // Where there is flow for all; else the others may need the other nights more.
        var request = TwoSourceEstate.Of(blocks: 8, maxFlowM3PerH: 500);
        var fitted = Planner.Fit(request, TestContext.Current.CancellationToken);
        foreach (var set in Planner.Plan(fitted, request, TestContext.Current.CancellationToken).Sets.DistinctBy(s => s.Valve))
        {
            var night = PlanLimits.NightOf(set);
            var changed = request with { Changes = [new ValveClosed(set.Valve, night, night)] };
            var plan = Planner.Plan(fitted, changed, TestContext.Current.CancellationToken);
            PlanLimits.AssertKept(plan, changed);
            Assert.Contains(plan.Sets, s => s.Valve == set.Valve);
            Assert.DoesNotContain(plan.Sets, s => s.Valve == set.Valve && PlanLimits.NightOf(s) == night);
        }
    }

    [Theory]
    [InlineData("dam", 0)]
    [InlineData("dam", 2)]
    [InlineData("bore", 1)]
    [InlineData("bore", 4)]
    public void A_lost_source_has_no_set_in_these_nights_and_the_other_keeps_its_own(string source, int from)
    {
        var (first, last) = (SmallEstate.Today.AddDays(from), SmallEstate.Today.AddDays(from + 2));
        var away = new SourceOut(source, first, last);
        var plan = estate.With(away);
        PlanLimits.AssertKept(plan, estate.Request);
        Assert.DoesNotContain(plan.Sets, s => s.Source == source && PlanLimits.NightOf(s) >= first && PlanLimits.NightOf(s) <= last);
        Assert.Contains(plan.Sets, s => s.Source == source);
        Assert.Equal(estate.First.Sets.Where(s => s.Source != source), plan.Sets.Where(s => s.Source != source));
        Assert.Contains(plan.Unmet, u => u.Reason.ToString().StartsWith(away.Words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_source_out_for_the_whole_time_leaves_all_its_hours_unmet()
    {
        var plan = estate.With(new SourceOut("dam", SmallEstate.Today, Last));
        Assert.DoesNotContain(plan.Sets, s => s.Source == "dam");
        var before = estate.First.Sets.Where(s => s.Source == "dam").Sum(s => s.Hours) + estate.First.Unmet.Where(OnDam).Sum(u => u.Hours);
        Assert.True(plan.Unmet.Where(OnDam).Sum(u => u.Hours) >= before, "what was planned and what did not fit is unmet now");
        bool OnDam(UnmetNeed unmet) => estate.Request.Valves.Single(v => v.Code == estate.Request.Blocks.Single(b => b.Code == unmet.Block).ValveCode).SourceCode == "dam";
    }

    [Fact]
    public void A_pinned_set_stays_and_the_others_make_way()
    {
        foreach (var set in estate.First.Sets)
        {
            var pin = new SetPinned(set.Valve, Night(3, 23, 30), 4.5);
            var plan = estate.With(pin);
            PlanLimits.AssertKept(plan, estate.Request);
            var mine = Assert.Single(plan.Sets, s => s.Valve == set.Valve);
            Assert.Equal((pin.Start, pin.Hours), (mine.Start, mine.Hours));
            Assert.Equal(estate.First.Sets.Where(s => s.Source != set.Source), plan.Sets.Where(s => s.Source != set.Source));
        }
    }

    [Fact]
    public void Many_pinned_sets_stay_where_flow_is_short()
    {
        var pins = estate.Request.Valves.Select((v, i) => new SetPinned(v.Code, Night(2 + (i / 4), 20 + (i % 2), 15), 3)).ToArray();
        var fitting = pins.Where((_, i) => i is 0 or 1 or 4 or 5).ToArray<PlanChange>();
        var plan = estate.With(fitting);
        PlanLimits.AssertKept(plan, estate.Request);
        Assert.All(fitting.Cast<SetPinned>(), p => Assert.Contains(plan.Sets, s => (s.Valve, s.Start, s.Hours) == (p.Valve, p.Start, p.Hours)));
        Assert.Contains(plan.Sets, s => !fitting.Cast<SetPinned>().Any(p => p.Valve == s.Valve));
    }

    [Fact]
    public void The_sets_as_planned_can_all_be_pinned_and_are_the_same_plan()
    {
        var plan = estate.With([.. estate.First.Sets.Select(s => new SetPinned(s.Valve, s.Start, s.Hours))]);
        Assert.Equal(
            estate.First.Sets.Select(s => (s.Valve, s.Start, s.End, s.VolumeM3)),
            plan.Sets.Select(s => (s.Valve, s.Start, s.End, s.VolumeM3)).Where(s => estate.First.Sets.Any(f => f.Valve == s.Valve)));
    }

    [Fact]
    public void Hours_by_hand_that_find_no_night_are_unmet()
    {
        var request = estate.Request with
        {
            HoursByHand = new Dictionary<string, double> { ["B1"] = 5 },
            Changes = [new ValveClosed("V1", SmallEstate.Today, Last)],
        };
        var plan = Planner.Plan(estate.Fitted, request, TestContext.Current.CancellationToken);
        Assert.Equal(5, Assert.Single(plan.Unmet, u => u.Block == "B1").Hours);
        Assert.Equal(0, plan.Blocks.Single(b => b.Block == "B1").Hours);
    }

    [Fact]
    public void The_same_changes_give_the_same_plan_and_taking_them_back_gives_the_first_byte_for_byte()
    {
        PlanChange[] changes =
        [
            new SourceOut("dam", SmallEstate.Today.AddDays(1), SmallEstate.Today.AddDays(3)),
            new ValveClosed("V4", SmallEstate.Today, SmallEstate.Today.AddDays(2)),
            new SetPinned("V2", Night(4, 22, 0), 6),
        ];
        Assert.Equal(PlanJson.Write(estate.With(changes)), PlanJson.Write(estate.With(changes)));
        var fresh = Planner.Plan(estate.Request with { Changes = changes }, TestContext.Current.CancellationToken);
        Assert.Equal(PlanJson.Write(fresh), PlanJson.Write(estate.With(changes)));
        Assert.NotEqual(PlanJson.Write(estate.First), PlanJson.Write(estate.With(changes)));
        Assert.Equal(PlanJson.Write(estate.First), PlanJson.Write(estate.With()));
    }

    [Fact]
    public void The_document_tells_what_was_changed_and_is_silent_where_nothing_was()
    {
        var changed = PlanJson.Write(estate.With(new ValveClosed("V3", SmallEstate.Today, SmallEstate.Today.AddDays(3))));
        Assert.Contains("\"V3 closed from the night of Tue 20 Jan to the night of Fri 23 Jan\"", changed, StringComparison.Ordinal);
        Assert.Equal(["V3 closed from the night of Tue 20 Jan to the night of Fri 23 Jan"], PlanJson.Read(changed).ChangesByHand);
        Assert.DoesNotContain("changes_by_hand", PlanJson.Write(estate.First), StringComparison.Ordinal);
    }

    private static double AllDays(BlockPlan block) => block.Outlook.Sum(day => day.PlannedBar.P50);

    private static double Worst(BlockPlan block) => block.Risks.Skip(1).Max(r => r.ChancePastCeiling);

    private static DateTimeOffset Night(int day, int hour, int minute) =>
        new(SmallEstate.Today.AddDays(day).ToDateTime(new TimeOnly(hour, minute)), TimeSpan.FromHours(10.5));
}
