using CsCheck;
using EstateWater.Agronomy.Soil;

namespace EstateWater.Tests.Soil;

public sealed class PredawnFromSoilWaterTests
{
    // Pellegrino et al. (2004): FTSW = 1.0572·exp(5.3452·Ψpd), constants from memory; worked out with a calculator.
    [Theory]
    [InlineData(0.8, 0.052)]
    [InlineData(0.4, 0.182)]
    [InlineData(0.2, 0.312)]
    [InlineData(0.05, 0.571)]
    public void Tension_grows_as_water_goes(double fraction, double expected) =>
        Assert.Equal(expected, PredawnFromSoilWater.TensionMpa(fraction), 0.0005);

    [Fact]
    public void There_and_back_is_the_same_fraction() =>
        Gen.Double[0.01, 1].Sample(f => Math.Abs(PredawnFromSoilWater.FractionLeft(PredawnFromSoilWater.TensionMpa(f)) - f) < 1e-12);

    [Fact]
    public void Never_more_than_all_is_left() => Assert.Equal(1, PredawnFromSoilWater.FractionLeft(0));

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PredawnFromSoilWater.TensionMpa(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => PredawnFromSoilWater.TensionMpa(1.2));
        Assert.Throws<ArgumentOutOfRangeException>(() => PredawnFromSoilWater.FractionLeft(-0.2));
    }
}
