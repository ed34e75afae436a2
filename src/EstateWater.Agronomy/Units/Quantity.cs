using System.Globalization;

namespace EstateWater.Agronomy.Units;

/// <summary>What a quantity in a sentence measures, with the unit in which its value is kept.</summary>
public enum QuantityKind
{
    /// <summary>Tension of leaf or stem. [bar]</summary>
    Tension,

    /// <summary>Depth of water. [mm]</summary>
    Depth,

    /// <summary>Volume of water. [m³]</summary>
    Volume,

    /// <summary>Flow of water. [m³/h]</summary>
    Flow,

    /// <summary>Air temperature. [°C]</summary>
    Temperature,

    /// <summary>Depth in the soil or length of a shoot. [cm]</summary>
    ShortLength,
}

/// <summary>A quantity as a sentence says it: its value in the unit of its kind, and how finely it is told. Another unit is the reader's matter.</summary>
/// <param name="Kind">What it measures.</param>
/// <param name="Value">In the unit of the kind.</param>
/// <param name="Decimals">Decimals in that unit.</param>
public readonly record struct Quantity(QuantityKind Kind, double Value, int Decimals)
{
    /// <summary>Whether it is told without its unit, as beside another of the same kind.</summary>
    public bool IsBare { get; init; }

    /// <summary>Whether decimals that are zero are left out.</summary>
    public bool Trims { get; init; }

    /// <summary>Whether thousands are set apart.</summary>
    public bool Groups { get; init; }

    /// <summary>A tension.</summary>
    /// <param name="mpa">[MPa]</param>
    public static Quantity TensionOfMpa(double mpa) => new(QuantityKind.Tension, mpa * Conversions.BarPerMegapascal, 1);

    /// <summary>A volume in whole cubic metres.</summary>
    /// <param name="m3">[m³]</param>
    public static Quantity Volume(double m3) => new(QuantityKind.Volume, m3, 0);

    /// <summary>A flow.</summary>
    /// <param name="m3PerH">[m³/h]</param>
    public static Quantity Flow(double m3PerH) => new(QuantityKind.Flow, m3PerH, 1);

    /// <summary>An air temperature in whole degrees.</summary>
    /// <param name="celsius">[°C]</param>
    public static Quantity Temperature(double celsius) => new(QuantityKind.Temperature, celsius, 0);

    /// <summary>What a meter showed, or a difference of it, to a tenth.</summary>
    /// <param name="m3">[m³]</param>
    public static Quantity Meter(double m3) => new(QuantityKind.Volume, m3, 1) { Trims = true };

    /// <summary>A length of a shoot or a depth in the soil, to a tenth.</summary>
    /// <param name="cm">[cm]</param>
    public static Quantity ShortLength(double cm) => new(QuantityKind.ShortLength, cm, 1) { Trims = true };

    /// <summary>The unit of a kind's values: bar, mm, m³, m³/h, °C, cm.</summary>
    public static string SymbolOf(QuantityKind kind) => kind switch
    {
        QuantityKind.Tension => "bar",
        QuantityKind.Depth => "mm",
        QuantityKind.Volume => "m³",
        QuantityKind.Flow => "m³/h",
        QuantityKind.Temperature => "°C",
        QuantityKind.ShortLength => "cm",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Tension, Depth, Volume, Flow, Temperature or ShortLength."),
    };

    /// <summary>The format of its number with some decimals.</summary>
    public string Format(int decimals) => (Groups ? "#,0" : "0") + (decimals > 0 ? "." + new string(Trims ? '#' : '0', decimals) : "");

    /// <summary>As documents say it: in the unit of its kind, with a decimal point.</summary>
    public override string ToString()
    {
        var number = Value.ToString(Format(Decimals), CultureInfo.InvariantCulture);
        return IsBare ? number : $"{number} {SymbolOf(Kind)}";
    }
}
