using EstateWater.Planning.Rounds;
using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Rounds;

/// <summary>Round settings as a person types them.</summary>
/// <param name="Walk">In the person's unit of speed.</param>
/// <param name="MinutesPerLeaf">[min]</param>
/// <param name="MinutesPerBlock">[min]</param>
/// <param name="HalfWidth">In the person's unit of tension.</param>
/// <param name="Units">The person's units.</param>
public sealed record RoundSettingsText(string? Walk, string? MinutesPerLeaf, string? MinutesPerBlock, string? HalfWidth, UnitChoice Units)
{
    /// <summary>As settings are shown.</summary>
    public static RoundSettingsText Of(RoundSettings settings, UnitChoice units)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(units);
        string Text(double value) => value.ToString("0.###", units.Numbers.Numbers);
        return new(
            Text(units.Speed.Show(settings.WalkMPerMin)),
            Text(settings.MinutesPerLeaf),
            Text(settings.MinutesPerBlock),
            Text(units.Pressure.Show(settings.HalfWidthBar)),
            units);
    }

    /// <summary>What is wrong, each with the rule and an example; empty when nothing is.</summary>
    public IReadOnlyList<string> Mistakes =>
    [
        .. new[]
        {
            Wrong(Walk, Units.Speed, 1 * DisplayUnit.KilometrePerHour.Size, 40 * DisplayUnit.KilometrePerHour.Size, 3.6 * DisplayUnit.KilometrePerHour.Size, "Speed between blocks is"),
            Wrong(MinutesPerLeaf, Minutes, 0.25, 15, 1.5, "A leaf takes"),
            Wrong(MinutesPerBlock, Minutes, 0, 60, 4, "Setting up in a block takes"),
            Wrong(HalfWidth, Units.Pressure, 0.2, 5, 1, "The precision wanted is"),
        }.OfType<string>(),
    ];

    private static DisplayUnit Minutes { get; } = new("min", "minutes", 1);

    /// <summary>The settings of a text without mistakes.</summary>
    public RoundSettings ToSettings() => new()
    {
        WalkMPerMin = TypedQuantity.Read(Walk, Units.Speed)!.Value,
        MinutesPerLeaf = TypedQuantity.Read(MinutesPerLeaf, Minutes)!.Value,
        MinutesPerBlock = TypedQuantity.Read(MinutesPerBlock, Minutes)!.Value,
        HalfWidthBar = TypedQuantity.Read(HalfWidth, Units.Pressure)!.Value,
    };

    private string? Wrong(string? text, DisplayUnit unit, double least, double most, double example, string what)
    {
        // Limits are told rounded, so what is typed is held to what was told.
        var (low, high) = (Math.Round(unit.Show(least), 2), Math.Round(unit.Show(most), 2));
        return TypedQuantity.Read(text, unit) is { } value && Math.Round(unit.Show(value), 6) is var typed && typed >= low && typed <= high
            ? null
            : $"{what} {Units.Trimmed(low)} to {Units.Trimmed(high)} {unit.Symbol}, like {Units.Trimmed(unit.Show(example))}.";
    }
}
