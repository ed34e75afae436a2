using EstateWater.Agronomy.Canopy;

namespace EstateWater.Tests.Canopy;

public sealed class DensityCoefficientTests
{
    // FAO-56 (Allen et al. 1998), Example 41: 40° N, day 200, 2 m high, as high as wide, cover 0.3, RHmin 55 %, 1.5 m/s.
    // The book prints fc_eff 0.41 and Kcb 0.75; exact values 0.4047 and 0.748.
    [Fact]
    public void Gives_FAO56_example_41()
    {
        var elevation = GroundCover.NoonElevation(40, 200);
        Assert.Equal(0.9442, Math.Sin(elevation), 0.00005);
        var effective = GroundCover.EffectiveOfRows(0.3, 1, elevation);
        Assert.Equal(0.4047, effective, 0.00005);
        var full = DensityCoefficient.Full(2, 1.5, 55);
        Assert.Equal(1.1469, full, 0.00005);
        Assert.Equal(0.75, DensityCoefficient.Fao56(full, 0.3, effective, 2), 0.005);
    }

    // FAO-56, Example 42: 38.5° N, day 201, cover 0.5, as high as wide: fc_eff 0.6618.
    [Fact]
    public void Gives_the_effective_cover_of_FAO56_example_42() =>
        Assert.Equal(0.6618, GroundCover.EffectiveOfRows(0.5, 1, GroundCover.NoonElevation(38.5, 201)), 0.005);

    // FAO-56, Example 43: cover 0.196, 5 m high, full coefficient 1.293: Kcb 0.60, Fr 0.67, together 0.40.
    // Fr at 25 °C (slope 0.1887), sea level (0.0674), 2 m/s and a leaf resistance of 420 s/m.
    [Fact]
    public void Gives_FAO56_example_43()
    {
        var full = DensityCoefficient.Full(5, 2, 25);
        Assert.Equal(1.293, full, 0.0005);
        var basal = DensityCoefficient.Fao56(full, 0.196, 0.196 / 0.99, 5);
        var factor = DensityCoefficient.StomatalFactor(0.1887, 0.0674, 2, 420);
        Assert.Equal(0.60, basal, 0.005);
        Assert.Equal(0.67, factor, 0.005);
        Assert.Equal(0.40, basal * factor, 0.005);
    }

    // Allen & Pereira (2009), the formula by hand: 1.5·0.35 = 0.525; 0.35^(1∕2.8) = 0.687; 1.5·0.20 = 0.30.
    [Theory]
    [InlineData(0.35, 1.8, 1.5, 1.15, 0.675)]
    [InlineData(0.35, 1.8, 2.0, 1.15, 0.837)]
    [InlineData(0.20, 1.5, 1.5, 0.80, 0.345)]
    public void Gives_the_density_of_Allen_and_Pereira(double cover, double height, double multiplier, double full, double expected) =>
        Assert.Equal(expected, DensityCoefficient.AllenPereira2009(full, cover, height, multiplier), 0.0005);

    [Fact]
    public void Rows_north_to_south_shade_at_noon_what_they_cover()
    {
        var ratio = GroundCover.HeightToWidth(1.2, 0.6, 90);
        Assert.Equal(0.4, GroundCover.EffectiveOfRows(0.4, ratio, 1.2), 1e-9);
        Assert.Equal(2, GroundCover.HeightToWidth(1.2, 0.6, 0), 1e-12);
        Assert.Equal(0.25, GroundCover.ShadedFractionFromWidth(0.6, 2.4), 1e-12);
    }

    [Fact]
    public void A_low_sun_never_shades_more_than_all_ground()
    {
        Assert.Equal(1, GroundCover.EffectiveOfRows(0.6, 3, 0.5));
        Assert.Equal(1, GroundCover.EffectiveOfRoundCanopies(0.6, 0.5));
    }

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => DensityCoefficient.Fao56(1.1, 0.5, 0.4, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => DensityCoefficient.AllenPereira2009(1.1, 0.5, 2, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => DensityCoefficient.StomatalFactor(0.19, 0.067, 2, 70));
        Assert.Throws<ArgumentOutOfRangeException>(() => GroundCover.EffectiveOfRows(0.5, 1, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => GroundCover.ShadedFractionFromWidth(3, 2.4));
    }
}
