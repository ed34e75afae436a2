using EstateWater.Agronomy.Units;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;

namespace EstateWater.Data.Store.Taken;

/// <summary>How the record of changes tells of what was taken.</summary>
internal static class TakenWords
{
    /// <summary>What the record says of an entry, and of what it replaced.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="replaced">The entry that it replaces; null for a first.</param>
    /// <param name="words">On the estate's clock.</param>
    public static (Sentence What, Sentence? Before) Of(TakenEntry entry, TakenEntry? replaced, ChangeWords words)
    {
        var before = replaced is { IsWithdrawal: false } ? Of(TakenContent.Parse(replaced.Content), words) : null;
        return (entry.IsWithdrawal ? Sentence.Of($"Withdrew {before!}") : Of(TakenContent.Parse(entry.Content), words), before);
    }

    // For example “B07: 10 leaves, leaf, mean 12.3 bar, from Tue 21 Jan 12:40”.
    private static Sentence Of(TakenContent content, ChangeWords words)
    {
        var what = content switch
        {
            { Leaves: { } set } => Sentence.Of($"{set.Leaves.Count} {(set.Leaves.Count == 1 ? "leaf" : "leaves")}, {MeasureWord(set.Measure)}, mean {Mean(set)}"),
            { Soil: { } soil } => Sentence.Of($"tube {soil.Tube}, {soil.Depths.Count} {(soil.Depths.Count == 1 ? "depth" : "depths")}"),
            { Canopy: { } canopy } => Sentence.Of($"canopy: {Sentence.Join(", ", Parts(canopy))}"),
            { ElStage: { } stage } => Sentence.Of($"growth stage {stage:0.#}"),
            _ => throw new ArgumentException("Nothing was taken.", nameof(content)),
        };
        var note = content.Note is null ? "" : $" ({content.Note})";
        return Sentence.Of($"{content.BlockCode}: {what}, {(content.Kind == TakenKind.Chamber ? "from " : "")}{words.When(content.TakenAt)}{note}");
    }

    private static Quantity Mean(LeafSet set) => new(QuantityKind.Tension, set.Leaves.Average(l => l.TensionBar), 1);

    private static IEnumerable<Sentence> Parts(CanopyFacts canopy)
    {
        if (canopy.ShootLengthCm is { } length)
        {
            yield return Sentence.Of($"shoots {Quantity.ShortLength(length)}");
        }

        if (canopy.ShadedFraction is { } shade)
        {
            yield return Sentence.Of($"shade {100 * shade:0.#} %");
        }

        if (canopy.GrowingTipsPct is { } tips)
        {
            yield return Sentence.Of($"growing tips {tips:0.#} %");
        }

        if (canopy.VisualStress is { } stress)
        {
            yield return Sentence.Of($"stress seen {stress}");
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
