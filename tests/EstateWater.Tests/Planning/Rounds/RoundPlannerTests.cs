using EstateWater.Planning.Rounds;

namespace EstateWater.Tests.Planning.Rounds;

public sealed class RoundPlannerTests
{
    private const double MetresPerMinute = 50;

    [Fact]
    public void A_round_fits_its_time_and_counts_reading_and_walking()
    {
        for (var estate = 0; estate < 30; estate++)
        {
            var blocks = Random(estate, 40, 2500);
            var round = RoundPlanner.Plan(blocks, 150, MetresPerMinute);
            Assert.NotEmpty(round.Stops);
            Assert.Equal(Minutes(round.Stops), round.Minutes, 9);
            Assert.True(round.Minutes <= 150 + 1e-6);
            Assert.Equal(round.Stops.Count, round.Stops.Distinct().Count());
        }
    }

    [Fact]
    public void On_small_estates_it_is_as_good_as_every_order_tried()
    {
        var shares = new List<double>();
        for (var estate = 0; estate < 120; estate++)
        {
            var blocks = Random(estate, 6, 2000);
            var best = BestOfAll(blocks, 60);
            var found = RoundPlanner.Plan(blocks, 60, MetresPerMinute);
            Assert.True(found.Minutes <= 60 + 1e-6);
            shares.Add(best > 0 ? found.Worth / best : 1);
        }

        // It may miss the best by a little, on few estates.
        Assert.True(shares.Min() >= 0.95, $"worst {shares.Min()}");
        Assert.True(shares.Average() >= 0.995, $"mean {shares.Average()}");
    }

    [Fact]
    public void What_must_be_read_is_read_though_it_does_not_fit()
    {
        var blocks = Random(3, 12, 1500);
        var must = blocks.OrderBy(b => b.Worth).Take(2).Select(b => b.Block).ToHashSet();
        Assert.True(RoundPlanner.Plan(blocks, 90, MetresPerMinute, must).Stops.Select(s => s.Block).ToHashSet().IsSupersetOf(must));
        Assert.Equal(must, RoundPlanner.Plan(blocks, 1, MetresPerMinute, must).Stops.Select(s => s.Block).ToHashSet());
    }

    [Fact]
    public void The_order_of_the_candidates_changes_nothing()
    {
        var blocks = Random(7, 30, 2500);
        var reversed = blocks.Reverse().ToList();
        Assert.Equal(RoundPlanner.Plan(blocks, 150, MetresPerMinute).Stops, RoundPlanner.Plan(reversed, 150, MetresPerMinute).Stops);
    }

    [Fact]
    public void Blocks_in_a_line_are_walked_along_the_line()
    {
        int[] places = [300, 0, 100, 400, 200];
        var line = places.Select(east => new RoundCandidate($"B{east}", east, 0, 1, 5)).ToList();
        var walked = RoundPlanner.Plan(line, 60, MetresPerMinute).Stops.Select(s => s.EastM).ToList();
        Assert.Equal(5, walked.Count);
        Assert.True(walked.SequenceEqual(walked.Order()) || walked.SequenceEqual(walked.OrderDescending()), string.Join(' ', walked));
    }

    [Fact]
    public void With_nothing_to_read_or_no_time_there_is_no_round()
    {
        Assert.Empty(RoundPlanner.Plan([], 150, MetresPerMinute).Stops);
        Assert.Empty(RoundPlanner.Plan(Random(1, 5, 1000), 2, MetresPerMinute).Stops);
        Assert.Throws<ArgumentOutOfRangeException>(() => RoundPlanner.Plan([], 150, 0));
    }

    private static IReadOnlyList<RoundCandidate> Random(int seed, int count, double sideM)
    {
        var numbers = new Random(seed);
        return [.. Enumerable.Range(0, count).Select(i => new RoundCandidate(
            $"B{i:00}", sideM * numbers.NextDouble(), sideM * numbers.NextDouble(), Math.Pow(numbers.NextDouble(), 3), 8 + (10 * numbers.NextDouble())))];
    }

    private static double BestOfAll(IReadOnlyList<RoundCandidate> blocks, double minutes)
    {
        var best = 0.0;
        void Go(List<RoundCandidate> path)
        {
            if (Minutes(path) > minutes)
            {
                return;
            }

            best = Math.Max(best, path.Sum(s => s.Worth));
            foreach (var next in blocks.Where(b => !path.Contains(b)))
            {
                Go([.. path, next]);
            }
        }

        Go([]);
        return best;
    }

    private static double Minutes(IReadOnlyList<RoundCandidate> path) =>
        path.Sum(s => s.MinutesThere)
        + path.Zip(path.Skip(1), (a, b) => Math.Sqrt(Math.Pow(a.EastM - b.EastM, 2) + Math.Pow(a.NorthM - b.NorthM, 2)) / MetresPerMinute).Sum();
}
