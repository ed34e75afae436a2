using EstateWater.Simulation.Numbers;
using EstateWater.Simulation.Weather;

namespace EstateWater.Simulation.Estate;

/// <summary>A valve opened at an instant for some hours.</summary>
public sealed record ValveOpening(string Valve, DateTimeOffset StartedAt, double Hours);

/// <summary>
/// An estate that lives day by day while someone outside decides its irrigation. It knows its true state, which no
/// folder tells; what a folder tells comes from <see cref="Observation.FieldCrew"/>.
/// </summary>
public sealed class SimulatedEstate
{
    private readonly Dictionary<string, IReadOnlyList<DayWeather>> _weather;
    private readonly Dictionary<string, SimulatedBlock> _blocks;
    private readonly List<ValveOpening> _openings = [];

    public SimulatedEstate(EstateSpec spec, ulong seed)
    {
        (Spec, Seed, Today) = (spec, seed, spec.From);
        var air = new WeatherGenerator(spec.Site, spec.Climate, seed).Draw(spec.WeatherFrom, spec.WeatherTo, spec.SetSpells);
        _weather = spec.Stations.ToDictionary(s => s.Code, s => StationAir.Of(air, s, seed));
        _blocks = spec.Blocks.ToDictionary(b => b.Code, b => new SimulatedBlock(b, spec.Site));
    }

    private SimulatedEstate(SimulatedEstate other)
    {
        (Spec, Seed, Today, _weather) = (other.Spec, other.Seed, other.Today, other._weather);
        _blocks = other._blocks.ToDictionary(b => b.Key, b => b.Value.Clone());
        _openings.AddRange(other._openings);
    }

    public EstateSpec Spec { get; }

    public ulong Seed { get; }

    /// <summary>The next day to be lived.</summary>
    public DateOnly Today { get; private set; }

    /// <summary>Water put on so far, in time order.</summary>
    public IReadOnlyList<ValveOpening> Openings => _openings;

    /// <summary>The weather of a station, future days too.</summary>
    public IReadOnlyList<DayWeather> Weather(string station) => _weather[station];

    /// <summary>The weather of a station on one day.</summary>
    public DayWeather Weather(string station, DateOnly day) => _weather[station][day.DayNumber - Spec.WeatherFrom.DayNumber];

    /// <summary>A block's true state.</summary>
    public SimulatedBlock Block(string code) => _blocks[code];

    /// <summary>The true tension of a block on a day that was lived: midday for leaf and stem. [bar]</summary>
    public double TrueTensionBar(string block, DateOnly day, Measure measure) => TrueDay(block, day).TensionBar(measure);

    /// <summary>The true state of a block on a day that was lived.</summary>
    public BlockDay TrueDay(string block, DateOnly day) => _blocks[block].Days[day.DayNumber - Spec.From.DayNumber];

    /// <summary>Lives one day. Openings start on that day; what runs past midnight is carried into the next.</summary>
    public void AdvanceDay(IReadOnlyList<ValveOpening> openings)
    {
        _openings.AddRange(openings.Where(o => o.Hours > 0).OrderBy(o => o.StartedAt).ThenBy(o => o.Valve, StringComparer.Ordinal));
        foreach (var block in _blocks.Values)
        {
            block.Live(Weather(block.Spec.Station, Today), Drip(block.Spec));
        }

        Today = Today.AddDays(1);
    }

    /// <summary>Lives one day in which valves open for some hours when their source's window opens.</summary>
    public void AdvanceDay(IReadOnlyDictionary<string, double> hoursByValve) =>
        AdvanceDay([.. hoursByValve.Select(v => new ValveOpening(v.Key, Spec.Site.At(Today, WindowStart(v.Key)), v.Value))]);

    /// <summary>A copy whose future can be tried out.</summary>
    public SimulatedEstate Fork() => new(this);

    /// <summary>What a valve passes over what is declared, on a day.</summary>
    public double ThroughShare(string valve, DateOnly day) =>
        Spec.Blocks.Where(b => b.Valve == valve).Sum(b => b.DeclaredFlowM3PerH * b.Truth.Delivery)
        / Spec.Blocks.Where(b => b.Valve == valve).Sum(b => b.DeclaredFlowM3PerH)
        * Mishaps(valve, day).Aggregate(1.0, (share, m) => share * m.ThroughShare);

    private IEnumerable<Mishap> Mishaps(string valve, DateOnly day) => Spec.Mishaps.Where(m => m.Valve == valve && day >= m.From);

    private double WindowStart(string valve)
    {
        var source = Spec.Valves.First(v => v.Code == valve).Source;
        return Spec.Sources.First(s => s.Code == source).DailyFrom.ToTimeSpan().TotalHours;
    }

    private double[] Drip(BlockSpec block)
    {
        var midnight = Spec.Site.At(Today, 0);
        var running = _openings.Where(o => o.Valve == block.Valve && o.StartedAt.AddHours(o.Hours) > midnight).ToList();
        var rate = block.DeclaredMmPerH * block.Truth.Delivery * Mishaps(block.Valve, Today)
            .Aggregate(1.0, (share, m) => share * m.ThroughShare * (m.Block is null || m.Block == block.Code ? m.ToVinesShare : 1));
        var steps = new double[(int)(24 / SimulatedBlock.StepHours)];
        for (var i = 0; i < steps.Length; i++)
        {
            var from = i * SimulatedBlock.StepHours;
            steps[i] = rate * running.Sum(o => OpenHours((o.StartedAt - midnight).TotalHours, o.Hours, from, from + SimulatedBlock.StepHours));
        }

        return steps;
    }

    private static double OpenHours(double start, double hours, double from, double to) =>
        Math.Max(0, Math.Min(start + hours, to) - Math.Max(start, from));
}
