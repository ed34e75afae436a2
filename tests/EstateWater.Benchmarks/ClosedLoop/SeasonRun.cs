using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Observation;

namespace EstateWater.Benchmarks.ClosedLoop;

/// <summary>Decides the coming week's sets on a Tuesday morning.</summary>
internal interface IDecider
{
    string Name { get; }

    IReadOnlyList<ValveOpening> Week(SimulatedEstate estate, FieldCrew crew);
}

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

    /// <summary>The same under forecasts so much more wrong than usual.</summary>
    public static SimulatedEstate WithForecasts(ulong seed, double errorScale) => new(Estate(seed).Spec with { ForecastErrorScale = errorScale }, seed);

    public static SimulatedEstate Live(ulong seed, IDecider decider) => Live(Estate(seed), decider);

    public static SimulatedEstate Live(SimulatedEstate estate, IDecider decider)
    {
        var crew = new FieldCrew(estate);
        IReadOnlyList<ValveOpening> week = [];
        while (estate.Today < estate.Spec.From.AddDays(330) && Stages(estate).Min() < LastStage)
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

        return estate;
    }

    private static IEnumerable<double> Stages(SimulatedEstate estate) => estate.Spec.Blocks.Select(b => estate.Block(b.Code).Canopy.Stage is var s && s > 47 ? 0 : s);
}
