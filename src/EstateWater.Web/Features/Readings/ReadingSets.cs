using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;

namespace EstateWater.Web.Features.Readings;

/// <summary>Leaves of one block read on one day for one measure.</summary>
/// <param name="BlockCode">The block.</param>
/// <param name="Measure">Which water potential.</param>
/// <param name="Date">The estate's day.</param>
/// <param name="Leaves">In the order in which they were read.</param>
public sealed record ReadingSet(string BlockCode, WaterPotentialMeasure Measure, DateOnly Date, IReadOnlyList<ChamberReading> Leaves)
{
    /// <summary>Mean tension. [bar]</summary>
    public double MeanBar => Leaves.Average(leaf => leaf.TensionBar);
}

/// <summary>Gathers single leaves into the sets in which they were read.</summary>
public static class ReadingSets
{
    /// <summary>All sets, by block, measure and day.</summary>
    /// <param name="leaves">Leaves in any order.</param>
    /// <param name="zone">The estate's zone, which decides the day.</param>
    /// <param name="until">Leaves read after this moment are left out.</param>
    public static IReadOnlyList<ReadingSet> From(IEnumerable<ChamberReading> leaves, TimeZoneInfo zone, DateTimeOffset until) =>
        [.. leaves
            .Where(leaf => leaf.TakenAt <= until)
            .GroupBy(leaf => (leaf.BlockCode, leaf.Measure, Day: DayOf(leaf, zone)))
            .Select(set => new ReadingSet(
                set.Key.BlockCode, set.Key.Measure, set.Key.Day, [.. set.OrderBy(leaf => leaf.TakenAt).ThenBy(leaf => leaf.Id)]))
            .OrderBy(set => set.BlockCode, StringComparer.Ordinal).ThenBy(set => set.Measure).ThenBy(set => set.Date)];

    private static DateOnly DayOf(ChamberReading leaf, TimeZoneInfo zone) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(leaf.TakenAt, zone).DateTime);
}
