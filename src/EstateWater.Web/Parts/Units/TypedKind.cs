using System.Text.Json;

namespace EstateWater.Web.Parts.Units;

/// <summary>A kind of quantity that people type, with the units that are understood beside a number whatever unit its reader has chosen.</summary>
/// <param name="Name">By which the field pages' scripts ask for it.</param>
/// <param name="Units">Units that are understood.</param>
public sealed record TypedKind(string Name, IReadOnlyList<DisplayUnit> Units)
{
    /// <summary>All kinds.</summary>
    public static IReadOnlyList<TypedKind> All { get; } =
    [
        .. UnitChoice.Questions.Select(question => new TypedKind(question.Name, question.Units)),
        new("length", [DisplayUnit.Centimetre, DisplayUnit.InchOfLength, new("m", "m", 100), new("mm", "mm", 0.1)]),
        new("speed", [DisplayUnit.KilometrePerHour, DisplayUnit.MilePerHour]),
        new("hours", [DisplayUnit.Hour, new("min", "min", 1.0 / 60)]),
        new("minutes", [DisplayUnit.Minute, new("s", "s", 1.0 / 60)]),
        new("percent", [DisplayUnit.Percent]),
        new("count", [DisplayUnit.Count]),
    ];

    /// <summary>The sizes of the units by name, and what is told of them, as JSON that the field pages' scripts read. Degrees, whose zero lies elsewhere, are not typed outdoors.</summary>
    public static string Json { get; } = JsonSerializer.Serialize(
        All.Where(kind => kind.Units.All(unit => unit.Zero == 0)).ToDictionary(
            kind => kind.Name,
            kind => new { sizes = kind.Units.SelectMany(unit => unit.Names.Select(name => (name, unit.Size))).ToDictionary(n => n.name, n => n.Size), kind.Taken }),
        JsonSerializerOptions.Web);

    /// <summary>What is understood, as it is told: “bar, MPa”; empty for a bare number.</summary>
    public string Taken => string.Join(", ", Units.Select(unit => unit.Symbol));

    /// <summary>The kind that has a unit.</summary>
    public static TypedKind Of(DisplayUnit unit) => All.First(kind => kind.Units.Contains(unit));

    /// <summary>The unit of a name, in large or small letters; null where the kind has none.</summary>
    public DisplayUnit? Named(string name) => Units.FirstOrDefault(unit => unit.Names.Contains(name, StringComparer.OrdinalIgnoreCase));
}
