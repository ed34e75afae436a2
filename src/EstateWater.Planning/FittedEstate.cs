using System.Collections.Concurrent;
using EstateWater.Agronomy.Outlook;
using EstateWater.Planning.Blocks;
using EstateWater.Planning.Needs;
using EstateWater.Planning.Packing;
using EstateWater.Planning.Weather;

namespace EstateWater.Planning;

/// <summary>An estate after learning: its blocks' courses, its sources' nights.</summary>
public sealed class FittedEstate
{
    private readonly Learned learned;
    private readonly Dictionary<string, IReadOnlyList<Night>> nights;
    private readonly ConcurrentDictionary<string, ValveNeed> needsWithoutHand = new();

    private readonly ConcurrentDictionary<string, (SourceNights Source, PackedSource Packed)> packed = new();

    private FittedEstate(PlanRequest request, Learned learned, IReadOnlyList<BlockCourse> courses)
    {
        Request = request;
        this.learned = learned;
        Courses = courses;
        nights = request.Sources.ToDictionary(s => s.Code, s => Night.Of(s, request.AsOf, request.TimeZone, learned.Today, request.HorizonDays));
    }

    /// <summary>What it was fitted to.</summary>
    public PlanRequest Request { get; }

    /// <summary>When every block was last learned together: what the blocks tell of one another is as of then.</summary>
    public DateTimeOffset LearnedAsOf => learned.AsOf;

    internal DateOnly Today => learned.Today;

    internal int Days => Request.HorizonDays + 1;

    internal IReadOnlyDictionary<string, StationWeather> Weather => learned.Weather;

    internal IReadOnlyList<ValveWater> Valves => learned.Valves;

    /// <summary>In order of block code.</summary>
    internal IReadOnlyList<BlockCourse> Courses { get; }

    internal static FittedEstate Of(PlanRequest request, CancellationToken cancellation)
    {
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(request.AsOf, request.TimeZone).DateTime);
        var days = request.HorizonDays + 1;
        var weather = request.Stations.ToDictionary(
            s => s.Code,
            s => StationWeather.Of(s, today, SeasonSpan.Of(today, s.Site.LatitudeDegrees), request.AsOf, days));
        var ahead = weather.ToDictionary(w => w.Key, w => w.Value.Ahead.ForMembers(w.Value.Station.Site));
        var valves = request.Valves.OrderBy(v => v.Code, StringComparer.Ordinal).Select(v => new ValveWater(v, request.Blocks, request.TimeZone)).ToList();
        var valveByCode = valves.ToDictionary(v => v.Code);
        var states = request.Blocks
            .OrderBy(b => b.Code, StringComparer.Ordinal)
            .Select(b => new BlockState(b, valveByCode[b.ValveCode], weather[b.StationCode], SeasonSpan.Of(today, b.LatitudeDegrees), today, request.TimeZone))
            .ToList();
        var fit = EstateFit.Fit([.. states.Select(s => s.Evidence)], cancellation);
        var learned = new Learned(request.AsOf, today, weather, ahead, valves, fit);
        var courses = new BlockCourse[states.Count];
        Parallel.For(0, states.Count, new ParallelOptions { CancellationToken = cancellation }, i => courses[i] = learned.Course(states[i], fit.Blocks[i], days));
        return new FittedEstate(request, learned, courses);
    }

    /// <summary>The estate with some of its blocks learned anew; null where more than their observations differs.</summary>
    internal FittedEstate? Refitted(PlanRequest request, CancellationToken cancellation)
    {
        if (NewObservations.Blocks(Request, request) is not { } changed || changed.Count > MostRefitted(request.Blocks.Count))
        {
            return null;
        }

        var courses = Courses.ToArray();
        var blocks = request.Blocks.ToDictionary(b => b.Code);
        Parallel.For(0, courses.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            var before = courses[i].State;
            if (changed.Contains(before.Block.Code))
            {
                var block = blocks[before.Block.Code];
                var state = new BlockState(block, before.Valve, Weather[block.StationCode], SeasonSpan.Of(Today, block.LatitudeDegrees), Today, request.TimeZone);
                courses[i] = learned.Course(state, learned.Fit.Refit(state.Evidence), Days);
            }
        });
        var refitted = new FittedEstate(request, learned, courses);
        refitted.Keep(this, changed);
        return refitted;
    }

    // Many new readings move what the blocks tell of one another: then all are learned.
    private static int MostRefitted(int blocks) => Math.Max(1, blocks / 10);

    /// <summary>The sources' needs packed; a source whose needs are the same as before is not packed again.</summary>
    internal IReadOnlyList<PackedSource> Pack(IReadOnlyList<SourceNights> sources, CancellationToken cancellation)
    {
        var answers = new PackedSource[sources.Count];
        Parallel.For(0, sources.Count, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            var source = sources[i];
            if (!packed.TryGetValue(source.Source.Code, out var known) || !known.Source.IsSame(source))
            {
                packed[source.Source.Code] = known = (source, SourcePacking.Pack(source).Settled(source, Days));
            }

            answers[i] = known.Packed;
        });
        return answers;
    }

    // What a valve wants stays where neither its blocks nor its nights changed.
    private void Keep(FittedEstate before, IReadOnlySet<string> changed)
    {
        foreach (var valve in Valves.Where(v => !v.Blocks.Any(b => changed.Contains(b.Code))))
        {
            if (before.needsWithoutHand.TryGetValue(valve.Code, out var need)
                && nights.GetValueOrDefault(valve.SourceCode, []).SequenceEqual(before.nights.GetValueOrDefault(valve.SourceCode, [])))
            {
                needsWithoutHand[valve.Code] = need;
            }
        }

        foreach (var (code, known) in before.packed)
        {
            packed[code] = known;
        }
    }

    /// <summary>What each valve wants; valves without hours by hand are searched once.</summary>
    internal IReadOnlyList<ValveNeed> Needs(IReadOnlyDictionary<string, double> hoursByHand, CancellationToken cancellation)
    {
        var needs = new ValveNeed[Valves.Count];
        Parallel.For(0, Valves.Count, new ParallelOptions { CancellationToken = cancellation }, v =>
        {
            var valve = Valves[v];
            var courses = Courses.Where(c => c.State.Valve.Code == valve.Code).ToList();
            var search = new NeedSearch(nights.GetValueOrDefault(valve.SourceCode) ?? [], Days);
            var byHand = valve.Blocks.Where(b => hoursByHand.ContainsKey(b.Code)).Select(b => hoursByHand[b.Code]).DefaultIfEmpty(-1).Max();
            needs[v] = byHand >= 0 ? search.Place(valve, courses, (int)Math.Round(byHand * 4)) : needsWithoutHand.GetOrAdd(valve.Code, _ => search.Find(valve, courses));
        });
        return needs;
    }

    internal IReadOnlyList<SourceNights> SourceNights(IReadOnlyList<ValveNeed> needs)
    {
        var season = SeasonSpan.Of(Today, Request.Stations.Count > 0 ? Request.Stations[0].Site.LatitudeDegrees : 0);
        return [.. Request.Sources.OrderBy(s => s.Code, StringComparer.Ordinal).Select(source => new SourceNights(
            source,
            nights[source.Code],
            source.SeasonAllocationM3 - Valves.Where(v => v.SourceCode == source.Code).Sum(v => v.UsedM3Since(season.First)),
            [.. needs.Where(n => n.Valve.SourceCode == source.Code)]))];
    }

    /// <summary>What a learning of all blocks gives beside the blocks themselves.</summary>
    private sealed record Learned(
        DateTimeOffset AsOf,
        DateOnly Today,
        IReadOnlyDictionary<string, StationWeather> Weather,
        IReadOnlyDictionary<string, WeatherAhead> Ahead,
        IReadOnlyList<ValveWater> Valves,
        EstateFit Fit)
    {
        public BlockCourse Course(BlockState state, FittedBlock fitted, int days) => new(state, fitted, Ahead[state.Block.StationCode], Today, days);
    }
}
