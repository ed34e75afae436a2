namespace EstateWater.Planning;

/// <summary>What a newer request knows of an estate's blocks that an older one did not.</summary>
internal static class NewObservations
{
    /// <summary>
    /// The blocks whose leaves, profiles, canopy or stages differ, where nothing else does that learning uses; null where
    /// anything does: another day, weather, a source, water applied, or a block declared otherwise.
    /// </summary>
    public static IReadOnlySet<string>? Blocks(PlanRequest before, PlanRequest now) =>
        before.Today == now.Today
        && before.TimeZone.Equals(now.TimeZone)
        && before.HorizonDays == now.HorizonDays
        && Same(before.Stations, now.Stations, Same)
        && before.Sources.SequenceEqual(now.Sources)
        && Same(before.Valves, now.Valves, (a, b) => a.Code == b.Code && a.SourceCode == b.SourceCode && a.Applied.SequenceEqual(b.Applied))
        && Same(before.Blocks, now.Blocks, (a, b) => Declared(a) == Declared(b) && a.Targets.SequenceEqual(b.Targets))
            ? before.Blocks.Zip(now.Blocks).Where(pair => !SameObservations(pair.First, pair.Second)).Select(pair => pair.Second.Code).ToHashSet()
            : null;

    private static bool Same(PlanStation one, PlanStation other) =>
        one.Code == other.Code
        && one.Site == other.Site
        && one.Days.SequenceEqual(other.Days)
        && Same(one.Forecasts, other.Forecasts, (a, b) => a.IssuedAt == b.IssuedAt && a.Member == b.Member && a.Days.SequenceEqual(b.Days));

    // Without its lists a block is equal by value.
    private static PlanBlock Declared(PlanBlock block) => block with { Stages = [], Targets = [], Readings = [], SoilProfiles = [], CanopyLooks = [] };

    private static bool SameObservations(PlanBlock one, PlanBlock other) =>
        one.Stages.SequenceEqual(other.Stages)
        && one.Readings.SequenceEqual(other.Readings)
        && one.CanopyLooks.SequenceEqual(other.CanopyLooks)
        && Same(one.SoilProfiles, other.SoilProfiles, (a, b) => a.Date == b.Date && a.Tube == b.Tube && a.Depths.SequenceEqual(b.Depths));

    private static bool Same<T>(IReadOnlyList<T> one, IReadOnlyList<T> other, Func<T, T, bool> same) =>
        one.Count == other.Count && one.Zip(other).All(pair => same(pair.First, pair.Second));
}
