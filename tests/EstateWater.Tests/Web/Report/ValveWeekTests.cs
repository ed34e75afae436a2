using EstateWater.Data.Model;
using EstateWater.Web.Features.Report;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Tests.Web.Report;

/// <summary>One block of 8 ha: two emitters of 2.3 L/h on 2.4 m × 1.5 m give 1.2778 mm/h, 102.22 m³/h.</summary>
public sealed class ValveWeekTests
{
    private static readonly EstateSnapshot Snapshot = SmallEstate.Snapshot(SmallEstate.BlockPlanOf("B1"), SmallEstate.BlockPlanOf("B2", 2));

    [Fact]
    public void Hours_and_flow_count_where_no_meter_was_read()
    {
        var week = Of(Run(3, 6));
        Assert.Equal((1, 6.0, null), (week.Sets, week.Hours, week.MeteredM3));
        // By hand: 6 h · 102.22 m³/h and 6 h · 1.2778 mm/h.
        Assert.Equal(613.3, week.AppliedM3, 0.05);
        Assert.Equal(7.667, week.AppliedMm(Snapshot.Contents.Blocks[0]), 0.0005);
        Assert.Equal("6 h in one set", week.AppliedWords(UnitChoice.Metric));
    }

    [Fact]
    public void The_meter_counts_before_hours_and_a_large_difference_is_told()
    {
        var week = Of(Run(3, 6) with { MeterM3 = 300 }, Run(2, 3));
        // By hand: 300 m³ by the meter and 3 h · 102.22 m³/h; over 8 ha a tenth of a millimetre is 8 m³.
        Assert.Equal(606.7, week.AppliedM3, 0.05);
        Assert.Equal(7.583, week.AppliedMm(Snapshot.Contents.Blocks[0]), 0.0005);
        Assert.True(week.Meter!.IsLarge);
        Assert.StartsWith("51 % less than expected", week.Meter.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_the_past_seven_days_count() => Assert.Equal(0, Of(Run(8, 6), Run(-1, 6)).Sets);

    [Theory]
    [InlineData(6.5, "Published: 6.5 h in one set; 0.5 h less was run.")]
    [InlineData(6.0, "Published: 6 h in one set; run as published.")]
    [InlineData(4.0, "Published: 4 h in one set; 2 h more was run.")]
    public void What_was_run_stands_beside_what_was_published(double hours, string expected) =>
        Assert.Equal(expected, Of([Published(4, "V1", 3, hours)], Run(3, 6)).AgainstPlanned(UnitChoice.Metric));

    [Fact]
    public void A_week_without_a_plan_is_not_a_plan_without_water()
    {
        Assert.Equal("No plan was published for these days.", Of(Run(3, 6)).AgainstPlanned(UnitChoice.Metric));
        Assert.Equal("No plan was published for these days.", Of([Published(0, "V1", -1, 4)], Run(3, 6)).AgainstPlanned(UnitChoice.Metric));
        Assert.Equal("None of it was published.", Of([Published(4, "V2", 3, 4)], Run(3, 6)).AgainstPlanned(UnitChoice.Metric));
        Assert.Equal("None was published either.", Of([Published(4, "V2", 3, 4)]).AgainstPlanned(UnitChoice.Metric));
    }

    [Fact]
    public void Sets_of_a_plan_that_another_replaced_before_they_began_do_not_count() =>
        Assert.Equal(2, Of([Published(6, "V1", 3, 9), Published(5, "V1", 2, 2)]).PlannedHours);

    private static ValveWeek Of(params AppliedWater[] applied) => Of([], applied);

    private static ValveWeek Of(PublishedPlan[] plans, params AppliedWater[] applied) =>
        ValveWeek.All(Snapshot with { Contents = Snapshot.Contents with { AppliedWaters = applied } }, plans)["V1"];

    private static DateTimeOffset Evening(int daysAgo) => SmallEstate.AsOf.AddDays(-daysAgo).AddHours(14);

    private static AppliedWater Run(int daysAgo, double hours) => new() { ValveCode = "V1", StartedAt = Evening(daysAgo), Hours = hours };

    private static PublishedPlan Published(int daysAgo, string valve, int setDaysAgo, double hours) => new()
    {
        Id = 100 - daysAgo,
        AsOf = SmallEstate.AsOf.AddDays(-daysAgo),
        PublishedAt = SmallEstate.AsOf.AddDays(-daysAgo),
        PublishedBy = "Ana",
        PlanJson = "{}",
        Sets = [new PublishedSet { ValveCode = valve, SourceCode = "dam", Start = Evening(setDaysAgo), End = Evening(setDaysAgo).AddHours(hours), Hours = hours, FlowM3PerH = 100 }],
    };
}
