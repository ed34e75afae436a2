using EstateWater.Web.Parts.Units;

namespace EstateWater.Web.Features.Owner;

/// <summary>The owner's sentences on water.</summary>
public static class OwnerWords
{
    /// <summary>“Bore runs short before harvest: 17 843 m³ is left, the blocks want 18 553 m³.” Null where no season is known.</summary>
    /// <param name="sources">Water by source.</param>
    /// <param name="units">How its reader is told volumes.</param>
    public static string? ToHarvest(IReadOnlyList<SourceUse> sources, UnitChoice units)
    {
        var known = sources.Where(use => use.Season is not null).ToList();
        var shorts = known.Where(use => use.Season!.IsShort).ToList();
        if (shorts.Count == 0)
        {
            return known.Count == 0 ? null : "The water left is expected to last to harvest.";
        }

        var isOne = shorts.Count == 1;
        var left = And(shorts.Select(use => units.VolumeOf(Math.Max(0, use.LeftM3 ?? 0))));
        return $"{And(shorts.Select(use => use.Source))} {(isOne ? "runs" : "run")} short before harvest: {left} {(isOne ? "is" : "are")} left, " +
            $"the blocks want {And(shorts.Select(use => units.VolumeOf(use.Season!.WantedM3)))}.";
    }

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

    private static string And(IEnumerable<string> parts) => parts.ToList() is [.. { Count: > 0 } before, var last] ? $"{string.Join(", ", before)} and {last}" : parts.Single();

    /// <summary>One source may be short while the others have plenty.</summary>
    private static string Over(List<SourceUse> limited, UnitChoice units)
    {
        var most = limited.MaxBy(use => use.UsedPct)!;
        return limited.Count == 1 ? "" : $", most of all of {most.Source} ({units.Percent(most.UsedPct!.Value)})";
    }
}
