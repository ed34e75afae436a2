using EstateWater.Agronomy.Soil;

namespace EstateWater.Tests.Soil;

public sealed class RootZoneTests
{
    // FAO-56 (Allen et al. 1998), Example 36: onion, tomato, maize on loamy sand, silt, silty clay. RAW is printed to one decimal or whole.
    [Theory]
    [InlineData(0.15, 0.06, 0.4, 0.30, 36, 10.8)]
    [InlineData(0.32, 0.15, 0.4, 0.30, 68, 20.4)]
    [InlineData(0.35, 0.23, 0.4, 0.30, 48, 14.4)]
    [InlineData(0.15, 0.06, 0.8, 0.40, 72, 28.8)]
    [InlineData(0.32, 0.15, 0.8, 0.40, 136, 54.4)]
    [InlineData(0.35, 0.23, 0.8, 0.40, 96, 38.4)]
    [InlineData(0.15, 0.06, 1.2, 0.55, 108, 59.4)]
    [InlineData(0.32, 0.15, 1.2, 0.55, 204, 112.2)]
    [InlineData(0.35, 0.23, 1.2, 0.55, 144, 79.2)]
    public void Holds_the_water_of_FAO56_example_36(double fieldCapacity, double wiltingPoint, double depthM, double fraction, double total, double readily)
    {
        var taw = RootZone.TotalAvailableMm(fieldCapacity, wiltingPoint, depthM);
        Assert.Equal(total, taw, 1e-9);
        Assert.Equal(readily, RootZone.ReadilyAvailableMm(taw, fraction), 1e-9);
    }

    // FAO-56 Table 22, footnote: p = p_tab + 0.04(5 − ETc), held to 0.1–0.8; wine grapes 0.45. The formula is exact.
    [Theory]
    [InlineData(2, 0.57)]
    [InlineData(5, 0.45)]
    [InlineData(8, 0.33)]
    [InlineData(10, 0.25)]
    [InlineData(14, 0.10)]
    public void Depletion_fraction_follows_crop_et(double cropEtMm, double expected) =>
        Assert.Equal(expected, RootZone.AdjustedDepletionFraction(RootZone.WineGrapeDepletionFraction, cropEtMm), 1e-12);

    // FAO-56, Example 39: beans, TAW 110, RAW 44; water stress, and with salt of Ks 0.917. Two decimals are printed.
    [Theory]
    [InlineData(40, 1.00, 0.92)]
    [InlineData(50, 0.91, 0.83)]
    [InlineData(60, 0.76, 0.695)]
    [InlineData(70, 0.61, 0.56)]
    [InlineData(80, 0.45, 0.42)]
    [InlineData(90, 0.30, 0.28)]
    [InlineData(100, 0.15, 0.14)]
    [InlineData(110, 0.00, 0.00)]
    public void Stress_and_salt_multiply_as_in_FAO56_example_39(double depletionMm, double water, double both)
    {
        var stress = RootZone.StressCoefficient(depletionMm, 110, 0.4);
        Assert.Equal(water, stress, 0.005);
        Assert.Equal(both, stress * SaltStress.Coefficient(1.5, 1.0, 19, 1.15), 0.005);
    }

    [Fact]
    public void Refuses_what_is_outside_its_range()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => RootZone.TotalAvailableMm(0.1, 0.2, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RootZone.TotalAvailableMm(0.3, double.NaN, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => RootZone.StressCoefficient(111, 110, 0.4));
        Assert.Throws<ArgumentOutOfRangeException>(() => RootZone.StressCoefficient(50, 110, 1));
        var refusal = Assert.Throws<ArgumentOutOfRangeException>(() => RootZone.AdjustedDepletionFraction(0.45, -1));
        Assert.Equal("cropEtMm", refusal.ParamName);
        Assert.Contains("at least 0 mm/d", refusal.Message, StringComparison.Ordinal);
    }
}
