using EstateWater.Agronomy.WaterStatus;
using EstateWater.Planning;
using EstateWater.Planning.Accuracy;

namespace EstateWater.Tests.Planning.Accuracy;

public sealed class AccuracyScoreTests
{
    // Worked by hand. Expected less read: +1, −2, +0.5, −0.5. Last reading less read: −1, −3, 0, +2. Line less read: +2, −1.
    private static readonly HeldAgainst[] Four =
    [
        Held("B1", read: 10, expected: 11, noChange: 9, line: 12),
        Held("B1", read: 12, expected: 10, noChange: 9, line: 11),
        Held("B2", read: 8, expected: 8.5, noChange: 8, line: null),
        Held("B2", read: 9, expected: 8.5, noChange: 11, line: null),
    ];

    [Fact]
    public void Errors_bias_and_rivals_are_those_worked_by_hand()
    {
        var score = AccuracyScore.Of(Four)!;
        Assert.Equal(4, score.Sets);
        Assert.Equal((1 + 2 + 0.5 + 0.5) / 4, score.ErrorBar, 12);
        Assert.Equal((1 - 2 + 0.5 - 0.5) / 4, score.BiasBar, 12);
        Assert.Equal((1 + 3 + 0 + 2) / 4.0, score.NoChangeErrorBar, 12);
        Assert.Equal((2 + 1) / 2.0, score.StraightLineErrorBar!.Value, 12);
        // Bands reach one bar up and down: the miss of two lies outside.
        Assert.Equal(0.75, score.InsideBandShare);
    }

    [Fact]
    public void Without_a_line_its_error_is_missing_and_without_sets_there_is_no_score()
    {
        Assert.Null(AccuracyScore.Of(Four[2..])!.StraightLineErrorBar);
        Assert.Null(AccuracyScore.Of([]));
    }

    // Half-widths 3 up and 1 down; leaves of standard error e widen them to √(w² + (1.2816 e)²), 1.2816 being the ninetieth
    // percentile of the standard normal distribution. With e = 4 ∕ 1.2816 and 3 up: √(9 + 16) = 5.
    [Theory]
    [InlineData(12.99, 0, true)]
    [InlineData(13.01, 0, false)]
    [InlineData(9.01, 0, true)]
    [InlineData(8.99, 0, false)]
    [InlineData(14.99, 4, true)]
    [InlineData(15.01, 4, false)]
    public void A_reading_is_inside_as_far_as_band_and_leaves_reach(double read, double leaves, bool inside) =>
        Assert.Equal(inside, new HeldAgainst("B1", default, WaterPotentialMeasure.Leaf, 7, read, leaves / 1.2816, new TensionBand(9, 10, 13), 10, null).IsInside);

    [Fact]
    public void A_report_tells_leads_and_blocks_apart_and_the_poorly_known_first()
    {
        HeldAgainst[] week = [.. Four, .. Many("B3", 3), .. Many("B4", 1), .. Many("B5", 3)];
        var report = new AccuracyReport([.. week, Held("B1", read: 10, expected: 20) with { LeadDays = 1 }]);
        Assert.Equal(10, report.Estate(1)!.ErrorBar);
        Assert.Equal(AccuracyScore.Of(week), report.Estate(7));
        Assert.Null(report.Estate(3));
        Assert.Equal(1.5, report.Block("B1", 7)!.ErrorBar);
        Assert.Null(report.Block("B2", 1));
        // Three blocks of five sets, the worse first; then those of two sets.
        Assert.Equal(["B3", "B5", "B4", "B1", "B2"], report.Blocks(7).Select(each => each.Block));
    }

    private static IEnumerable<HeldAgainst> Many(string block, double missBar) => Enumerable.Repeat(Held(block, read: 10, expected: 10 + missBar), 5);

    private static HeldAgainst Held(string block, double read, double expected, double noChange = 10, double? line = null) =>
        new(block, new DateOnly(2025, 1, 20), WaterPotentialMeasure.Leaf, 7, read, 0, new TensionBand(expected - 1, expected, expected + 1), noChange, line);
}
