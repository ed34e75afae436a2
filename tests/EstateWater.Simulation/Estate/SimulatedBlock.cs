using EstateWater.Simulation.Soil;
using EstateWater.Simulation.Vine;
using EstateWater.Simulation.Weather;

namespace EstateWater.Simulation.Estate;

/// <summary>The true state of a block on a day.</summary>
/// <param name="Date">The day.</param>
/// <param name="LeafMpa">A sunlit leaf at solar noon. [MPa]</param>
/// <param name="StemMpa">The stem at solar noon. [MPa]</param>
/// <param name="PredawnMpa">Before dawn. [MPa]</param>
/// <param name="Flows">Where water came from and went.</param>
/// <param name="Stage">Growth stage, modified Eichhorn–Lorenz number.</param>
/// <param name="SoilWaterMm">In both zones at the end of the day. [mm]</param>
public sealed record BlockDay(DateOnly Date, double LeafMpa, double StemMpa, double PredawnMpa, Flows Flows, double Stage, double SoilWaterMm)
{
    /// <summary>Tension as a chamber would show it. [bar]</summary>
    public double TensionBar(Measure measure) => -10 * measure switch
    {
        Measure.Leaf => LeafMpa,
        Measure.Stem => StemMpa,
        _ => PredawnMpa,
    };
}

/// <summary>A day's water over a block's ground. [mm]</summary>
public readonly record struct Flows(double RainMm, double DripMm, double TranspirationMm, double EvaporationMm, double DrainageMm)
{
    public static Flows operator +(Flows a, Flows b) => new(
        a.RainMm + b.RainMm,
        a.DripMm + b.DripMm,
        a.TranspirationMm + b.TranspirationMm,
        a.EvaporationMm + b.EvaporationMm,
        a.DrainageMm + b.DrainageMm);

    public static Flows Add(Flows left, Flows right) => left + right;
}

/// <summary>A block living through its days, in steps of two hours.</summary>
public sealed class SimulatedBlock
{
    public const double StepHours = 2;
    private const double PredawnSolarHour = 4;

    private readonly Site _site;
    private readonly List<BlockDay> _days = [];

    public SimulatedBlock(BlockSpec spec, Site site)
    {
        (Spec, _site) = (spec, site);
        (Soil, Canopy) = (Ground.Build(spec.Truth), new Canopy(spec.Truth.Vine));
    }

    private SimulatedBlock(SimulatedBlock other)
    {
        (Spec, _site, Soil, Canopy) = (other.Spec, other._site, other.Soil.Clone(), other.Canopy.Clone());
        _days.AddRange(other._days);
    }

    public BlockSpec Spec { get; }

    public RootedSoil Soil { get; }

    public Canopy Canopy { get; }

    /// <summary>Every day lived so far.</summary>
    public IReadOnlyList<BlockDay> Days => _days;

    /// <summary>Lives one day.</summary>
    /// <param name="weather">The day's weather.</param>
    /// <param name="dripMm">Water from the drippers in each step, over the block's ground. [mm]</param>
    public void Live(DayWeather weather, IReadOnlyList<double> dripMm)
    {
        if (weather.Date == BudburstDay(weather.Date))
        {
            Canopy.Budburst();
        }

        var noonHour = _site.SolarNoonHour(weather.Date);
        var (predawn, midday) = (Potentials(weather, PredawnSolarHour), default(VineWater));
        var flows = default(Flows);
        for (var step = 0; step < dripMm.Count; step++)
        {
            var clockHour = StepHours * step;
            if (noonHour >= clockHour && noonHour < clockHour + StepHours)
            {
                midday = Potentials(weather, 12);
            }

            flows += Wet(dripMm[step], weather.RainMm / dripMm.Count) + Dry(weather, clockHour + (StepHours / 2) - noonHour + 12);
        }

        Canopy.Grow(weather.TMaxC, weather.TMinC, predawn.LeafMpa, midday.LeafMpa);
        _days.Add(new BlockDay(weather.Date, midday.LeafMpa, midday.StemMpa, predawn.LeafMpa, flows, Canopy.Stage, Soil.WaterMm));
    }

    public SimulatedBlock Clone() => new(this);

    private DateOnly BudburstDay(DateOnly date) => new DateOnly(date.Year, _site.IsSouthern ? 9 : 3, 12).AddDays((int)(14 * (1.05 - Spec.Truth.Vine.Pace)));

    private VineWater Potentials(DayWeather weather, double solarHour) =>
        LeafHydraulics.Solve(
            Soil.Supply(Spec.Truth.Vine.RootConductance),
            DiurnalCourse.At(weather, _site.LatitudeDegrees, solarHour),
            Canopy.LeafArea,
            Spec.Truth.Vine);

    private Flows Wet(double dripMm, double rainMm)
    {
        var bulb = Soil.Bulb.Infiltrate((dripMm / Soil.Bulb.AreaShare) + rainMm) + Soil.Bulb.Drain(StepHours);
        var between = Soil.Between.Infiltrate(rainMm) + Soil.Between.Drain(StepHours);
        Soil.Exchange(StepHours);
        return new Flows(rainMm, dripMm, 0, 0, (bulb * Soil.Bulb.AreaShare) + (between * Soil.Between.AreaShare));
    }

    private Flows Dry(DayWeather weather, double solarHour)
    {
        var water = Potentials(weather, solarHour);
        var drunk = Soil.TakeUp(water.FlowMmPerH * StepHours, Spec.Truth.Vine.RootConductance, water.CollarMpa);
        var air = DiurnalCourse.At(weather, _site.LatitudeDegrees, solarHour);
        var demand = 0.45 * air.RadiationWPerM2 * 3600 * StepHours / 2.45e6;
        var between = Soil.Between.Evaporate(demand * (1 - Canopy.Shade));
        var bulb = Soil.Bulb.Evaporate(0.5 * demand);
        return new Flows(0, 0, drunk, (between * Soil.Between.AreaShare) + (bulb * Soil.Bulb.AreaShare), 0);
    }
}
