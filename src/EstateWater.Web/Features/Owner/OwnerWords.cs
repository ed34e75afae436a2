using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Owner;

/// <summary>The owner's sentence on water.</summary>
public static class OwnerWords
{
    /// <summary>“78 % of the season is gone, and 61 % of its water is used.”</summary>
    /// <param name="season">The season; null when its dates are not known.</param>
    /// <param name="sources">Water by source.</param>
    /// <param name="units">How its reader is told shares.</param>
    public static string Water(SeasonShare? season, IReadOnlyList<SourceUse> sources, UnitChoice units)
    {
        var limited = sources.Where(use => use.UsedPct is not null).ToList();
        var used = limited.Count == 0
            ? "no source has a limit on the season"
            : $"{units.Percent(100 * limited.Sum(use => use.UsedM3!.Value) / limited.Sum(use => use.AllocationM3!.Value))} of its water is used{Over(limited, units)}";
        return season is null
            ? $"How much of the season is gone cannot be said yet; {used.Replace("its water", "the season’s water", StringComparison.Ordinal)}."
            : $"{units.Percent(season.GonePct)} of the season is gone, and {used}.";
    }

    /// <summary>One source may be short while the others have plenty.</summary>
    private static string Over(List<SourceUse> limited, UnitChoice units)
    {
        var most = limited.MaxBy(use => use.UsedPct)!;
        return limited.Count == 1 ? "" : $", most of all of {most.Source} ({units.Percent(most.UsedPct!.Value)})";
    }
}
