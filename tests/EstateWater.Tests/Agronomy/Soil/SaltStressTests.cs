using EstateWater.Agronomy.Soil;

namespace EstateWater.Tests.Soil;

public sealed class SaltStressTests
{
    // FAO-56 (Allen et al. 1998), Example 39: beans at ECe 1.5, threshold 1.0, slope 19, Ky 1.15; 0.92 is printed, 0.9174 is exact.
    [Fact]
    public void Costs_as_in_FAO56_example_39() => Assert.Equal(0.9174, SaltStress.Coefficient(1.5, 1.0, 19, 1.15), 0.00005);

    // FAO-56 Table 23 and 24 for grapes, worked out by hand: 1 − 0.096 = 0.904; 1 − 9.6∕85 = 0.887.
    [Fact]
    public void Costs_grapes_at_2_5_dS_per_m()
    {
        Assert.Equal(0.904, SaltStress.RelativeYield(2.5), 1e-12);
        Assert.Equal(0.887, SaltStress.Coefficient(2.5), 0.0005);
    }

    // FAO-56, Example 44: Ya 1100, Ym 1800, Ky 1.15 gives 0.66.
    [Fact]
    public void Yield_tells_ET_as_in_FAO56_example_44() => Assert.Equal(0.66, SaltStress.RelativeEtFromYield(1100.0 / 1800, 1.15), 0.005);

    // Ayers & Westcot (1985), FAO-29, Table 4, grapes: 90, 75, 50 and 0 % of the yield at ECe 2.5, 4.1, 6.7 and 12 dS/m (from memory; the straight line gives the same).
    [Theory]
    [InlineData(2.54, 0.90)]
    [InlineData(4.10, 0.75)]
    [InlineData(6.71, 0.50)]
    [InlineData(11.92, 0.00)]
    public void Yield_falls_along_the_straight_line(double soilEc, double expected) => Assert.Equal(expected, SaltStress.RelativeYield(soilEc), 0.0005);

    // LR = ECw∕(5·ECe − ECw) by hand: 0.8∕6.7, 1∕6.5; FAO-29's own example 1.2∕11.3 = 0.106.
    [Theory]
    [InlineData(0.8, 1.5, 0.1194)]
    [InlineData(1.0, 1.5, 0.1538)]
    [InlineData(1.2, 2.5, 0.1062)]
    public void Leaching_keeps_the_soil_where_it_is_wanted(double waterEc, double soilEc, double expected) =>
        Assert.Equal(expected, SaltStress.LeachingRequirement(waterEc, soilEc), 0.00005);

    // FAO-56, Eq. 93; the text says the soil is about 1.5 times the water at a leaching fraction of 15–20 %.
    [Theory]
    [InlineData(0.10, 2.20)]
    [InlineData(0.15, 1.533)]
    [InlineData(0.20, 1.20)]
    public void Soil_comes_to_a_multiple_of_the_water(double leaching, double expected) =>
        Assert.Equal(expected, SaltStress.SteadySoilEc(1, leaching), 0.0005);

    [Fact]
    public void Refuses_water_too_salt_to_leach_with_and_values_outside_their_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => SaltStress.LeachingRequirement(4, 1.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => SaltStress.SteadySoilEc(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => SaltStress.Coefficient(-1));
    }
}
