using EstateWater.Planning;
using EstateWater.Planning.WhatIf;

namespace EstateWater.Tests.Planning.WhatIf;

public sealed class PlanConsequencesTests(TwoSourceEstate estate) : IClassFixture<TwoSourceEstate>
{
    private static readonly DateOnly Today = SmallEstate.Today;

    [Fact]
    public void Nothing_follows_from_nothing()
    {
        var none = PlanConsequences.Between(estate.First, estate.With());
        Assert.Empty(none.Blocks);
        Assert.Empty(none.Sources);
        Assert.Equal((0, 0), (none.HoursMore, none.M3More));
    }

    [Fact]
    public void A_closed_valve_shows_what_its_block_loses()
    {
        var valve = estate.First.Sets.OrderByDescending(s => s.Hours).First().Valve;
        var block = estate.Request.Blocks.Single(b => b.ValveCode == valve).Code;
        var after = estate.With(new ValveClosed(valve, Today, Today.AddDays(10)));
        var consequences = PlanConsequences.Between(estate.First, after);
        var mine = Assert.Single(consequences.Blocks, b => b.Block == block);
        Assert.Equal(estate.First.Blocks.Single(b => b.Block == block).Hours, mine.Before.Hours);
        Assert.Equal(0, mine.After.Hours);
        Assert.True(mine.After.Chance > mine.Before.Chance, $"{mine}");
        Assert.True(mine.After.UnmetHours > mine.Before.UnmetHours, $"{mine}");
        Assert.Equal(after.Sets.Sum(s => s.Hours) - estate.First.Sets.Sum(s => s.Hours), consequences.HoursMore, 9);
        Assert.Equal(after.Sets.Sum(s => s.VolumeM3) - estate.First.Sets.Sum(s => s.VolumeM3), consequences.M3More, tolerance: 0.5);
    }

    [Fact]
    public void The_chance_is_of_the_hot_days_and_days_past_are_those_more_likely_than_not()
    {
        var before = With(Risk(0, 0.9), Risk(1, 0.1), Risk(2, 0.3, hot: true), Risk(3, 0.2));
        var after = With(Risk(0, 0.9), Risk(1, 0.1), Risk(2, 0.6, hot: true), Risk(3, 0.8));
        var block = Assert.Single(PlanConsequences.Between(before, after).Blocks);
        Assert.Equal((0.3, 0, null), (block.Before.Chance, block.Before.DaysPast, block.Before.FirstDayPast));
        Assert.Equal((0.6, 2, Today.AddDays(2)), (block.After.Chance, block.After.DaysPast, block.After.FirstDayPast));
    }

    [Fact]
    public void Without_heat_the_chance_is_of_the_worst_day()
    {
        var block = Assert.Single(PlanConsequences.Between(With(Risk(0, 0), Risk(1, 0.1), Risk(2, 0.4)), With(Risk(0, 0), Risk(1, 0.2), Risk(2, 0.45))).Blocks);
        Assert.Equal((0.4, 0.45), (block.Before.Chance, block.After.Chance));
    }

    [Fact]
    public void Worse_is_past_now_and_not_before_or_sooner_than_before()
    {
        var calm = With(Risk(0, 0), Risk(1, 0), Risk(2, 0.2));
        var late = With(Risk(0, 0), Risk(1, 0), Risk(2, 0.9));
        var soon = With(Risk(0, 0), Risk(1, 0.7), Risk(2, 0.9));
        Assert.Single(PlanConsequences.Between(calm, late).Worse);
        Assert.Single(PlanConsequences.Between(late, soon).Worse);
        Assert.Empty(PlanConsequences.Between(soon, late).Worse);
        Assert.Empty(PlanConsequences.Between(late, calm).Worse);
        Assert.Single(PlanConsequences.Between(late, calm).Spared);
        Assert.Empty(PlanConsequences.Between(calm, late).Spared);
    }

    [Fact]
    public void The_peak_is_the_middle_of_the_driest_day_after_today()
    {
        Plan Peaks(params double[] bars) => With(Risk(0, 0)) is var plan
            ? plan with { Blocks = [plan.Blocks[0] with { Outlook = [.. bars.Select((bar, day) => new OutlookDay(Today.AddDays(day), new(8, 9, 10), new(bar - 1, bar, bar + 1)))] }] }
            : plan;
        var block = Assert.Single(PlanConsequences.Between(Peaks(19, 14.2, 15.04), Peaks(19, 16.26, 15)).Blocks);
        Assert.Equal((15.0, 16.3), (block.Before.PeakBar, block.After.PeakBar));
        Assert.Equal(1.3, block.PeakMoreBar, 9);
    }

    // The planner's own chances: none before the ceiling is near, more where less water is given.
    [Fact]
    public void Risks_are_chances_by_day_of_the_outlook_and_agree_with_its_bands()
    {
        Assert.All(estate.First.Blocks, b =>
        {
            Assert.Equal(b.Outlook.Select(o => o.Date), b.Risks.Select(r => r.Date));
            Assert.All(b.Outlook.Zip(b.Risks), pair =>
            {
                var (day, risk) = pair;
                Assert.InRange(risk.ChancePastCeiling, 0, 1);
                Assert.True(day.PlannedBar.P90 >= b.CeilingBar + 0.02 || risk.ChancePastCeiling <= 0.11, $"{b.Block} {risk}");
                Assert.True(day.PlannedBar.P10 <= b.CeilingBar - 0.02 || risk.ChancePastCeiling >= 0.89, $"{b.Block} {risk}");
            });
            Assert.Equal(Enumerable.Range(5, 4).Select(Today.AddDays), b.Risks.Where(r => r.InHeat).Select(r => r.Date));
        });
    }

    private Plan With(params DayRisk[] risks) => estate.First with { Blocks = [estate.First.Blocks[0] with { Risks = risks }] };

    private static DayRisk Risk(int day, double chance, bool hot = false) => new(Today.AddDays(day), chance, hot);
}
