using EstateWater.Agronomy.Soil;

namespace EstateWater.Tests.Soil;

public sealed class ProfileWaterTests
{
    private static readonly double[] Depths = [0.15, 0.30, 0.60, 0.90, 1.20, 1.50];
    private static readonly double[] Contents = [0.12, 0.16, 0.20, 0.22, 0.24, 0.25];

    // By hand: 18 + 21 + 54 + 63 + 69 + 73.5 mm to 1.50 m; 27 + 36 + 60 + 66 + 72 + 75 mm to 1.65 m.
    [Fact]
    public void Both_rules_give_the_hand_calculation()
    {
        Assert.Equal(298.5, ProfileWater.TrapezoidMm(Depths, Contents), 1e-9);
        Assert.Equal(336.0, ProfileWater.LayersMm(Depths, Contents, 1.65), 1e-9);
    }

    // By hand: 18 + 21 mm, then half of the trapezoid 0.30–0.60 m from 0.16 to 0.18: 25.5 mm; and 50 cm more at 0.25.
    [Fact]
    public void Water_to_a_root_depth_cuts_or_prolongs_the_profile()
    {
        Assert.Equal(64.5, ProfileWater.ToDepthMm(Depths, Contents, 0.45), 1e-9);
        Assert.Equal(298.5 + 125, ProfileWater.ToDepthMm(Depths, Contents, 2.0), 1e-9);
        Assert.Equal(12, ProfileWater.ToDepthMm(Depths, Contents, 0.10), 1e-9);
    }

    [Fact]
    public void Full_and_refill_are_the_ends_that_two_readings_hold()
    {
        // 320 was still draining; 178 was a single low reading.
        var points = FullAndRefillPoint.FromSeries([320, 301, 300, 262, 210, 182, 180, 178, 240], 0.5);
        Assert.Equal(301, points.FullMm);
        Assert.Equal(180, points.LowerMm);
        Assert.Equal(240.5, points.RefillMm, 1e-9);
        Assert.True(points.IsDue(240));
        Assert.False(points.IsDue(241));
        Assert.Equal(240, new FullAndRefillPoint(300, 180, 0.5).RefillMm);
    }

    // By the rule: of 300, 250, 200 the pairs hold 250 and 200 and come down to 300 and 250, so both ends would be 250.
    [Fact]
    public void A_series_that_only_dries_tells_neither_end_and_two_readings_tell_nothing()
    {
        Assert.Null(FullAndRefillPoint.Find([300, 250, 200], 0.5));
        Assert.Null(FullAndRefillPoint.Find([300, 200], 0.5));
        Assert.Equal(new FullAndRefillPoint(250, 200, 0.5), FullAndRefillPoint.Find([300, 250, 200, 150], 0.5));
    }

    [Theory]
    [InlineData(DepthTrend.RootsActive, 0.20, 0.17, 0.21, 0.16)]
    [InlineData(DepthTrend.NeverFalls, 0.20, 0.21, 0.23, 0.23)]
    [InlineData(DepthTrend.NeverRises, 0.20, 0.19, 0.17, 0.17)]
    [InlineData(DepthTrend.Still, 0.20, 0.203, 0.199, 0.201)]
    public void A_depth_tells_whether_water_comes_and_roots_take_it(DepthTrend expected, double a, double b, double c, double d)
    {
        Assert.Equal(expected, DepthTrends.Of([a, b, c, d]));
        Assert.NotEmpty(DepthTrends.Words(expected));
    }

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ProfileWater.TrapezoidMm([0.3, 0.15], [0.2, 0.2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProfileWater.TrapezoidMm([0.3], [0.2, 0.2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProfileWater.TrapezoidMm([0.3], [20]));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProfileWater.LayersMm(Depths, Contents, 1.4));
        Assert.Throws<ArgumentOutOfRangeException>(() => ProfileWater.ToDepthMm(Depths, Contents, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => FullAndRefillPoint.FromSeries([200, 200, 200], 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => DepthTrends.Of([0.2, 0.2]));
    }
}
