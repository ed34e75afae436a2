using EstateWater.Web.Features.Rounds;
using EstateWater.Web.Features.Sets;
using EstateWater.Web.Parts;
using EstateWater.Web.Parts.Units;
using EstateWater.Web.State;

namespace EstateWater.Web.Features.Week;

/// <summary>What is missing for a good plan, each with the place where it is mended.</summary>
public static class WeekChores
{
    /// <summary>Blocks are read once a week, with a day's grace. [days]</summary>
    public const int ReadingDays = 8;

    /// <summary>A forecast is issued daily. [h]</summary>
    public const int ForecastHours = 24;

    /// <summary>A station tells of each day on the next; a day's grace. [days]</summary>
    public const int StationDays = 2;

    /// <summary>The most pressing first; empty when nothing is missing.</summary>
    /// <param name="snapshot">What the page shows.</param>
    /// <param name="sets">Published sets that stand.</param>
    /// <param name="now">The estate's time.</param>
    /// <param name="units">How its reader is told days and times.</param>
    public static IReadOnlyList<Chore> Of(EstateSnapshot snapshot, IReadOnlyList<SetLine> sets, DateTimeOffset now, UnitChoice units) =>
        [.. Unconfirmed(sets, now, units), .. Unread(snapshot), .. StaleForecasts(snapshot, now, units), .. SilentStations(snapshot, units)];

    private static IEnumerable<Chore> Unconfirmed(IReadOnlyList<SetLine> sets, DateTimeOffset now, UnitChoice units)
    {
        var open = sets.Where(s => s.End <= now && s.Confirmed is null).ToList();
        return open.Count == 0 ? [] : [new Chore(
            $"{EstateText.Capital(WeekWords.Count(open.Count, "set"))} that ended {(open.Count == 1 ? "is" : "are")} not confirmed: {Few(open.Select(s => $"{s.Valve} of {units.DayClock(s.Start)}"))}.",
            "/sets", "Confirm")];
    }

    private static IEnumerable<Chore> Unread(EstateSnapshot snapshot)
    {
        var readOn = snapshot.Contents.ChamberReadings
            .Where(r => r.TakenAt <= snapshot.AsOf)
            .GroupBy(r => r.BlockCode)
            .ToDictionary(r => r.Key, r => snapshot.DayOf(r.Max(leaf => leaf.TakenAt)));
        var late = snapshot.Contents.Blocks
            .Where(b => !readOn.TryGetValue(b.Code, out var day) || snapshot.Today.DayNumber - day.DayNumber > ReadingDays)
            .Select(b => b.Code)
            .ToList();
        return late.Count == 0 ? [] : [new Chore(
            $"{EstateText.Capital(WeekWords.Count(late.Count, "block"))} not read for more than {ReadingDays} days: {Few(late)}.",
            RoundEndpoint.Href, "Plan the round")];
    }

    private static IEnumerable<Chore> StaleForecasts(EstateSnapshot snapshot, DateTimeOffset now, UnitChoice units)
    {
        var issued = snapshot.Contents.Forecasts.Where(f => f.IssuedAt <= now).ToLookup(f => f.StationCode, f => f.IssuedAt);
        return UsedStations(snapshot)
            .Where(station => !issued[station].Any() || now - issued[station].Max() > TimeSpan.FromHours(ForecastHours))
            .Select(station => new Chore(
                issued[station].Any()
                    ? $"The forecast at {station} is of {units.Moment(TimeZoneInfo.ConvertTime(issued[station].Max(), snapshot.TimeZone))}, older than {ForecastHours} h."
                    : $"There is no forecast at {station}.",
                "/changes?kind=import", "Last imports"));
    }

    private static IEnumerable<Chore> SilentStations(EstateSnapshot snapshot, UnitChoice units)
    {
        var measured = snapshot.Contents.Weather.Where(w => w.Date < snapshot.Today).ToLookup(w => w.StationCode, w => w.Date);
        return UsedStations(snapshot)
            .Where(station => !measured[station].Any() || snapshot.Today.DayNumber - measured[station].Max().DayNumber > StationDays)
            .Select(station => new Chore(
                measured[station].Any()
                    ? $"The station {station} has been silent since {units.Day(measured[station].Max())}."
                    : $"The station {station} has never told anything.",
                "/changes?kind=import", "Last imports"));
    }

    private static IEnumerable<string> UsedStations(EstateSnapshot snapshot) =>
        snapshot.Contents.Blocks.Select(b => b.StationCode).Distinct().Order(StringComparer.Ordinal);

    private static string Few(IEnumerable<string> names)
    {
        const int Shown = 6;
        var all = names.ToList();
        return string.Join(", ", all.Take(Shown)) + (all.Count > Shown ? $" and {all.Count - Shown} more" : "");
    }
}

/// <summary>One thing to mend.</summary>
/// <param name="What">In a sentence.</param>
/// <param name="Href">Where.</param>
/// <param name="LinkWords">Words of the link.</param>
public sealed record Chore(string What, string Href, string LinkWords);
