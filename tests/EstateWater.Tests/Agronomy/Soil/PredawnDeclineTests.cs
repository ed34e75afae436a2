using EstateWater.Agronomy.Soil;

namespace EstateWater.Tests.Soil;

public sealed class PredawnDeclineTests
{
    // Worked out with a calculator from the constants: 0.4∕(0.4·5.3452·150) MPa/mm.
    [Fact]
    public void Climbs_with_summed_reference_et()
    {
        Assert.Equal(0.001247, PredawnDecline.ClimbMpaPerMm(0.4, 150), 0.0000005);
        Assert.Equal(0.0524, 42 * PredawnDecline.ClimbMpaPerMm(0.4, 150), 0.00005);
    }

    // A vine that draws Kcb·F∕0.4 of each mm, stepped in small steps with the soil-water curve, against the straight line.
    [Fact]
    public void Is_what_the_soil_water_curve_gives_for_a_drying_root_zone()
    {
        double fraction = 0.35, start = PredawnFromSoilWater.TensionMpa(fraction);
        for (var i = 0; i < 40_000; i++)
        {
            fraction -= 0.001 * 0.4 * (fraction / PredawnDecline.FractionWhereTranspirationFalls) / 150;
        }

        Assert.Equal(40 * PredawnDecline.ClimbMpaPerMm(0.4, 150), PredawnFromSoilWater.TensionMpa(fraction) - start, 1e-6);
    }

    [Fact]
    public void Finds_the_ratio_again_in_a_blocks_readings()
    {
        double[] summed = [0, 35, 78, 120];
        double[] tensions = [.. summed.Select(mm => 0.2 + (mm * PredawnDecline.ClimbMpaPerMm(0.45, 120)))];
        Assert.Equal(0.45 / 120, PredawnDecline.RatioFromReadings(summed, tensions), 1e-12);
    }

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PredawnDecline.ClimbMpaPerMm(0.4, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => PredawnDecline.ClimbMpaPerMm(double.NaN, 150));
        Assert.Throws<ArgumentOutOfRangeException>(() => PredawnDecline.RatioFromReadings([0, 40], [0.2, 0.3]));
        Assert.Throws<ArgumentOutOfRangeException>(() => PredawnDecline.RatioFromReadings([0, 40, 80], [0.2, -0.3, 0.4]));
    }
}
