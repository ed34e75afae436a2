using EstateWater.Agronomy.Soil;
using EstateWater.Data.Model;
using EstateWater.Web.Features.Soil;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Tests.Web.SoilPages;

public sealed class TubeSeriesTests
{
    private static readonly DateOnly Today = SmallEstate.Today;

    private static readonly double[] WetThenDry = [0.30, 0.30, 0.18, 0.18];

    [Fact]
    public void A_count_becomes_water_by_the_blocks_own_calibration_before_the_estates()
    {
        var contents = new WaterContents([new ProbeCalibration { Intercept = -0.02, Slope = 0.6 }, new ProbeCalibration { BlockCode = "B2", Intercept = 0.1, Slope = 0.2 }]);
        // By hand: −0.02 + 0.6 · 0.5 and 0.1 + 0.2 · 0.5.
        Assert.Equal(0.28, contents.Of(Counted("B1", 6000))!.Value, 1e-9);
        Assert.Equal(0.20, contents.Of(Counted("B2", 6000))!.Value, 1e-9);
        Assert.Equal(0, contents.Of(Counted("B1", 100)));
        Assert.Equal(0.31, contents.Of(Counted("B1", 6000) with { VwcM3PerM3 = 0.31 }));
        Assert.Null(new WaterContents([]).Of(Counted("B1", 6000)));
    }

    [Fact]
    public void Water_is_summed_to_the_depth_that_most_days_reach()
    {
        var series = Assert.Single(Of(Read(9, (20, 0.20), (40, 0.30)), Read(5, (40, 0.30), (20, 0.20)), Read(2, (20, 0.20))));
        Assert.Equal(0.40, series.SpanM, 1e-9);
        // By hand: 0.2 m at 0.20, and 0.2 m at the mean of 0.20 and 0.30.
        Assert.Equal(90, series.Mm(series.Profiles[1])!.Value, 1e-9);
        Assert.Null(series.Mm(series.Latest));
        Assert.Equal((0.20, null), (series.Latest.At(0.20), series.Latest.At(0.40)));
    }

    [Fact]
    public void Tubes_stay_apart_and_what_is_read_later_is_not_known()
    {
        var tubes = Of([.. Read(3, (20, 0.2)), .. Read(3, (20, 0.3)).Select(reading => reading with { Tube = "T2" }), .. Read(-1, (20, 0.1))]);
        Assert.Equal(["T1", "T2"], tubes.Select(tube => tube.Tube));
        Assert.All(tubes, tube => Assert.Equal(Today.AddDays(-3), Assert.Single(tube.Profiles).Date));
    }

    [Fact]
    public void A_content_that_no_soil_holds_is_left_out() => Assert.Empty(Of(Read(3, (20, 1.2))));

    [Fact]
    public void A_depth_tells_its_trend_from_the_third_day_on()
    {
        Assert.Null(Of(Read(3, (20, 0.2)), Read(2, (20, 0.2)))[0].TrendAt(0.20));
        Assert.Equal(DepthTrend.NeverRises, Of(Read(3, (20, 0.25)), Read(2, (20, 0.22)), Read(1, (20, 0.2)))[0].TrendAt(0.20));
    }

    // One reading at 1 m, held to the surface: 0.30 is 300 mm. Two running hold 300 and come down to 180; half of it used is 240.
    [Theory]
    [InlineData(0.25, "250 mm of water down to 1.00 m on Mon 20 Jan (2 days ago), 10 mm less than on Wed 15 Jan; full 300 mm, refill at 240 mm: 10 mm above the refill point.")]
    [InlineData(0.23, "230 mm of water down to 1.00 m on Mon 20 Jan (2 days ago), 30 mm less than on Wed 15 Jan; full 300 mm, refill at 240 mm: 10 mm under the refill point.")]
    [InlineData(0.26, "260 mm of water down to 1.00 m on Mon 20 Jan (2 days ago), as on Wed 15 Jan; full 300 mm, refill at 240 mm: 20 mm above the refill point.")]
    public void A_sentence_says_how_a_tube_stands(double latest, string expected)
    {
        var series = Of([.. WetThenDry.SelectMany((content, i) => Read(40 - i, (100, content))), .. Read(7, (100, 0.26)), .. Read(2, (100, latest))])[0];
        Assert.Equal(expected, SoilWords.Standing(series, Today, UnitChoice.Metric).Replace('\u00A0', ' '));
    }

    // The same tube in inches of 25.4 mm: 250 is 9.8, 260 is 10.2, 300 is 11.8, 240 is 9.4; 1 m is 39.37 in. Differences are of the rounded numbers.
    [Fact]
    public void In_inches_the_numbers_of_the_sentence_add_up_as_well()
    {
        var series = Of([.. WetThenDry.SelectMany((content, i) => Read(40 - i, (100, content))), .. Read(7, (100, 0.26)), .. Read(2, (100, 0.25))])[0];
        Assert.Equal(
            "9.8 in of water down to 39 in on Mon Jan 20 (2 days ago), 0.4 in less than on Wed Jan 15; full 11.8 in, refill at 9.4 in: 0.4 in above the refill point.",
            SoilWords.Standing(series, Today, UnitChoice.Us).Replace('\u00A0', ' '));
    }

    [Fact]
    public void A_tube_that_only_dried_has_no_full_point_yet() =>
        Assert.EndsWith("full and refill point are not known yet: the readings must have wetted and dried.", SoilWords.Standing(Of(Read(3, (20, 0.3)), Read(2, (20, 0.2)))[0], Today, UnitChoice.Metric), StringComparison.Ordinal);

    private static IReadOnlyList<TubeSeries> Of(params SoilMoisture[][] days) => Tubes(days.SelectMany(day => day));

    private static IReadOnlyList<TubeSeries> Tubes(IEnumerable<SoilMoisture> readings) => TubeSeries.Of(readings, new WaterContents([]), Today);

    private static SoilMoisture[] Read(int daysAgo, params (double DepthCm, double Content)[] depths) =>
        [.. depths.Select(depth => new SoilMoisture { BlockCode = "B1", Date = Today.AddDays(-daysAgo), Tube = "T1", DepthCm = depth.DepthCm, VwcM3PerM3 = depth.Content })];

    private static SoilMoisture Counted(string block, double count) =>
        new() { BlockCode = block, Date = Today, Tube = "T1", DepthCm = 20, Count = count, StandardCount = 12000 };
}
