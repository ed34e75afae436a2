using CsCheck;
using EstateWater.Planning;
using EstateWater.Web.Features.Week;

namespace EstateWater.Tests.Web.Week;

public sealed class SetTimelineTests
{
    [Fact]
    public void A_set_after_midnight_belongs_to_the_night_that_began_the_day_before()
    {
        var timeline = SetTimeline.Of([Samples.Set("V01", 23, 3, 7)], [Samples.Bore], Samples.Zone);
        Assert.Equal([new DateOnly(2025, 1, 22)], timeline.Nights);
        var bar = Assert.Single(timeline.Rows[0].Nights[0].Bars);

        // The window runs from 20:00 for 14 hours: 03:00 is 7 hours in, 10:00 its end.
        Assert.Equal(0.5, bar.Left, 1e-12);
        Assert.Equal(1, bar.Right, 1e-12);
    }

    [Fact]
    public void Nights_without_sets_keep_their_column()
    {
        var timeline = SetTimeline.Of([Samples.Set("V01", 22, 20, 2), Samples.Set("V01", 24, 20, 2)], [Samples.Bore], Samples.Zone);
        Assert.Equal([22, 23, 24], timeline.Nights.Select(n => n.Day));
        Assert.Empty(timeline.Rows[0].Nights[1].Bars);
    }

    [Fact]
    public void Nights_ahead_have_a_column_also_where_nothing_runs_and_know_their_hours()
    {
        var timeline = SetTimeline.Of([Samples.Set("V01", 23, 20, 2)], [Samples.Bore], Samples.Zone, [new DateOnly(2025, 1, 22), new DateOnly(2025, 1, 25)]);
        Assert.Equal([22, 23, 24, 25], timeline.Nights.Select(n => n.Day));

        // 20:00 to 10:00 has 14 hours, 56 quarters.
        Assert.Equal([56, 56, 56, 56], timeline.Rows[0].Nights.Select(n => n.Quarters));
        Assert.Equal(8, timeline.Rows[0].Nights[1].QuarterOf(Samples.Set("V01", 23, 22, 1).Start));
    }

    [Fact]
    public void Flows_add_up_while_sets_run_together()
    {
        var timeline = SetTimeline.Of(
            [Samples.Set("V01", 22, 20, 7, flow: 30), Samples.Set("V02", 23, 0, 3, flow: 45)], [Samples.Bore], Samples.Zone);
        Assert.Equal([30, 75, 0], timeline.Rows[0].Nights[0].Flows.Select(f => f.FlowM3PerH));
        Assert.Equal(75, timeline.Rows[0].PeakFlowM3PerH);
    }

    [Fact]
    public void A_source_that_may_run_all_day_carries_a_set_into_the_next_day()
    {
        var source = Samples.Bore with { DailyFrom = new TimeOnly(6, 0), DailyTo = new TimeOnly(6, 0) };
        var timeline = SetTimeline.Of([Samples.Set("V01", 22, 18, 18)], [source], Samples.Zone);
        Assert.Equal(2, timeline.Nights.Count);
        var (first, second) = (timeline.Rows[0].Nights[0].Bars.Single(), timeline.Rows[0].Nights[1].Bars.Single());
        Assert.Equal((0.5, 1), (first.Left, first.Right));
        Assert.Equal((0, 0.25), (second.Left, second.Right));
    }

    [Fact]
    public void A_night_with_a_clock_change_is_as_long_as_it_really_is()
    {
        // 5 October 2025, 02:00 becomes 03:00 in Sydney: 20:00 to 10:00 has 13 hours.
        var sydney = TimeZoneInfo.FindSystemTimeZoneById("Australia/Sydney");
        var start = new DateTimeOffset(2025, 10, 4, 20, 0, 0, TimeSpan.FromHours(10));
        var set = Samples.Set("V01", 1, 0, 6.5) with { Start = start, End = start.AddHours(6.5) };
        var bar = SetTimeline.Of([set], [Samples.Bore], sydney).Rows[0].Nights[0].Bars.Single();
        Assert.Equal(0.5, bar.Right, 1e-12);
    }

    [Fact]
    public void A_bar_shorter_than_its_name_keeps_room_for_it()
    {
        // Half an hour, another that follows at once, and an hour at the end of the night, whose name stands before it.
        var bars = SetTimeline.Of(
            [Samples.Set("V01", 22, 20, 0.5), Samples.Set("V02", 22, 21, 12), Samples.Set("V03", 23, 9, 1)], [Samples.Bore], Samples.Zone, nameOf: valve => valve + " · A1").Rows[0].Nights[0].Bars;
        Assert.Equal([0, 1, 2], bars.Select(b => b.Lane));
        Assert.Equal([bars[0].Right, bars[1].Left], bars.Take(2).Select(b => b.NameLeft));
        Assert.InRange(bars[2].NameLeft, 0.1, bars[2].Left - 0.3);
    }

    [Fact]
    public void Bars_and_names_of_one_lane_never_overlap() =>
        Gen.Select(Gen.Int[0, 13], Gen.Int[1, 8]).Array[1, 30].Sample(times =>
        {
            var sets = times
                .Select((t, i) => Samples.Set($"V{i}", 22, 20, Math.Min(t.Item2, 14 - t.Item1)) is var set
                    ? set with { Start = set.Start.AddHours(t.Item1), End = set.End.AddHours(t.Item1) }
                    : set)
                .ToList();
            var timeline = SetTimeline.Of(sets, [Samples.Bore], Samples.Zone);
            var bars = timeline.Rows[0].Nights.SelectMany(n => n.Bars).ToList();
            Assert.Equal(sets.Count, bars.Count);
            foreach (var lane in bars.GroupBy(b => b.Lane).Select(l => l.OrderBy(b => b.Left).ToList()))
            {
                Assert.All(lane.Zip(lane.Skip(1)), pair => Assert.True(Math.Max(pair.First.Right, pair.First.NameLeft) <= Math.Min(pair.Second.Left, pair.Second.NameLeft) + 1e-12));
            }
        });
}
