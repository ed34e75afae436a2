using EstateWater.Agronomy.Sun;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Data.Model;

namespace EstateWater.Web.Features.Readings;

/// <summary>Gathers single leaves into the sets in which they were read, and checks them.</summary>
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

    /// <summary>What is doubtful about each set of one block and measure, in order of time.</summary>
    /// <param name="history">Sets of one block and measure.</param>
    /// <param name="block">The block, whose place decides when the sun is highest.</param>
    /// <param name="zone">The estate's zone.</param>
    public static IReadOnlyList<CheckedSet> Check(IEnumerable<ReadingSet> history, Block block, TimeZoneInfo zone)
    {
        var place = block.Outline.Centroid;
        ReadingSet? previous = null;
        var found = new List<CheckedSet>();
        foreach (var set in history.OrderBy(set => set.Date))
        {
            var sun = SolarDay.For(set.Date, place.Y, place.X, zone);
            var context = new ReadingSetContext
            {
                SolarNoon = sun.Noon,
                Sunrise = sun.Sunrise,
                Previous = previous is null ? null : new PreviousReadingSet(previous.Leaves[0].TakenAt, previous.Statistics.MeanMpa),
            };
            found.Add(new CheckedSet(set, ReadingSetChecks.Of(set.Facts, context)));
            previous = set;
        }

        return found;
    }

    private static DateOnly DayOf(ChamberReading leaf, TimeZoneInfo zone) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(leaf.TakenAt, zone).DateTime);
}

/// <summary>A reading set and what is doubtful about it.</summary>
/// <param name="Set">The set.</param>
/// <param name="Findings">The gravest first; empty when it is sound.</param>
public sealed record CheckedSet(ReadingSet Set, IReadOnlyList<ReadingFinding> Findings)
{
    /// <summary>Whether a check failed, so that the set is indicative only.</summary>
    public bool IsDoubtful => Findings.Any(finding => finding.Severity >= FindingSeverity.Doubtful);
}
