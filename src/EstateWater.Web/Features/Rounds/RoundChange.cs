using EstateWater.Data.Model;
using EstateWater.Planning.Rounds;

namespace EstateWater.Web.Features.Rounds;

/// <summary>What the manager wants of a round.</summary>
/// <param name="Settings">How it is walked.</param>
/// <param name="Added">Blocks that are read in any case.</param>
/// <param name="Dropped">Blocks that are not.</param>
public sealed record RoundWishes(RoundSettings Settings, IReadOnlyList<string> Added, IReadOnlyList<string> Dropped);

/// <summary>One change of a round: a block put in or taken out, its own settings, or all changes forgotten.</summary>
public sealed record RoundChange
{
    /// <summary>A block to read in any case; null for none.</summary>
    public string? Add { get; init; }

    /// <summary>A block to leave out; null for none.</summary>
    public string? Drop { get; init; }

    /// <summary>Another way to walk it; null to keep the present one.</summary>
    public RoundSettings? Settings { get; init; }

    /// <summary>Whether to plan as if nobody had put anything in or out.</summary>
    public bool Forget { get; init; }

    /// <summary>What is wanted after the change. Blocks that are not of the estate are left out.</summary>
    public RoundWishes Apply(RoundPlan before, EstateContents contents)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(contents);
        var known = contents.Blocks.Select(b => b.Code).ToHashSet();
        var settings = Settings ?? before.Settings;
        return Forget
            ? new RoundWishes(settings, [], [])
            : new RoundWishes(settings, Changed(before.Added, Add, Drop, known), Changed(before.Dropped, Drop, Add, known));
    }

    private static List<string> Changed(IReadOnlyList<string> codes, string? with, string? without, HashSet<string> known) =>
        [.. codes.Where(code => code != without).Append(with).OfType<string>().Where(known.Contains).Distinct().Order(StringComparer.Ordinal)];
}
