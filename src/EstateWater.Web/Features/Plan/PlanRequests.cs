using EstateWater.Agronomy.Weather;
using EstateWater.Data.Model;
using EstateWater.Planning;

namespace EstateWater.Web.Features.Plan;

/// <summary>Says to the planner what an estate knew at one moment.</summary>
public static class PlanRequests
{
    /// <summary>Days ahead unless asked otherwise.</summary>
    public const int UsualHorizonDays = 10;

    /// <summary>Everything that was known at <paramref name="asOf"/>; what is dated after it is left out, but for forecasts issued before.</summary>
    public static PlanRequest From(EstateContents contents, DateTimeOffset asOf, int horizonDays = UsualHorizonDays)
    {
        ArgumentNullException.ThrowIfNull(contents);
        var zone = TimeZoneInfo.FindSystemTimeZoneById(contents.Estate.TimeZone);
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(asOf, zone).DateTime);
        var weather = contents.Weather.Where(w => w.Date < today).ToLookup(w => w.StationCode);
        var forecasts = contents.Forecasts.Where(f => f.IssuedAt <= asOf).ToLookup(f => f.StationCode);
        var applied = contents.AppliedWaters.Where(a => a.StartedAt <= asOf).ToLookup(a => a.ValveCode);
        return new PlanRequest
        {
            AsOf = asOf,
            TimeZone = zone,
            HorizonDays = horizonDays,
            Stations = [.. contents.Stations.Select(s => new PlanStation(
                s.Code,
                new StationSite(s.LatitudeDegrees, s.LongitudeDegrees, s.ElevationM, s.WindHeightM),
                [.. weather[s.Code].OrderBy(w => w.Date).Select(Day)],
                Issued(forecasts[s.Code])))],
            Sources = [.. contents.Sources.Select(s => new PlanSource(s.Code, s.MaxFlowM3PerH, s.DailyFrom, s.DailyTo, s.SeasonAllocationM3))],
            Valves = [.. contents.Valves.Select(v => new PlanValve(
                v.Code,
                v.SourceCode,
                [.. applied[v.Code].OrderBy(a => a.StartedAt).Select(a => new AppliedSet(a.StartedAt, a.Hours, a.MeterM3))]))],
            Blocks = new PlanBlocks(contents, asOf, today).All(),
        };
    }

    /// <summary>The same, where people were told of plans: sets ahead stand, and those that have begun count as run as published until somebody says otherwise.</summary>
    /// <param name="request">As the estate's contents give it.</param>
    /// <param name="published">The plan that stands; null where none does.</param>
    /// <param name="begun">Sets of any plan that have begun and of which nobody said anything. One whose valve has water on record in its time counts no more.</param>
    public static PlanRequest Told(this PlanRequest request, PublishedPlan? published, IReadOnlyList<PublishedSet> begun)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(begun);
        var byValve = begun.ToLookup(s => s.ValveCode);
        return request with
        {
            Valves = [.. request.Valves.Select(v => byValve[v.Code].Where(s => !IsOnRecord(s, v)).ToList() is not { Count: > 0 } mine ? v : v with
            {
                Applied = [.. v.Applied.Concat(mine.Select(s => new AppliedSet(s.Start, s.Hours, MeterM3: null))).OrderBy(a => a.StartedAt)],
            })],
            Standing = [.. (published?.Sets ?? [])
                .Where(s => s.Start > request.AsOf && IsAhead(s, request.AsOf))
                .OrderBy(s => s.Start).ThenBy(s => s.ValveCode, StringComparer.Ordinal)
                .Select(s => new StandingSet(s.ValveCode, s.Start, s.Hours))],
        };
    }

    private static bool IsOnRecord(PublishedSet set, PlanValve valve) =>
        valve.Applied.Any(a => a.StartedAt < set.End && set.Start < a.StartedAt.AddHours(a.Hours));

    // Not one that was run before its time, or that could not run.
    private static bool IsAhead(PublishedSet set, DateTimeOffset now) => set.Confirmation is not { } said || (said.NotRun is null && said.StartedAt > now);

    private static DailyWeather Day(WeatherDayBase day) =>
        new(day.Date, day.TMaxC, day.TMinC, day.RhMaxPct, day.RhMinPct, day.WindMPerS, day.SolarMjPerM2, day.RainMm);

    private static List<IssuedForecast> Issued(IEnumerable<ForecastDay> days) =>
        [.. days.GroupBy(d => (d.IssuedAt, d.Member))
            .OrderBy(g => g.Key.IssuedAt).ThenBy(g => g.Key.Member, StringComparer.Ordinal)
            .Select(g => new IssuedForecast(g.Key.IssuedAt, g.Key.Member, [.. g.OrderBy(d => d.Date).Select(Day)]))];
}
