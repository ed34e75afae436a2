using EstateWater.Agronomy.Canopy;

namespace EstateWater.Tests.Canopy;

public sealed class CropCoefficientTests
{
    // Williams & Ayars (2005): a straight line in the shaded fraction, 0.017 for each percent (from memory, an editable default).
    [Theory]
    [InlineData(0.10, 0.17)]
    [InlineData(0.35, 0.595)]
    [InlineData(0.60, 1.02)]
    [InlineData(0.75, 1.275)]
    [InlineData(0.90, 1.275)]
    public void Grows_with_the_shade_up_to_three_quarters(double shaded, double expected) =>
        Assert.Equal(expected, CropCoefficient.FromShadedFraction(shaded), 1e-12);

    [Fact]
    public void Takes_the_blocks_own_slope() => Assert.Equal(0.6, CropCoefficient.FromShadedFraction(0.4, 1.5), 1e-12);

    // FAO-56 (Allen et al. 1998), Example 40: tomato 1.15 at 1.1 m/s, 30 %, 0.75 m: + 0.02 = 1.17.
    [Fact]
    public void Follows_the_climate_as_in_FAO56_example_40() => Assert.Equal(1.17, CropCoefficient.ForClimate(1.15, 1.1, 30, 0.75), 0.005);

    // Eq. 62 by hand for vines: (0.02 + 0.08)·0.6^0.3 = 0.0858.
    [Fact]
    public void Follows_the_climate_for_vines()
    {
        Assert.Equal(0.786, CropCoefficient.ForClimate(CropCoefficient.Fao56Mid, 2.5, 25, 1.8), 0.0005);
        Assert.Equal(CropCoefficient.Fao56Initial, CropCoefficient.ForClimate(CropCoefficient.Fao56Initial, 4, 20, 1.8));
    }

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CropCoefficient.FromShadedFraction(35));
        Assert.Throws<ArgumentOutOfRangeException>(() => CropCoefficient.FromShadedFraction(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => CropCoefficient.FromShadedFraction(0.3, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => CropCoefficient.ForClimate(0.7, 2, 120, 1.8));
    }
}
