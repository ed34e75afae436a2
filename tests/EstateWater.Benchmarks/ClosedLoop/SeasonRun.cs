using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Observation;

namespace EstateWater.Benchmarks.ClosedLoop;

/// <summary>Decides the coming week's sets on a Tuesday morning.</summary>
internal interface IDecider
{
    string Name { get; }

    IReadOnlyList<ValveOpening> Week(SimulatedEstate estate, FieldCrew crew);
}

/// <summary>A season as it was lived.</summary>
/// <param name="Estate">After it.</param>
/// <param name="FirstDay">In its winter; days before it belong to a season that was only read.</param>
internal sealed record LivedSeason(SimulatedEstate Estate, DateOnly FirstDay);

/// <summary>Lives one season of a simulated estate under someone's decisions: rounds on Mondays, decisions on Tuesdays.</summary>
internal static class SeasonRun
{
    public const int Blocks = 8;
    private const double FirstStage = 25;
    private const double LastStage = 40;

    /// <summary>A fresh estate of a seed; odd seeds lie in the south.</summary>
    public static SimulatedEstate Estate(ulong seed) => new(RandomEstate.Draw(seed, Blocks, seed % 2 == 1, 2023), seed);

    /// <summary>The same with another allocation for its one source; null for none. [m³]</summary>
    public static SimulatedEstate Estate(ulong seed, double? allocationM3)
    {
        var spec = Estate(seed).Spec;
        return new(spec with { Sources = [spec.Sources.Single() with { AllocationM3 = allocationM3 }] }, seed);
    }

    /// <summary>The same under forecasts so much more wrong than usual, and a year older where a season is read before.</summary>
    public static SimulatedEstate Estate(ulong seed, double forecastError, bool isReadBefore)
    {
        var spec = Estate(seed).Spec;
        return new(spec with { ForecastErrorScale = forecastError, From = spec.From.AddYears(isReadBefore ? -1 : 0) }, seed);
    }

    public static LivedSeason Live(ulong seed, IDecider decider) => Live(Estate(seed), decider);

    /// <summary>Lives a season under someone's decisions, where asked after one under the threshold rule.</summary>
    public static LivedSeason Live(SimulatedEstate estate, IDecider decider, bool isReadBefore = false)
    {
        var crew = new FieldCrew(estate);
        if (isReadBefore)
        {
            LiveSeason(estate, crew, new ThresholdRule());
            while (estate.Today < estate.Spec.From.AddYears(1))
            {
                estate.AdvanceDay([]);
            }
        }

        var first = estate.Today;
        LiveSeason(estate, crew, decider);
        return new LivedSeason(estate, first);
    }

    private static void LiveSeason(SimulatedEstate estate, FieldCrew crew, IDecider decider)
    {
        var last = estate.Today.AddDays(330);
        IReadOnlyList<ValveOpening> week = [];
        while (estate.Today < last && Stages(estate).Min() < LastStage)
        {
            if (estate.Today.DayOfWeek == DayOfWeek.Tuesday)
            {
                week = Stages(estate).Max() >= FirstStage && crew.Readings.Count > 0 ? decider.Week(estate, crew) : [];
            }

            estate.AdvanceDay([.. week.Where(o => DateOnly.FromDateTime(o.StartedAt.DateTime) == estate.Today)]);
            if (estate.Today.DayOfWeek == DayOfWeek.Tuesday)
            {
                crew.ObserveWeek();
            }
        }
    }

    // Bare vines, before budburst and after leaf fall, have none.
    private static IEnumerable<double> Stages(SimulatedEstate estate) => estate.Spec.Blocks.Select(b => estate.Block(b.Code).Canopy.Stage is var s && s >= 47 ? 0 : s);
}
