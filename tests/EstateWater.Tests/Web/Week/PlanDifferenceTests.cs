using EstateWater.Data.Model;
using EstateWater.Web.Features.Week;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.Week;

public sealed class PlanDifferenceTests
{
    [Fact]
    public void The_same_sets_are_no_difference_whatever_zone_they_were_stored_in()
    {
        var difference = PlanDifference.Between(Samples.Plan(), Published(("V01", 22, 20, 6), ("V02", 22, 20, 4)), Samples.Zone);
        Assert.Empty(difference.Changes);
        Assert.Equal("Nothing differs from the last published plan.", difference.Summary(UnitChoice.Metric));
    }

    [Fact]
    public void Added_changed_and_taken_out_sets_are_told_apart()
    {
        var difference = PlanDifference.Between(Samples.Plan(), Published(("V01", 22, 22, 3), ("V09", 23, 20, 2)), Samples.Zone);
        Assert.Equal("1 set added, 1 set taken out, 1 set changed, 5 h more.", difference.Summary(UnitChoice.Metric));
        Assert.Equal(150, difference.M3More);
        var changed = difference.Changes.Single(c => c is { Before: not null, After: not null });
        Assert.Equal("Wed 22 Jan 22:00, 3 h", changed.Before!.Words(UnitChoice.Metric));
        Assert.Equal("Wed 22 Jan 20:00, 6 h", changed.After!.Words(UnitChoice.Metric));
    }

    [Fact]
    public void Sets_that_began_before_the_plan_are_history()
    {
        var difference = PlanDifference.Between(Samples.Plan(), Published(("V07", 21, 20, 5), ("V01", 22, 20, 6), ("V02", 22, 20, 4)), Samples.Zone);
        Assert.Empty(difference.Changes);
    }

    [Fact]
    public void Without_a_published_plan_every_set_is_new() =>
        Assert.Equal("2 sets added, 10 h more.", PlanDifference.Between(Samples.Plan(), null, Samples.Zone).Summary(UnitChoice.Metric));

    [Fact]
    public void Moving_water_from_one_valve_to_another_keeps_the_hours()
    {
        var difference = PlanDifference.Between(Samples.Plan(), Published(("V01", 22, 20, 4), ("V02", 22, 20, 6)), Samples.Zone);
        Assert.Equal("2 sets changed, the same hours in all.", difference.Summary(UnitChoice.Metric));
    }

    // Stored instants come back in UTC.
    private static PublishedPlan Published(params (string Valve, int Day, int Hour, double Hours)[] sets) => new()
    {
        AsOf = Samples.AsOf,
        PublishedAt = Samples.AsOf.ToUniversalTime(),
        PublishedBy = "Ana",
        PlanJson = "{}",
        Sets = sets
            .Select(s => Samples.Set(s.Valve, s.Day, s.Hour, s.Hours))
            .Select(s => new PublishedSet
            {
                ValveCode = s.Valve,
                SourceCode = s.Source,
                Start = s.Start.ToUniversalTime(),
                End = s.End.ToUniversalTime(),
                Hours = s.Hours,
                FlowM3PerH = s.FlowM3PerH,
            })
            .ToList(),
    };
}
