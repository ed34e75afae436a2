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

    /// <summary>Sets of the plan that stands which have not begun at a moment; not those that were run before their time or that could not run.</summary>
    public static IReadOnlyList<StandingSet> Standing(PublishedPlan? published, DateTimeOffset now) =>
        [.. (published?.Sets ?? [])
            .Where(s => s.Start > now && (s.Confirmation is not { } said || (said.NotRun is null && said.StartedAt > now)))
            .OrderBy(s => s.Start).ThenBy(s => s.ValveCode, StringComparer.Ordinal)
            .Select(s => new StandingSet(s.ValveCode, s.Start, s.Hours))];

    private static DailyWeather Day(WeatherDayBase day) =>
        new(day.Date, day.TMaxC, day.TMinC, day.RhMaxPct, day.RhMinPct, day.WindMPerS, day.SolarMjPerM2, day.RainMm);

    private static List<IssuedForecast> Issued(IEnumerable<ForecastDay> days) =>
        [.. days.GroupBy(d => (d.IssuedAt, d.Member))
            .OrderBy(g => g.Key.IssuedAt).ThenBy(g => g.Key.Member, StringComparer.Ordinal)
            .Select(g => new IssuedForecast(g.Key.IssuedAt, g.Key.Member, [.. g.OrderBy(d => d.Date).Select(Day)]))];
}
