using EstateWater.Agronomy.Drip;
using EstateWater.Agronomy.Units;

namespace EstateWater.Tests.Drip;

public sealed class DripLineTests
{
    // A litre on a square metre is a millimetre; by hand.
    [Theory]
    [InlineData(2.0, 0.75, 2.4, 1.1111)]
    [InlineData(2.3, 1.00, 2.4, 0.9583)]
    [InlineData(3.5, 1.00, 2.75, 1.2727)]
    public void Rate_follows_flow_and_spacing(double flow, double emitterSpacing, double rowSpacing, double expected)
    {
        Assert.Equal(expected, DripLine.LineRateMmPerH(flow, emitterSpacing, rowSpacing), 0.00005);
        Assert.Equal(expected, DripLine.ApplicationRateMmPerH(flow, 1, rowSpacing, emitterSpacing), 0.00005);
    }

    // Two emitters of half a gallon an hour on vines of 6 by 8 feet, from the definitions of foot and gallon.
    [Fact]
    public void Knows_a_vine_of_six_by_eight_feet()
    {
        const double flow = 0.5 * Conversions.LitresPerGallon, row = 8 * Conversions.MetresPerFoot, vine = 6 * Conversions.MetresPerFoot;
        Assert.Equal(0.84887, DripLine.ApplicationRateMmPerH(flow, 2, row, vine), 0.000005);
        Assert.Equal(4.459346, DripLine.GroundPerVineM2(row, vine), 0.0000005);
        Assert.Equal(1.178035, DripLine.GallonsPerVine(1, row, vine), 0.0000005);
        Assert.Equal(4.459, DripLine.LitresPerVine(1, row, vine), 0.0005);
        // 0.165 inch a day for a week: 0.165 · 48 ft² · 144∕231 · 7 = 34.56 gal.
        Assert.Equal(34.56, DripLine.GallonsPerVine(7 * 0.165 * Conversions.MillimetresPerInch, row, vine), 0.005);
    }

    // Myburgh (2018), Handbook for Irrigation of Wine Grapes in South Africa, p. 74: 1 mm is 10 m³ on a hectare; p. 91: 150 m³/h for 6.7 h is 100 mm on a hectare.
    [Fact]
    public void Volume_and_depth_match_the_handbook()
    {
        Assert.Equal(10, DripLine.VolumeM3(1, 10_000), 1e-12);
        Assert.Equal(100, DripLine.DepthMm(150 * 6.7, 10_000), 0.5 + 1e-9);
    }

    [Fact]
    public void Block_flow_is_the_flow_of_all_its_emitters()
    {
        // 2 ha at 2.5 by 1.25 m: 6400 vines, two emitters of 2 L/h each.
        Assert.Equal(25.6, DripLine.BlockFlowM3PerH(20_000, 2, 2, 2.5, 1.25), 1e-9);
    }

    // By hand: 12∕0.9, and back.
    [Fact]
    public void Gross_and_net_are_there_and_back()
    {
        Assert.Equal(13.333, DripLine.GrossMm(12, 0.9), 0.0005);
        Assert.Equal(12, DripLine.NetMm(DripLine.GrossMm(12, 0.9), 0.9), 1e-12);
        Assert.Equal(8, DripLine.HoursFor(10, 1.25), 1e-12);
    }

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DripLine.ApplicationRateMmPerH(0, 2, 2.5, 1.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => DripLine.ApplicationRateMmPerH(2, 2, double.NaN, 1.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => DripLine.GrossMm(12, 90));
        Assert.Throws<ArgumentOutOfRangeException>(() => DripLine.VolumeM3(-1, 100));
        Assert.Throws<ArgumentOutOfRangeException>(() => DripLine.HoursFor(1, 0));
    }
}
