using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;
using EstateWater.Web.Features.Estate;
using EstateWater.Web.Features.Readings;

namespace EstateWater.Tests.Web.EstatePages;

public sealed class SuddenRisesTests
{
    private static readonly DateOnly Today = new(2025, 1, 22);

    [Fact]
    public void A_steady_block_that_jumps_alone_is_found()
    {
        var rise = Assert.Single(Find(Estate(("A", [9, 9, 9, 13]))));
        Assert.Equal("A", rise.BlockCode);
        Assert.Equal(9, rise.FromBar, 6);
        Assert.Equal(13, rise.ToBar, 6);
        Assert.Equal(4, rise.OverTrendBar, 6); // a level line leads to 9
        Assert.Equal(0.2, rise.NeighboursBar, 6);
        // Neighbours changed by 0.2 alike, so they count as spread by 0.3 bar: (4 − 0.2) ∕ 0.3.
        Assert.Equal(3.8 / 0.3, rise.RobustZ, 6);
    }

    [Fact]
    public void A_rise_that_all_blocks_share_is_weather()
    {
        var shared = Neighbours.Select(code => (code, new[] { 9.0, 9, 9, 13 })).Append(("A", [9, 9, 9, 13]));
        Assert.Empty(Find([.. shared.SelectMany(block => Sets(block.Item1, block.Item2))]));
    }

    [Fact]
    public void A_block_that_goes_on_rising_as_before_did_not_jump() =>
        Assert.Empty(Find(Estate(("A", [6, 8, 10, 12]))));

    [Fact]
    public void A_rise_within_the_error_of_set_means_is_none() =>
        // Three evenly spaced sets lead on with a variance of 1 + 1∕3 + 4∕2: three errors of 0.3 bar are 1.64 bar.
        Assert.Empty(Find(Estate(("A", [9, 9, 9, 10.6]))));

    [Fact]
    public void A_rise_beyond_that_error_counts() =>
        Assert.Single(Find(Estate(("A", [9, 9, 9, 10.7]))));

    [Fact]
    public void Two_sets_before_make_no_trend() =>
        Assert.Empty(Find(Estate(("A", [9, 9, 13]))));

    [Fact]
    public void Sets_of_another_season_make_no_trend()
    {
        var sets = Estate(("A", [9, 9, 9, 13]));
        Assert.Empty(Find(sets.Select(set => set.BlockCode == "A" && set.Date < Today.AddDays(-15) ? set with { Date = set.Date.AddDays(-200) } : set)));
    }

    [Fact]
    public void Without_neighbours_on_the_same_station_nothing_is_said() =>
        Assert.Empty(SuddenRises.Find(
            Estate(("A", [9, 9, 9, 13])), Stations("other"), Today));

    [Fact]
    public void Neighbours_of_another_measure_are_not_compared() =>
        Assert.Empty(Find([.. Estate().Concat(Sets("A", [9, 9, 9, 13], WaterPotentialMeasure.Stem))]));

    [Fact]
    public void An_old_jump_is_no_news() =>
        Assert.Empty(SuddenRises.Find(Estate(("A", [9, 9, 9, 13])), Stations("home"), Today.AddDays(11)));

    [Fact]
    public void One_leaf_unlike_the_others_makes_no_jump()
    {
        var sets = Estate(("A", [9, 9, 9, 9.2])).ToList();
        var latest = sets.FindLastIndex(set => set.BlockCode == "A");
        var leaves = sets[latest].Leaves;
        sets[latest] = sets[latest] with { Leaves = [.. leaves.Skip(1), Leaf("A", sets[latest].Date, 40, WaterPotentialMeasure.Leaf, 20)] };
        Assert.Empty(Find(sets));
    }

    private static readonly string[] Neighbours = ["N1", "N2", "N3", "N4", "N5"];

    private static IReadOnlyList<SuddenRise> Find(IEnumerable<ReadingSet> sets) => SuddenRises.Find(sets, Stations("home"), Today);

    private static Dictionary<string, string> Stations(string ofA) =>
        Neighbours.ToDictionary(code => code, _ => "home").Append(new("A", ofA)).ToDictionary();

    private static List<ReadingSet> Estate(params (string Code, double[] Bars)[] blocks) =>
        [.. Neighbours.SelectMany(code => Sets(code, [9, 9, 9, 9.2])).Concat(blocks.SelectMany(block => Sets(block.Code, block.Bars)))];

    /// <summary>Weekly sets, the last two days ago, each of five leaves 0.1 bar apart round the mean.</summary>
    private static IEnumerable<ReadingSet> Sets(string code, double[] bars, WaterPotentialMeasure measure = WaterPotentialMeasure.Leaf) =>
        bars.Select((bar, i) =>
        {
            var day = Today.AddDays(-2 - 7 * (bars.Length - 1 - i));
            return new ReadingSet(code, measure, day, [.. Enumerable.Range(0, 5).Select(leaf => Leaf(code, day, bar + 0.1 * (leaf - 2), measure, leaf))]);
        });

    private static ChamberReading Leaf(string code, DateOnly day, double bar, WaterPotentialMeasure measure, int minute) => new()
    {
        BlockCode = code,
        TakenAt = new DateTimeOffset(day.ToDateTime(new TimeOnly(13, minute)), TimeSpan.FromHours(2)),
        Measure = measure,
        TensionBar = bar,
    };
}
