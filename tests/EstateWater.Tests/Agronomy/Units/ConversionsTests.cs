using EstateWater.Agronomy.Units;

namespace EstateWater.Tests.Units;

public sealed class ConversionsTests
{
    /// <summary>Definitions: the international foot and inch, the gallon of 231 cubic inches, the acre of 43 560 square feet, the avoirdupois pound and standard gravity.</summary>
    public static TheoryData<double, double> Exact => new()
    {
        { Conversions.LitresPerGallon, 231 * 0.254 * 0.254 * 0.254 },
        { Conversions.SquareMetresPerAcre, 43_560 * 0.3048 * 0.3048 },
        { Conversions.CubicMetresPerAcreInch, 102.790153128960 },
        { Conversions.CubicMetresPerAcreFoot, 1233.48183754752 },
        { Conversions.CubicMetresPerAcreInch / Conversions.CubicMetresPerGallon, 190_080 / 7.0 },
        { Conversions.CubicMetresPerAcreFoot / Conversions.CubicMetresPerGallon, 2_280_960 / 7.0 },
        { Conversions.CubicMetresPerHourPerGpm, 0.22712470704 },
        { Conversions.MillimetresPerInch, 12 * 25.4 / 12 },
        { Conversions.CubicMetresPerHectarePerMillimetre, 0.001 * Conversions.SquareMetresPerHectare },
        { Conversions.MetresPerMile, 1609.344 },
        { Conversions.MetresPerFoot * 1000, 12 * Conversions.MillimetresPerInch },
    };

    [Theory]
    [MemberData(nameof(Exact))]
    public void Factors_follow_from_the_definitions(double factor, double expected) => Assert.Equal(1, factor / expected, 1e-14);

    // NIST SP 811 and the definitions, to the digits printed.
    [Fact]
    public void Factors_agree_with_the_printed_ones()
    {
        Assert.Equal(6.894757293168, Conversions.KilopascalsPerPsi, 5e-13);
        Assert.Equal(14.503773773, Conversions.PsiPerBar, 5e-10);
        Assert.Equal(0.70306957964, Conversions.KilopascalsPerPsi / Conversions.KilopascalsPerMetreOfWater, 5e-12);
        Assert.Equal(0.0561237374, Conversions.MillimetresPerHourPerGpmPerAcre, 5e-11);
        Assert.Equal(1069.0663667, Conversions.GallonsPerAcrePerMillimetre, 5e-8);
        Assert.Equal(0.00935395623, 10 / Conversions.GallonsPerAcrePerMillimetre, 5e-12);
    }

    // Water freezes and boils; the two scales meet at −40.
    [Theory]
    [InlineData(0, 32)]
    [InlineData(100, 212)]
    [InlineData(-40, -40)]
    [InlineData(35, 95)]
    public void Temperatures_go_there_and_back(double celsius, double fahrenheit)
    {
        Assert.Equal(fahrenheit, Conversions.CelsiusToFahrenheit(celsius), 1e-12);
        Assert.Equal(celsius, Conversions.FahrenheitToCelsius(fahrenheit), 1e-12);
    }
}
