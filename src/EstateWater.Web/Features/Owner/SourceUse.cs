using EstateWater.Planning;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Owner;

/// <summary>Water of a source in this season.</summary>
/// <param name="Source">Its code.</param>
/// <param name="UsedM3">Used so far; null when it cannot be said. [m³]</param>
/// <param name="PublishedM3">Of published sets that have not begun. [m³]</param>
/// <param name="AllocationM3">The season's water; null when unlimited. [m³]</param>
/// <param name="Season">How the allocation is expected to last; null where there is none.</param>
public sealed record SourceUse(string Source, double? UsedM3, double PublishedM3, double? AllocationM3, SeasonWater? Season)
{
    /// <summary>Left of the allocation before any plan; null when unlimited or not known. [m³]</summary>
    public double? LeftM3 => AllocationM3 - UsedM3;

    /// <summary>Used of the allocation; null when unlimited or not known. [%]</summary>
    public double? UsedPct => PctOf(UsedM3);

    /// <summary>Used of the allocation once the published sets have run. [%]</summary>
    public double? WithPublishedPct => PctOf(UsedM3 + PublishedM3);

    /// <summary>“36 000 of 72 000 m³ used, 50 %”.</summary>
    public string Words(UnitChoice units) => (UsedM3, AllocationM3) switch
    {
        (null, _) => "use not known",
        ({ } used, null) => $"{units.VolumeOf(used)} used, no limit on the season",
        ({ } used, { } allocation) => $"{units.VolumeOf(used)} of {units.VolumeOf(allocation)} used, {units.Percent(UsedPct!.Value)}",
    };

    /// <summary>Every source, in the order of the plan.</summary>
    public static IReadOnlyList<SourceUse> From(EstateSnapshot snapshot)
    {
        var allocations = snapshot.Contents.Sources.ToDictionary(source => source.Code, source => source.SeasonAllocationM3);
        var ahead = (snapshot.Published?.Sets ?? [])
            .Where(set => set.Start > snapshot.AsOf && set.Confirmation is null)
            .ToLookup(set => set.SourceCode, set => set.Hours * set.FlowM3PerH);
        return [.. snapshot.Plan.Water.Select(water => new SourceUse(
            water.Source,
            // What the plan counts with, so that used and left add up on every page.
            allocations.GetValueOrDefault(water.Source) - water.LeftM3 - water.PlannedM3 ?? snapshot.Fitted?.UsedM3(water.Source),
            ahead[water.Source].Sum(),
            allocations.GetValueOrDefault(water.Source),
            water.Season))];
    }

    private double? PctOf(double? m3) => AllocationM3 is > 0 ? 100 * m3 / AllocationM3 : null;
}
