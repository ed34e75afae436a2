using EstateWater.Planning.Needs;

namespace EstateWater.Planning.Packing;

/// <summary>The sets of a source and how near they are to the best possible.</summary>
/// <param name="Sets">Placed.</param>
/// <param name="Objective">Trouble spared by them, in the packing's units.</param>
/// <param name="Bound">No placing can spare more.</param>
internal sealed record PackedSource(IReadOnlyList<PlacedSet> Sets, long Objective, long Bound)
{
    /// <summary>Quarter hours that each need would still be worth, were there room; absent where none.</summary>
    public IReadOnlyDictionary<ValveNeed, int> StillWanted { get; init; } = new Dictionary<ValveNeed, int>();

    /// <summary>Valves that keep the sets people were told of.</summary>
    public IReadOnlySet<string> Told { get; init; } = new HashSet<string>();

    /// <summary>What sets lost of <see cref="Objective"/> when they were shortened to what still helps in the nights they got.</summary>
    public long CutBack { get; init; }
}
