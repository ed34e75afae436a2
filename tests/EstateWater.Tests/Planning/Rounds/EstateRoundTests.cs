using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning;
using EstateWater.Planning.Rounds;

namespace EstateWater.Tests.Planning.Rounds;

public sealed class EstateRoundTests
{
    private static readonly RoundSettings Settings = new();

    [Fact]
    public void Stops_follow_each_other_within_the_sampling_window()
    {
        var round = Round(Scattered());
        Assert.NotEmpty(round.Stops);
        Assert.Equal(0, round.MinutesOver);
        Assert.True(round.Stops[0].From >= round.WindowFrom);
        Assert.True(round.Stops[^1].To <= round.WindowTo);
        foreach (var (one, next) in round.Stops.Zip(round.Stops.Skip(1)))
        {
            Assert.Equal(next.WalkM / Settings.WalkMPerMin, (next.From - one.To).TotalMinutes, 0.02);
        }

        Assert.Equal(Scattered().Blocks.Count, round.Stops.Count + round.Rest.Count);
        Assert.All(round.Stops, s => Assert.InRange(s.Leaves, 3, UsualLeaves.Most));
        Assert.All(round.Stops, s => Assert.EndsWith(".", s.Reason.ToString(), StringComparison.Ordinal));
    }

    [Fact]
    public void Reading_is_worth_more_where_the_band_straddles_the_ceiling()
    {
        // The same block with its ceiling within the band of its driest day, far above and far below.
        PlanRequest WithCeiling(double ceiling)
        {
            var request = SmallEstate.Request(blocks: 1);
            return request with { Blocks = [request.Blocks[0] with { Targets = [new StageTarget(1, 47, WaterPotentialMeasure.Leaf, 2, ceiling)] }] };
        }

        double Worth(double ceiling)
        {
            var round = Round(WithCeiling(ceiling));
            return round.Stops.Select(s => s.Worth).Concat(round.Rest.Select(r => r.Worth)).Single();
        }

        // From its middle to its driest tenth: where in there the choice hangs on the reading, the accepted chance decides.
        var driest = Planner.Plan(WithCeiling(40), TestContext.Current.CancellationToken).Blocks.Single().Outlook.MaxBy(d => d.UnwateredBar.P50)!.UnwateredBar;
        var there = new[] { 0, 0.5, 1 }.Max(part => Worth(driest.P50 + (part * (driest.P90 - driest.P50))));
        Assert.True(there > 3 * Worth(40), $"{there} against {Worth(40)}");
        Assert.True(there > 3 * Worth(4), $"{there} against {Worth(4)}");
    }

    // A ceiling of 40 bar leaves nothing to decide, one of 17 lies where the heat may take the others: without the doubt these are worth more.
    [Fact]
    public void A_block_whose_last_set_is_in_doubt_is_read_again_before_others()
    {
        var request = Scattered();
        PlanRequest With(double lastSetLaterH) => request with
        {
            Blocks = [.. request.Blocks.Select((b, i) => i != 0 ? b with { Targets = [new StageTarget(1, 47, WaterPotentialMeasure.Leaf, 2, 17)] } : b with
            {
                Targets = [new StageTarget(1, 47, WaterPotentialMeasure.Leaf, 2, 40)],
                Readings = [.. b.Readings.Select(r => r.TakenAt.Date == b.Readings.Max(o => o.TakenAt.Date) ? r with { TakenAt = r.TakenAt.AddHours(lastSetLaterH) } : r)],
            })],
        };
        static double Worth(RoundPlan round, Func<string, bool> blocks) =>
            round.Stops.Select(s => (s.Block, s.Worth)).Concat(round.Rest.Select(r => (r.Block, r.Worth))).Where(s => blocks(s.Block)).Max(s => s.Worth);
        Assert.True(Worth(Round(With(0)), b => b == "B1") < Worth(Round(With(0)), b => b != "B1"));
        var round = Round(With(3));
        Assert.True(Worth(round, b => b == "B1") > Worth(round, b => b != "B1"));
        var again = round.Stops.Single(s => s.Block == "B1");
        Assert.Equal("Read yesterday. Its last set is in doubt: read it again before it is believed.", again.Reason.ToString());
    }

    [Fact]
    public void What_the_manager_puts_in_and_takes_out_is_kept_to()
    {
        var request = Scattered();
        var round = Round(request);
        var (first, rest) = (round.Stops[0].Block, round.Rest[^1].Block);
        var changed = Round(request, added: [rest], dropped: [first]);
        Assert.Contains(rest, changed.Stops.Select(s => s.Block));
        Assert.DoesNotContain(first, changed.Stops.Select(s => s.Block));
        Assert.Contains(first, changed.Rest.Select(r => r.Block));
    }

    [Fact]
    public void A_block_with_a_predawn_target_or_read_that_day_is_left_out_and_says_why()
    {
        var request = SmallEstate.Request(blocks: 2);
        var noon = new DateTimeOffset(2026, 1, 20, 4, 0, 0, TimeSpan.FromHours(10.5));
        var round = Round(request with
        {
            Blocks =
            [
                request.Blocks[0] with { Targets = [new StageTarget(1, 47, WaterPotentialMeasure.Predawn, 2, 5)] },
                request.Blocks[1] with { Readings = [.. request.Blocks[1].Readings, .. Enumerable.Range(0, 4).Select(i => new LeafReading(noon.AddMinutes(i), WaterPotentialMeasure.Leaf, 13))] },
            ],
        });
        Assert.Empty(round.Stops);
        Assert.All(round.Rest, r => Assert.False(r.CanBeRead));
        Assert.Contains("before sunrise", round.Rest.Single(r => r.Block == "B1").Reason.ToString(), StringComparison.Ordinal);
        Assert.Contains("already", round.Rest.Single(r => r.Block == "B2").Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Tomorrow_can_be_planned_and_the_same_estate_gives_the_same_round()
    {
        var request = Scattered();
        Assert.Equal(SmallEstate.Today.AddDays(1), Round(request, days: 1).Date);
        Assert.Equal(Text(Round(request, days: 1)), Text(Round(request, days: 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Round(request, days: 10));
    }

    private static string Text(RoundPlan round) => System.Text.Json.JsonSerializer.Serialize(round);

    // Twelve blocks over two kilometres: more than a window holds.
    private static PlanRequest Scattered()
    {
        var request = SmallEstate.Request(blocks: 12);
        return request with { Blocks = [.. request.Blocks.Select((b, i) => b with { LongitudeDegrees = b.LongitudeDegrees + (0.005 * (i % 4)), LatitudeDegrees = b.LatitudeDegrees + (0.006 * (i / 4)) })] };
    }

    private static RoundPlan Round(PlanRequest request, int days = 0, string[]? added = null, string[]? dropped = null)
    {
        var fitted = Planner.Fit(request, TestContext.Current.CancellationToken);
        return EstateRound.Plan(fitted, Planner.Plan(fitted, request, TestContext.Current.CancellationToken), SmallEstate.Today.AddDays(days), Settings, added, dropped);
    }
}
