using EstateWater.Simulation.Estate;

namespace EstateWater.Benchmarks.ClosedLoop;

/// <summary>How a season went, by the true state that no decider sees.</summary>
/// <param name="HeatDays">Block-days in heat spells.</param>
/// <param name="OverInHeat">Of them, over the ceiling.</param>
/// <param name="Over">Block-days over the ceiling from fruit set to harvest.</param>
/// <param name="Under">Block-days under the floor in the same time that were watered in the four days before.</param>
/// <param name="Days">Block-days of that time.</param>
/// <param name="WaterM3">Water put on.</param>
/// <param name="OverInHeatBarDays">How far over the ceiling in heat, summed. [bar d]</param>
/// <param name="OverBarDays">The same from fruit set to harvest. [bar d]</param>
internal sealed record SeasonScore(int HeatDays, int OverInHeat, int Over, int Under, int Days, double WaterM3, double OverInHeatBarDays, double OverBarDays)
{
    private const double HotC = 35;
    private const double FruitSet = 27;
    private const double Harvest = 38;
    private const int WateredWithinDays = 4;

    public static SeasonScore Of(LivedSeason season)
    {
        var estate = season.Estate;
        var all = estate.Spec.Blocks.SelectMany(b => estate.Block(b.Code).Days
            .Select((day, i) => (Block: b, Day: day, Index: i))
            .Where(d => d.Day.Date >= season.FirstDay && d.Day.Stage is >= FruitSet and < Harvest)
            .Select(d => (d.Day, Target: estate.Spec.TargetOf(b, d.Day.Stage)!, Bar: d.Day.TensionBar(b.Measure), Hot: IsHeat(estate, b.Station, d.Day.Date), Watered: Watered(estate, b.Code, d.Index)))).ToList();
        return new SeasonScore(
            all.Count(d => d.Hot),
            all.Count(d => d.Hot && d.Bar > d.Target.CeilingBar),
            all.Count(d => d.Bar > d.Target.CeilingBar),
            all.Count(d => d.Bar < d.Target.FloorBar && d.Watered),
            all.Count,
            WaterM3Of(estate, estate.Openings.Where(o => DateOnly.FromDateTime(o.StartedAt.DateTime) >= season.FirstDay)),
            all.Where(d => d.Hot).Sum(d => Math.Max(0, d.Bar - d.Target.CeilingBar)),
            all.Sum(d => Math.Max(0, d.Bar - d.Target.CeilingBar)));
    }

    /// <summary>What passes the valves in some openings. [m³]</summary>
    public static double WaterM3Of(SimulatedEstate estate, IEnumerable<ValveOpening> openings) =>
        openings.Sum(o => o.Hours * estate.Spec.DeclaredFlowM3PerH(o.Valve) * estate.ThroughShare(o.Valve, DateOnly.FromDateTime(o.StartedAt.DateTime)));

    public static SeasonScore operator +(SeasonScore a, SeasonScore b) =>
        new(a.HeatDays + b.HeatDays, a.OverInHeat + b.OverInHeat, a.Over + b.Over, a.Under + b.Under, a.Days + b.Days, a.WaterM3 + b.WaterM3, a.OverInHeatBarDays + b.OverInHeatBarDays, a.OverBarDays + b.OverBarDays);

    private static bool Watered(SimulatedEstate estate, string block, int index) =>
        estate.Block(block).Days.Skip(index - WateredWithinDays).Take(WateredWithinDays).Any(d => d.Flows.DripMm > 0);

    /// <summary>A day of three or more in a row at 35 °C or more.</summary>
    private static bool IsHeat(SimulatedEstate estate, string station, DateOnly date)
    {
        bool Hot(int offset) => estate.Weather(station, date.AddDays(offset)).TMaxC >= HotC;
        return Hot(0) && ((Hot(1) && Hot(2)) || (Hot(-1) && Hot(1)) || (Hot(-1) && Hot(-2)));
    }
}
