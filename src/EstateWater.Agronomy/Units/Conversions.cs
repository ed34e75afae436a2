using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Units;

/// <summary>Conversion factors, each exact by the definition of its unit. The one place where they stand.</summary>
/// <remarks>The foot is the international foot, 0.3048 m exactly. The US survey foot was retired at the end of 2022; the difference is 2 parts in a million.</remarks>
[Method(
    "Conversion of units",
    Source = "Definitions of the international foot and inch, the US gallon of 231 in³, the avoirdupois pound and standard gravity; NIST SP 811 (2008)",
    Check = "The definitions multiplied out; NIST SP 811 to its printed digits")]
public static class Conversions
{
    /// <summary>Metres in a foot. [m/ft]</summary>
    public const double MetresPerFoot = 0.3048;

    /// <summary>Metres in a mile of 5280 feet. [m/mi]</summary>
    public const double MetresPerMile = 5280 * MetresPerFoot;

    /// <summary>Millimetres in an inch. [mm/in]</summary>
    public const double MillimetresPerInch = 25.4;

    /// <summary>Litres in a US gallon of 231 cubic inches. [L/gal]</summary>
    public const double LitresPerGallon = 3.785411784;

    /// <summary>Cubic metres in a US gallon. [m³/gal]</summary>
    public const double CubicMetresPerGallon = LitresPerGallon / 1000;

    /// <summary>Square metres in an acre of 43 560 square feet. [m²/acre]</summary>
    public const double SquareMetresPerAcre = 4046.8564224;

    /// <summary>Square metres in a hectare. [m²/ha]</summary>
    public const double SquareMetresPerHectare = 10_000;

    /// <summary>Cubic metres in an acre-inch. [m³/acre-inch]</summary>
    public const double CubicMetresPerAcreInch = SquareMetresPerAcre * MillimetresPerInch / 1000;

    /// <summary>Cubic metres in an acre-foot. [m³/acre-foot]</summary>
    public const double CubicMetresPerAcreFoot = SquareMetresPerAcre * MetresPerFoot;

    /// <summary>Bar in a megapascal. [bar/MPa]</summary>
    public const double BarPerMegapascal = 10;

    /// <summary>Kilopascals in a bar. [kPa/bar]</summary>
    public const double KilopascalsPerBar = 100;

    /// <summary>Kilopascals in a pound-force on a square inch: 0.45359237 kg · 9.80665 m/s² ∕ (0.0254 m)². [kPa/psi]</summary>
    public const double KilopascalsPerPsi = 0.45359237 * 9.80665 / (0.0254 * 0.0254) / 1000;

    /// <summary>psi in a bar. [psi/bar]</summary>
    public const double PsiPerBar = KilopascalsPerBar / KilopascalsPerPsi;

    /// <summary>Kilopascals in a metre of water at the conventional 1000 kg/m³ and 9.80665 m/s². [kPa/m]</summary>
    public const double KilopascalsPerMetreOfWater = 9.80665;

    /// <summary>Cubic metres an hour in a US gallon a minute. [(m³/h)/gpm]</summary>
    public const double CubicMetresPerHourPerGpm = CubicMetresPerGallon * 60;

    /// <summary>Millimetres an hour in a US gallon a minute on an acre. [(mm/h)/(gpm/acre)]</summary>
    public const double MillimetresPerHourPerGpmPerAcre = CubicMetresPerHourPerGpm * 1000 / SquareMetresPerAcre;

    /// <summary>US gallons an acre in a millimetre. [(gal/acre)/mm]</summary>
    public const double GallonsPerAcrePerMillimetre = SquareMetresPerAcre / LitresPerGallon;

    /// <summary>Cubic metres a hectare in a millimetre. [(m³/ha)/mm]</summary>
    public const double CubicMetresPerHectarePerMillimetre = 10;

    /// <summary>Degrees Fahrenheit of a temperature. [°F]</summary>
    /// <param name="celsius">[°C]</param>
    public static double CelsiusToFahrenheit(double celsius) => (celsius * 9 / 5) + 32;

    /// <summary>Degrees Celsius of a temperature. [°C]</summary>
    /// <param name="fahrenheit">[°F]</param>
    public static double FahrenheitToCelsius(double fahrenheit) => (fahrenheit - 32) * 5 / 9;
}
