using EstateWater.Simulation.Soil;
using EstateWater.Simulation.Vine;
using EstateWater.Simulation.Weather;

namespace EstateWater.Simulation.Estate;

/// <summary>The true state of a block on a day.</summary>
public sealed record BlockDay(DateOnly Date, double LeafMpa, double StemMpa, double PredawnMpa, double TranspirationMm, double Stage, double SoilWaterMm)
{
    /// <summary>Tension as a chamber would show it. [bar]</summary>
    public double TensionBar(Measure measure) => -10 * measure switch
    {
        Measure.Leaf => LeafMpa,
        Measure.Stem => StemMpa,
        _ => PredawnMpa,
    };
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
        var transpired = 0.0;
        for (var step = 0; step < dripMm.Count; step++)
        {
            var clockHour = StepHours * step;
            if (noonHour >= clockHour && noonHour < clockHour + StepHours)
            {
                midday = Potentials(weather, 12);
            }

            Wet(dripMm[step], weather.RainMm / dripMm.Count);
            transpired += Drink(weather, clockHour + (StepHours / 2) - noonHour + 12);
        }

        Canopy.Grow(weather.TMaxC, weather.TMinC, predawn.LeafMpa, midday.LeafMpa);
        _days.Add(new BlockDay(weather.Date, midday.LeafMpa, midday.StemMpa, predawn.LeafMpa, transpired, Canopy.Stage, Soil.WaterMm));
    }

    public SimulatedBlock Clone() => new(this);

    private DateOnly BudburstDay(DateOnly date) => new DateOnly(date.Year, _site.IsSouthern ? 9 : 3, 12).AddDays((int)(14 * (1.05 - Spec.Truth.Vine.Pace)));

    private VineWater Potentials(DayWeather weather, double solarHour) =>
        LeafHydraulics.Solve(
            Soil.Supply(Spec.Truth.Vine.RootConductance),
            DiurnalCourse.At(weather, _site.LatitudeDegrees, solarHour),
            Canopy.LeafArea,
            Spec.Truth.Vine);

    private void Wet(double dripMm, double rainMm)
    {
        Soil.Bulb.Infiltrate((dripMm / Soil.Bulb.AreaShare) + rainMm);
        Soil.Between.Infiltrate(rainMm);
        Soil.Bulb.Drain(StepHours);
        Soil.Between.Drain(StepHours);
        Soil.Exchange(StepHours);
    }

    private double Drink(DayWeather weather, double solarHour)
    {
        var water = Potentials(weather, solarHour);
        var drunk = water.FlowMmPerH * StepHours;
        Soil.TakeUp(drunk, Spec.Truth.Vine.RootConductance, water.CollarMpa);
        var air = DiurnalCourse.At(weather, _site.LatitudeDegrees, solarHour);
        var evaporation = 0.45 * air.RadiationWPerM2 * 3600 * StepHours / 2.45e6;
        Soil.Between.Evaporate(evaporation * (1 - Canopy.Shade));
        Soil.Bulb.Evaporate(0.5 * evaporation);
        return drunk;
    }
}
