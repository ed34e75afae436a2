using System.Collections.Concurrent;
using EstateWater.Agronomy.Outlook;
using EstateWater.Planning.Blocks;
using EstateWater.Planning.Needs;
using EstateWater.Planning.Packing;
using EstateWater.Planning.Seasons;
using EstateWater.Planning.Weather;

namespace EstateWater.Planning;

/// <summary>An estate after learning: its blocks' courses, its sources' nights.</summary>
public sealed class FittedEstate
{
    private readonly Dictionary<string, IReadOnlyList<Night>> nights;
    private readonly ConcurrentDictionary<string, ValveNeed> needsWithoutHand = new();
    private readonly Lazy<IReadOnlyDictionary<string, SourceSeason>> seasons;

    private FittedEstate(PlanRequest request, DateOnly today, IReadOnlyDictionary<string, StationWeather> weather, IReadOnlyList<ValveWater> valves, IReadOnlyList<BlockCourse> courses)
    {
        Request = request;
        Today = today;
        Weather = weather;
        Valves = valves;
        Courses = courses;
        nights = request.Sources.ToDictionary(s => s.Code, s => Night.Of(s, request.AsOf, request.TimeZone, today, request.HorizonDays));
        seasons = new(() => EstateSeason.Of(this, CancellationToken.None));
    }

    /// <summary>What it was fitted to.</summary>
    public PlanRequest Request { get; }

    internal DateOnly Today { get; }

    internal int Days => Request.HorizonDays + 1;

    internal IReadOnlyDictionary<string, StationWeather> Weather { get; }

    internal IReadOnlyList<ValveWater> Valves { get; }

    /// <summary>In order of block code.</summary>
    internal IReadOnlyList<BlockCourse> Courses { get; }

    /// <summary>The season of each source that has an allocation.</summary>
    internal IReadOnlyDictionary<string, SourceSeason> Seasons => seasons.Value;

    internal static FittedEstate Of(PlanRequest request, CancellationToken cancellation)
    {
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(request.AsOf, request.TimeZone).DateTime);
        var days = request.HorizonDays + 1;
        var weather = request.Stations.ToDictionary(
            s => s.Code,
            s => StationWeather.Of(s, today, SeasonSpan.Of(today, s.Site.LatitudeDegrees), request.AsOf, days));
        var ahead = weather.ToDictionary(w => w.Key, w => w.Value.Ahead.ForMembers(w.Value.Station.Site));
        var hot = weather.ToDictionary(w => w.Key, w => w.Value.Ahead.HotChances());
        var valves = request.Valves.OrderBy(v => v.Code, StringComparer.Ordinal).Select(v => new ValveWater(v, request.Blocks, request.TimeZone)).ToList();
        var valveByCode = valves.ToDictionary(v => v.Code);
        var states = request.Blocks
            .OrderBy(b => b.Code, StringComparer.Ordinal)
            .Select(b => new BlockState(b, valveByCode[b.ValveCode], weather[b.StationCode], SeasonSpan.Of(today, b.LatitudeDegrees), today, request.TimeZone))
            .ToList();
        var fitted = EstateFit.Fit([.. states.Select(s => s.Evidence)], cancellation);
        var courses = new BlockCourse[states.Count];
        Parallel.For(0, states.Count, new ParallelOptions { CancellationToken = cancellation }, i =>
            courses[i] = new BlockCourse(states[i], fitted[i], ahead[states[i].Block.StationCode], hot[states[i].Block.StationCode], today, days));
        return new FittedEstate(request, today, weather, valves, courses);
    }

    /// <summary>What each valve wants; valves without hours by hand are searched once.</summary>
    internal IReadOnlyList<ValveNeed> Needs(IReadOnlyDictionary<string, double> hoursByHand, CancellationToken cancellation)
    {
        var needs = new ValveNeed[Valves.Count];
        Parallel.For(0, Valves.Count, new ParallelOptions { CancellationToken = cancellation }, v =>
        {
            var valve = Valves[v];
            var courses = Courses.Where(c => c.State.Valve.Code == valve.Code).ToList();
            var search = new NeedSearch(nights.GetValueOrDefault(valve.SourceCode) ?? [], Days, Seasons.GetValueOrDefault(valve.SourceCode)?.PricePerMm ?? 0);
            var byHand = valve.Blocks.Where(b => hoursByHand.ContainsKey(b.Code)).Select(b => hoursByHand[b.Code]).DefaultIfEmpty(-1).Max();
            needs[v] = byHand >= 0 ? search.Place(valve, courses, (int)Math.Round(byHand * 4)) : needsWithoutHand.GetOrAdd(valve.Code, _ => search.Find(valve, courses));
        });
        return needs;
    }

    internal IReadOnlyList<SourceNights> SourceNights(IReadOnlyList<ValveNeed> needs) =>
        [.. Request.Sources.OrderBy(s => s.Code, StringComparer.Ordinal).Select(source => new SourceNights(
            source,
            nights[source.Code],
            LeftM3(source),
            [.. needs.Where(n => n.Valve.SourceCode == source.Code)])
        { SeasonPerMm = Seasons.GetValueOrDefault(source.Code)?.PricePerMm ?? 0 })];

    /// <summary>Left of a source's allocation; null when it has none. [m³]</summary>
    internal double? LeftM3(PlanSource source)
    {
        var season = SeasonSpan.Of(Today, Request.Stations.Count > 0 ? Request.Stations[0].Site.LatitudeDegrees : 0);
        return source.SeasonAllocationM3 - Valves.Where(v => v.SourceCode == source.Code).Sum(v => v.UsedM3Since(season.First));
    }
}
