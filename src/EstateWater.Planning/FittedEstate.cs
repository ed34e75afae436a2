using System.Collections.Concurrent;
using EstateWater.Agronomy.Outlook;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Agronomy.Weather;
using EstateWater.Planning.Blocks;
using EstateWater.Planning.Needs;
using EstateWater.Planning.Packing;
using EstateWater.Planning.Seasons;
using EstateWater.Planning.Weather;
using EstateWater.Planning.WhatIf;

namespace EstateWater.Planning;

/// <summary>An estate after learning: its blocks' courses, its sources' nights.</summary>
public sealed class FittedEstate
{
    private readonly Learned learned;
    private readonly Dictionary<string, IReadOnlyList<Night>> nights;
    private readonly ConcurrentDictionary<string, ValveNeed> needsUnchanged = new();
    private readonly ConcurrentDictionary<string, PackedSource> packedUnchanged = new();
    private readonly ConcurrentDictionary<string, PackedSource> settledUnchanged = new();
    private readonly Lazy<IReadOnlyDictionary<string, SourceSeason>> seasons;

    private FittedEstate(PlanRequest request, Learned learned, IReadOnlyList<BlockCourse> courses, Lazy<IReadOnlyDictionary<string, SourceSeason>>? seasons = null)
    {
        Request = request;
        this.learned = learned;
        Courses = courses;
        nights = request.Sources.ToDictionary(s => s.Code, s => Night.Of(s, request.AsOf, request.TimeZone, learned.Today, request.HorizonDays));
        this.seasons = seasons ?? new(() => EstateSeason.Of(this, CancellationToken.None));
    }

    /// <summary>What it was fitted to.</summary>
    public PlanRequest Request { get; }

    /// <summary>When every block was last learned together: what the blocks tell of one another is as of then.</summary>
    public DateTimeOffset LearnedAsOf => learned.AsOf;

    internal DateOnly Today => learned.Today;

    internal int Days => Request.HorizonDays + 1;

    internal IReadOnlyDictionary<string, StationWeather> Weather => learned.Weather;

    /// <summary>Heat spells ahead, by station.</summary>
    internal IReadOnlyDictionary<string, IReadOnlyList<HeatSpell>> Heat => learned.Heat;

    internal IReadOnlyList<ValveWater> Valves => learned.Valves;

    /// <summary>In order of block code.</summary>
    internal IReadOnlyList<BlockCourse> Courses { get; }

    /// <summary>The season of each source that has an allocation.</summary>
    internal IReadOnlyDictionary<string, SourceSeason> Seasons => seasons.Value;

    internal static FittedEstate Of(PlanRequest request, CancellationToken cancellation, int parallelism = -1)
    {
        var today = request.Today;
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
        var vines = VineSpread.Of([.. states.SelectMany(s => s.Sets.GroupBy(r => r.Measure)).Select(sets => sets.Select(r => r.Leaves).ToList())]);
        var fit = EstateFit.Fit([.. states.Select(s => s.EvidenceWith(vines))], cancellation, parallelism);
        var heat = weather.ToDictionary(w => w.Key, w => HeatAhead.Of(w.Value, days));
        var learned = new Learned(request.AsOf, today, weather, ahead, heat, valves, vines, fit);
        var courses = new BlockCourse[states.Count];
        Parallel.For(0, states.Count, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = parallelism }, i =>
            courses[i] = learned.Course(states[i], fit.Blocks[i], days));
        return new FittedEstate(request, learned, courses);
    }

    /// <summary>The estate with some of its blocks learned anew; null where more than the observations of a few differs.</summary>
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
                courses[i] = learned.Course(state, learned.Fit.Refit(state.EvidenceWith(learned.Vines)), Days);
            }
        });

        // Water keeps the price of the last full learning, as the needs that are kept were found with it.
        var refitted = new FittedEstate(request, learned, courses, seasons);
        refitted.Keep(this, changed);
        return refitted;
    }

    /// <summary>The nights of a source, for choosing one.</summary>
    /// <param name="sourceCode">The source.</param>
    public IReadOnlyList<SourceNight> OpeningsOf(string sourceCode) => [.. NightsOf(sourceCode).Select(n => new SourceNight(n.Date, n.Start, n.End))];

    internal IReadOnlyList<Night> NightsOf(string sourceCode) => nights.GetValueOrDefault(sourceCode) ?? [];

    /// <summary>Left of a source's allocation; null when unlimited. [m³]</summary>
    internal double? LeftM3(PlanSource source) => source.SeasonAllocationM3 - UsedM3(source.Code);

    /// <summary>Water of a source since the season's first day, in the vine's winter: by the meter, and by declared flow as the meter usually shows it where it was not read. [m³]</summary>
    /// <param name="sourceCode">The source; one without valves has used nothing.</param>
    public double UsedM3(string sourceCode)
    {
        var season = SeasonSpan.Of(Today, Request.Stations.Count > 0 ? Request.Stations[0].Site.LatitudeDegrees : 0);
        return Valves.Where(v => v.SourceCode == sourceCode).Sum(v => v.UsedM3Since(season.First));
    }

    /// <summary>What each valve wants; valves that nothing was changed for are searched once.</summary>
    internal IReadOnlyList<ValveNeed> Needs(PlanRequest request, CancellationToken cancellation)
    {
        // Every valve asks for it. Found by the first of them in the loop, itself in a loop, it would hold all other threads.
        _ = Seasons;
        var needs = new ValveNeed[Valves.Count];
        Parallel.For(0, Valves.Count, new ParallelOptions { CancellationToken = cancellation }, v => needs[v] = Need(Valves[v], request));
        return needs;
    }

    internal IReadOnlyList<SourceNights> SourceNights(IReadOnlyList<ValveNeed> needs, IReadOnlyList<PlanChange> changes) =>
        [.. Request.Sources.OrderBy(s => s.Code, StringComparer.Ordinal).Select(source =>
        {
            var mine = needs.Where(n => n.Valve.SourceCode == source.Code).ToLookup(n => ChangedNights.Pins(n.Valve, changes).Count > 0);
            return new SourceNights(source, nights[source.Code], LeftM3(source), [.. mine[false]])
            {
                Pinned = [.. mine[true].SelectMany(n => Pinned(n, changes))],
                Changes = changes,
                SeasonPerMm = SeasonPerMm(source.Code),
            };
        })];

    /// <summary>The sources' sets; sources that nothing was changed for are packed once.</summary>
    internal IReadOnlyList<PackedSource> Packed(IReadOnlyList<SourceNights> sources, CancellationToken cancellation)
    {
        var packed = new PackedSource[sources.Count];
        Parallel.For(0, sources.Count, new ParallelOptions { CancellationToken = cancellation }, i => packed[i] = Packed(sources[i]));
        return packed;
    }

    private PackedSource Packed(SourceNights source)
    {
        var unchanged = source.Pinned.Count == 0 && source.Needs.All(n => ReferenceEquals(n, needsUnchanged.GetValueOrDefault(n.Valve.Code)));
        return unchanged
            ? settledUnchanged.GetOrAdd(source.Source.Code, _ => Settling.Settle(source, PackedUnchanged(source), Days))
            // The unchanged packing is made first where nobody asked for it yet: the order of asking changes nothing.
            : Settling.Settle(source, Repacking.Pack(source, PackedUnchanged(Unchanged(source))), Days);
    }

    private PackedSource PackedUnchanged(SourceNights unchanged) => packedUnchanged.GetOrAdd(
        unchanged.Source.Code, _ => StandingWeek.Keep(unchanged, Days, Request.Standing, SourcePacking.Pack(unchanged)));

    private SourceNights Unchanged(SourceNights source) => source with
    {
        Pinned = [],
        Changes = [],
        Needs = [.. Valves.Where(v => v.SourceCode == source.Source.Code).Select(Unchanged)],
    };

    private ValveNeed Unchanged(ValveWater valve) =>
        needsUnchanged.GetOrAdd(valve.Code, _ => Search(NightsOf(valve.SourceCode), valve).Find(valve, CoursesOf(valve)));

    private NeedSearch Search(IReadOnlyList<Night> nights, ValveWater valve) => new(nights, Days, SeasonPerMm(valve.SourceCode));

    private double SeasonPerMm(string sourceCode) => Seasons.GetValueOrDefault(sourceCode)?.PricePerMm ?? 0;

    private List<BlockCourse> CoursesOf(ValveWater valve) => [.. Courses.Where(c => c.State.Valve.Code == valve.Code)];

    private ValveNeed Need(ValveWater valve, PlanRequest request)
    {
        var all = NightsOf(valve.SourceCode);
        var courses = CoursesOf(valve);
        if (ChangedNights.Pins(valve, request.Changes) is { Count: > 0 } pins)
        {
            var quarters = new int[all.Count];
            pins.ToList().ForEach(p => quarters[ChangedNights.NightOf(p, all)!.Value] += ChangedNights.QuartersOf(p));
            return Search(all, valve).Keep(valve, courses, quarters);
        }

        var byHand = valve.Blocks.Where(b => request.HoursByHand.ContainsKey(b.Code)).Select(b => request.HoursByHand[b.Code]).DefaultIfEmpty(-1).Max();
        ValveNeed In(IReadOnlyList<Night> nights)
        {
            var search = Search(nights, valve);
            return byHand >= 0 ? search.Place(valve, courses, (int)Math.Round(byHand * 4)) : search.Find(valve, courses);
        }

        var wanted = byHand >= 0 ? In(all) : Unchanged(valve);
        var lost = ChangedNights.Lost(valve, request.Changes, all);
        return lost.Count == 0 ? wanted
            : lost.All(n => wanted.QuartersByNight[n] == 0) ? wanted with { LostNights = lost }
            : In([.. all.Select((night, n) => lost.Contains(n) ? night with { End = night.Start } : night)]) with { LostNights = lost, WantedQuarters = wanted.WantedQuarters };
    }

    private IEnumerable<PlacedSet> Pinned(ValveNeed need, IReadOnlyList<PlanChange> changes)
    {
        var all = NightsOf(need.Valve.SourceCode);
        return ChangedNights.Pins(need.Valve, changes).Select(pin => ChangedNights.Place(pin, need, all)!);
    }

    // Many new readings move what the blocks tell of one another: then all are learned.
    private static int MostRefitted(int blocks) => Math.Max(1, blocks / 10);

    // What a valve wants stays where neither its blocks nor its nights changed; so does a source's packing where all its needs did.
    private void Keep(FittedEstate before, IReadOnlySet<string> changed)
    {
        var sameStanding = Request.Standing.SequenceEqual(before.Request.Standing);
        foreach (var source in Request.Sources.Where(s => NightsOf(s.Code).SequenceEqual(before.NightsOf(s.Code))))
        {
            var valves = Valves.Where(v => v.SourceCode == source.Code).ToLookup(v => v.Blocks.Any(b => changed.Contains(b.Code)));
            foreach (var valve in valves[false])
            {
                Keep(needsUnchanged, before.needsUnchanged, valve.Code);
            }

            if (sameStanding && !valves[true].Any())
            {
                Keep(packedUnchanged, before.packedUnchanged, source.Code);
                Keep(settledUnchanged, before.settledUnchanged, source.Code);
            }
        }
    }

    private static void Keep<T>(ConcurrentDictionary<string, T> now, ConcurrentDictionary<string, T> before, string code)
    {
        if (before.TryGetValue(code, out var kept))
        {
            now[code] = kept;
        }
    }

    /// <summary>What a learning of all blocks gives beside the blocks themselves.</summary>
    private sealed record Learned(
        DateTimeOffset AsOf,
        DateOnly Today,
        IReadOnlyDictionary<string, StationWeather> Weather,
        IReadOnlyDictionary<string, WeatherAhead> Ahead,
        IReadOnlyDictionary<string, IReadOnlyList<HeatSpell>> Heat,
        IReadOnlyList<ValveWater> Valves,
        VineSpread Vines,
        EstateFit Fit)
    {
        public BlockCourse Course(BlockState state, FittedBlock fitted, int days) =>
            new(state, fitted, Ahead[state.Block.StationCode], HeatAhead.DaysIn(Heat[state.Block.StationCode], Today, days), Today, days);
    }
}
