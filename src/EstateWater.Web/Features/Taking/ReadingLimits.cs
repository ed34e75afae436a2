using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Taking;

/// <summary>The most that is taken of what is typed, told in the reader's unit with an example: “1000 cm, like 40”.</summary>
public static class ReadingLimits
{
    /// <summary>Depth in the soil, and length of a shoot. [cm]</summary>
    public const double MostLengthCm = 1000;

    /// <summary>What a chamber bears. [bar]</summary>
    public const double MostTensionBar = 100;

    private const double ExampleDepthCm = 40;
    private const double ExampleShootCm = 95;
    private const double ExampleTensionBar = 12.5;

    /// <summary>Of a depth in the soil.</summary>
    public static string Depth(UnitChoice units, string like = "like") => Length(units, ExampleDepthCm, like);

    /// <summary>Of the length of a shoot.</summary>
    public static string Shoot(UnitChoice units, string like = "like") => Length(units, ExampleShootCm, like);

    /// <summary>Of a leaf’s pressure.</summary>
    public static string Tension(UnitChoice units, string like = "like")
    {
        ArgumentNullException.ThrowIfNull(units);
        var unit = units.Pressure;
        return $"{units.Trimmed(unit.Show(MostTensionBar))} {unit.Symbol}, {like} {units.Trimmed(unit.Show(ExampleTensionBar))}";
    }

    // Whole units, the limit rounded down: what the words allow is taken.
    private static string Length(UnitChoice units, double exampleCm, string like)
    {
        ArgumentNullException.ThrowIfNull(units);
        var unit = units.ShortLength;
        return $"{units.Trimmed(Math.Floor(unit.Show(MostLengthCm)))} {unit.Symbol}, {like} {units.Trimmed(Math.Round(unit.Show(exampleCm)))}";
    }
}
