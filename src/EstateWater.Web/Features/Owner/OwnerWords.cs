using EstateWater.Web.Parts;

namespace EstateWater.Web.Features.Owner;

/// <summary>The owner's sentence on water.</summary>
public static class OwnerWords
{
    /// <summary>“78 % of the season is gone, and 61 % of its water is used.”</summary>
    /// <param name="season">The season; null when its dates are not known.</param>
    /// <param name="sources">Water by source.</param>
    public static string Water(SeasonShare? season, IReadOnlyList<SourceUse> sources)
    {
        var limited = sources.Where(use => use.UsedPct is not null).ToList();
        var used = limited.Count == 0
            ? "no source has a limit on the season"
            : $"{Pct(100 * limited.Sum(use => use.UsedM3!.Value) / limited.Sum(use => use.AllocationM3!.Value))} of its water is used{Over(limited)}";
        return season is null
            ? $"How much of the season is gone cannot be said yet; {used.Replace("its water", "the season’s water", StringComparison.Ordinal)}."
            : $"{Pct(season.GonePct)} of the season is gone, and {used}.";
    }

    /// <summary>One source may be short while the others have plenty.</summary>
    private static string Over(List<SourceUse> limited)
    {
        var most = limited.MaxBy(use => use.UsedPct)!;
        return limited.Count == 1 ? "" : $", most of all of {most.Source} ({Pct(most.UsedPct!.Value)})";
    }

    private static string Pct(double value) => $"{EstateText.Number(value, 0)} %";
}
