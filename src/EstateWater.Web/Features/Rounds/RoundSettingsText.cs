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
    /// <param name="words">Of whoever typed it.</param>
    public IReadOnlyList<string> Mistakes(RoundWords words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return
        [
            .. new[]
            {
                Wrong(Walk, Units.Speed, 1 * DisplayUnit.KilometrePerHour.Size, 40 * DisplayUnit.KilometrePerHour.Size, 3.6 * DisplayUnit.KilometrePerHour.Size, words, words.WalkRule),
                Wrong(MinutesPerLeaf, DisplayUnit.Minute, 0.25, 15, 1.5, words, words.PerLeafRule),
                Wrong(MinutesPerBlock, DisplayUnit.Minute, 0, 60, 4, words, words.PerBlockRule),
                Wrong(HalfWidth, Units.Pressure, 0.2, 5, 1, words, words.PrecisionRule),
            }.OfType<string>(),
        ];
    }

    /// <summary>The settings of a text without mistakes.</summary>
    public RoundSettings ToSettings() => new()
    {
        WalkMPerMin = TypedQuantity.Read(Walk, Units.Speed)!.Value,
        MinutesPerLeaf = TypedQuantity.Read(MinutesPerLeaf, DisplayUnit.Minute)!.Value,
        MinutesPerBlock = TypedQuantity.Read(MinutesPerBlock, DisplayUnit.Minute)!.Value,
        HalfWidthBar = TypedQuantity.Read(HalfWidth, Units.Pressure)!.Value,
    };

    private static string? Wrong(string? text, DisplayUnit unit, double least, double most, double example, RoundWords words, string what)
    {
        // Limits are told rounded, so what is typed is held to what was told.
        var (low, high) = (Math.Round(unit.Show(least), 2), Math.Round(unit.Show(most), 2));
        if (TypedQuantity.Read(text, unit) is { } value && Math.Round(unit.Show(value), 6) is var typed && typed >= low && typed <= high)
        {
            return null;
        }

        var rule = words.Rule(what, low, high, unit, unit.Show(example));
        return TypedQuantity.StrangeUnit(text, unit) is { } strange ? $"{words.Strange(strange, TypedKind.Of(unit))}. {rule}" : rule;
    }
}
