using EstateWater.Agronomy.Units;

namespace EstateWater.Web.Parts.Units;

/// <summary>A unit in which a person is shown a quantity, and types it.</summary>
/// <param name="Key">Its name in addresses, forms and cookies.</param>
/// <param name="Symbol">As it stands beside a number.</param>
/// <param name="Size">How much of the unit in which the estate keeps the quantity one of it is.</param>
/// <param name="MoreDecimals">Decimals beyond those of the kept unit, for the same fineness.</param>
/// <param name="Zero">Its zero in the kept unit.</param>
public sealed record DisplayUnit(string Key, string Symbol, double Size, int MoreDecimals = 0, double Zero = 0)
{
    /// <summary>How people write it beside a number, in small letters.</summary>
    public IReadOnlyList<string> Names { get; init; } = [.. new[] { Symbol.ToLowerInvariant(), Key }.Distinct()];

    /// <summary>Kept as it is.</summary>
    public static DisplayUnit Bar { get; } = new("bar", "bar", 1);

    /// <summary>Of bar.</summary>
    public static DisplayUnit Megapascal { get; } = new("mpa", "MPa", Conversions.BarPerMegapascal, 1);

    /// <summary>Kept as it is.</summary>
    public static DisplayUnit Millimetre { get; } = new("mm", "mm", 1);

    /// <summary>Of mm.</summary>
    public static DisplayUnit Inch { get; } = new("in", "in", Conversions.MillimetresPerInch, 1);

    /// <summary>Kept as it is.</summary>
    public static DisplayUnit CubicMetre { get; } = new("m3", "m³", 1);

    /// <summary>Of m³.</summary>
    public static DisplayUnit Gallon { get; } = new("gal", "gal", Conversions.CubicMetresPerGallon);

    /// <summary>Of m³.</summary>
    public static DisplayUnit AcreInch { get; } = new("acre-in", "acre-in", Conversions.CubicMetresPerAcreInch, 2);

    /// <summary>Of m².</summary>
    public static DisplayUnit Hectare { get; } = new("ha", "ha", Conversions.SquareMetresPerHectare);

    /// <summary>Of m².</summary>
    public static DisplayUnit Acre { get; } = new("ac", "ac", Conversions.SquareMetresPerAcre);

    /// <summary>Kept as it is.</summary>
    public static DisplayUnit Centimetre { get; } = new("cm", "cm", 1);

    /// <summary>Of cm, told as finely as one measures with a rule.</summary>
    public static DisplayUnit InchOfLength { get; } = new("in", "in", Conversions.MillimetresPerInch / 10) { Names = ["in", "\"", "″"] };

    /// <summary>Of m/min.</summary>
    public static DisplayUnit KilometrePerHour { get; } = new("kmh", "km/h", 1000.0 / 60);

    /// <summary>Of m/min.</summary>
    public static DisplayUnit MilePerHour { get; } = new("mph", "mph", Conversions.MetresPerMile / 60);

    /// <summary>Kept as it is.</summary>
    public static DisplayUnit Hour { get; } = new("h", "h", 1) { Names = ["h", "hr", "hrs"] };

    /// <summary>Kept as it is.</summary>
    public static DisplayUnit Minute { get; } = new("min", "min", 1) { Names = ["min", "minutes", "minutos"] };

    /// <summary>Kept as it is.</summary>
    public static DisplayUnit Percent { get; } = new("percent", "%", 1);

    /// <summary>Of what has no unit.</summary>
    public static DisplayUnit Count { get; } = new("", "", 1);

    /// <summary>Kept as it is.</summary>
    public static DisplayUnit Celsius { get; } = new("c", "°C", 1);

    /// <summary>Of °C.</summary>
    public static DisplayUnit Fahrenheit { get; } = new("f", "°F", Conversions.FahrenheitToCelsius(1) - Conversions.FahrenheitToCelsius(0), 0, Conversions.FahrenheitToCelsius(0));

    /// <summary>A kept value in this unit.</summary>
    public double Show(double kept) => (kept - Zero) / Size;

    /// <summary>A value typed in this unit, as the estate keeps it.</summary>
    public double Keep(double typed) => (typed * Size) + Zero;
}
