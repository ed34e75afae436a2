using EstateWater.Data.Model;

namespace EstateWater.Web.Parts.Units;

/// <summary>A person's units and manner of writing numbers. The estate keeps bar, mm, m³, m² and °C whatever is chosen; pages show and take what the choice says.</summary>
public sealed partial record UnitChoice
{
    /// <summary>bar, mm, m³, ha, °C.</summary>
    public static UnitChoice Metric { get; } = new();

    /// <summary>bar, in, gal, ac, °F: gauges of pressure chambers show bar there too.</summary>
    public static UnitChoice Us { get; } = new()
    {
        Depth = DisplayUnit.Inch,
        Volume = DisplayUnit.Gallon,
        Area = DisplayUnit.Acre,
        Temperature = DisplayUnit.Fahrenheit,
        Numbers = NumberStyle.American,
    };

    /// <summary>Tension.</summary>
    public DisplayUnit Pressure { get; init; } = DisplayUnit.Bar;

    /// <summary>Depth of water and rain; depth in the soil goes with it, in cm or in.</summary>
    public DisplayUnit Depth { get; init; } = DisplayUnit.Millimetre;

    /// <summary>Volume of water; flow goes with it.</summary>
    public DisplayUnit Volume { get; init; } = DisplayUnit.CubicMetre;

    /// <summary>Area; lengths on the land go with it, in m or ft.</summary>
    public DisplayUnit Area { get; init; } = DisplayUnit.Hectare;

    /// <summary>Depth in the soil and length of shoots; it goes with the depth of water.</summary>
    public DisplayUnit ShortLength => Depth == DisplayUnit.Inch ? DisplayUnit.InchOfLength : DisplayUnit.Centimetre;

    /// <summary>Speed of whoever walks or drives; it goes with the lengths on the land.</summary>
    public DisplayUnit Speed => Area == DisplayUnit.Acre ? DisplayUnit.MilePerHour : DisplayUnit.KilometrePerHour;

    /// <summary>Air temperature.</summary>
    public DisplayUnit Temperature { get; init; } = DisplayUnit.Celsius;

    /// <summary>Numbers, days and clock times.</summary>
    public NumberStyle Numbers { get; init; } = NumberStyle.Point;

    /// <summary>Units to choose from, by quantity.</summary>
    public static IReadOnlyList<UnitQuestion> Questions { get; } =
    [
        new("pressure", "Tension", [DisplayUnit.Bar, DisplayUnit.Megapascal], c => c.Pressure, (c, unit) => c with { Pressure = unit }),
        new("depth", "Water and rain as a depth", [DisplayUnit.Millimetre, DisplayUnit.Inch], c => c.Depth, (c, unit) => c with { Depth = unit }),
        new("volume", "Water as a volume, and flow", [DisplayUnit.CubicMetre, DisplayUnit.Gallon, DisplayUnit.AcreInch], c => c.Volume, (c, unit) => c with { Volume = unit }),
        new("area", "Area", [DisplayUnit.Hectare, DisplayUnit.Acre], c => c.Area, (c, unit) => c with { Area = unit }),
        new("temperature", "Temperature", [DisplayUnit.Celsius, DisplayUnit.Fahrenheit], c => c.Temperature, (c, unit) => c with { Temperature = unit }),
    ];

    /// <summary>What an estate shows to those who have chosen nothing.</summary>
    public static UnitChoice Usual(DisplayUnits units) => units == DisplayUnits.Us ? Us : Metric;

    /// <summary>The choice as one word, for cookies and for parts that are drawn apart: “bar.mm.m3.ha.c.en”.</summary>
    public string Key => string.Join('.', Questions.Select(question => question.Chosen(this).Key).Append(Numbers.Key));

    /// <summary>Reads <see cref="Key"/>; null when the word is none. What it does not know stays metric.</summary>
    public static UnitChoice? Parse(string? key)
    {
        if (key?.Split('.') is not { } words || words.Length != Questions.Count + 1)
        {
            return null;
        }

        return Questions.Zip(words).Aggregate(
            Metric with { Numbers = NumberStyle.Of(words[^1]) ?? NumberStyle.Point },
            (choice, answer) => answer.First.Answered(choice, answer.Second));
    }
}

/// <summary>One quantity and the units that can be chosen for it.</summary>
/// <param name="Name">In forms.</param>
/// <param name="Words">For people.</param>
/// <param name="Units">To choose from.</param>
/// <param name="Chosen">The unit of a choice.</param>
/// <param name="With">A choice with another unit.</param>
public sealed record UnitQuestion(
    string Name, string Words, IReadOnlyList<DisplayUnit> Units, Func<UnitChoice, DisplayUnit> Chosen, Func<UnitChoice, DisplayUnit, UnitChoice> With)
{
    /// <summary>A choice with the unit of a key; unchanged where the key names none.</summary>
    public UnitChoice Answered(UnitChoice choice, string? key) => Units.FirstOrDefault(unit => unit.Key == key) is { } unit ? With(choice, unit) : choice;
}
