using System.Globalization;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;

namespace EstateWater.Data.Store.Taken;

/// <summary>How the record of changes tells of what was taken.</summary>
internal static class TakenWords
{
    /// <summary>For example “B07: 10 leaves, leaf, mean 12.3 bar, from Tue 21 Jan 12:40”.</summary>
    public static string Of(TakenContent content, ChangeWords clock)
    {
        var what = content switch
        {
            { Leaves: { } set } => string.Create(
                CultureInfo.InvariantCulture,
                $"{set.Leaves.Count} {(set.Leaves.Count == 1 ? "leaf" : "leaves")}, {MeasureWord(set.Measure)}, mean {set.Leaves.Average(l => l.TensionBar):0.0} bar"),
            { Soil: { } soil } => $"tube {soil.Tube}, {soil.Depths.Count} {(soil.Depths.Count == 1 ? "depth" : "depths")}",
            { Canopy: { } canopy } => "canopy: " + string.Join(", ", Parts(canopy)),
            { ElStage: { } stage } => string.Create(CultureInfo.InvariantCulture, $"growth stage {stage:0.#}"),
            _ => throw new ArgumentException("Nothing was taken.", nameof(content)),
        };
        return ChangeWords.Short($"{content.BlockCode}: {what}, {(content.Kind == TakenKind.Chamber ? "from " : "")}{clock.Clock(content.TakenAt)}{(content.Note is null ? "" : $" ({content.Note})")}");
    }

    /// <summary>For example “Withdrew B07: …”.</summary>
    public static string Withdrew(string what) => ChangeWords.Short($"Withdrew {what}");

    private static IEnumerable<string> Parts(CanopyFacts canopy)
    {
        if (canopy.ShootLengthCm is { } length)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"shoots {length:0.#} cm");
        }

        if (canopy.ShadedFraction is { } shade)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"shade {100 * shade:0.#} %");
        }

        if (canopy.GrowingTipsPct is { } tips)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"growing tips {tips:0.#} %");
        }

        if (canopy.VisualStress is { } stress)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"stress seen {stress}");
        }
    }

    private static string MeasureWord(WaterPotentialMeasure measure) => measure switch
    {
        WaterPotentialMeasure.Leaf => "leaf",
        WaterPotentialMeasure.Stem => "stem",
        WaterPotentialMeasure.Predawn => "predawn",
        _ => throw new ArgumentOutOfRangeException(nameof(measure), measure, "Leaf, Stem or Predawn."),
    };
}
