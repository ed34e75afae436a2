using EstateWater.Web.Features.Blocks;
using EstateWater.Web.Features.Readings;

namespace EstateWater.Web.Features.Soil;

/// <summary>One day on which leaves or tubes were read.</summary>
/// <param name="Date">The day.</param>
/// <param name="Sets">Reading sets of the day.</param>
/// <param name="MmByTube">Water in the soil by tube. [mm]</param>
/// <param name="AppliedMm">Water put on since the row before, its day included; null for the first row. [mm]</param>
/// <param name="RainMm">Rain since the row before; null for the first row or where none was measured. [mm]</param>
public sealed record SoilCourseRow(DateOnly Date, IReadOnlyList<CheckedSet> Sets, IReadOnlyDictionary<string, double> MmByTube, double? AppliedMm, double? RainMm)
{
    /// <summary>The season's days, the latest first.</summary>
    /// <param name="history">The block's season.</param>
    /// <param name="tubes">Its tubes.</param>
    public static IReadOnlyList<SoilCourseRow> From(BlockHistory history, IReadOnlyList<TubeSeries> tubes)
    {
        var mm = tubes
            .SelectMany(tube => tube.Profiles.Where(profile => profile.Date >= history.SeasonStart).Select(profile => (profile.Date, tube.Tube, Mm: tube.Mm(profile))))
            .Where(each => each.Mm is not null)
            .ToLookup(each => each.Date, each => (each.Tube, Mm: each.Mm!.Value));
        var sets = history.Sets.ToLookup(set => set.Set.Date);
        var dates = mm.Select(day => day.Key).Concat(sets.Select(day => day.Key)).Distinct().Order().ToList();
        return [.. dates.Select((date, i) => new SoilCourseRow(
            date,
            [.. sets[date]],
            mm[date].ToDictionary(each => each.Tube, each => each.Mm),
            i == 0 ? null : Between(history, dates[i - 1], date).Sum(day => day.AppliedMm ?? 0),
            i == 0 ? null : RainBetween(history, dates[i - 1], date))).Reverse()];
    }

    private static double? RainBetween(BlockHistory history, DateOnly from, DateOnly to) =>
        Between(history, from, to).Select(day => day.RainMm).OfType<double>().ToList() is { Count: > 0 } measured ? measured.Sum() : null;

    // What is put on in the evening or rains on the day of a reading is felt by the next.
    private static IEnumerable<HistoryDay> Between(BlockHistory history, DateOnly from, DateOnly to) =>
        history.Days.Where(day => day.Date >= from && day.Date < to && !day.IsForecast);
}
