using EstateWater.Agronomy.Canopy;
using EstateWater.Agronomy.Drip;
using EstateWater.Agronomy.WaterStatus;
using EstateWater.Agronomy.Weather;
using EstateWater.Planning;
using EstateWater.Simulation.Estate;
using EstateWater.Simulation.Numbers;

namespace EstateWater.Benchmarks.ClosedLoop;

/// <summary>
/// A plain reference for the planner's outlook, on the same mornings with the same water ahead: one bucket a block and some
/// hundred parameter sets, weighted by how well they follow the block's own reading sets. How near it comes says how hard
/// an estate is to foretell.
/// </summary>
internal sealed class PlainOutlook(PlanRequest request, PlanStation station, IReadOnlyDictionary<DateOnly, DailyWeather> weather)
{
    private const int ParameterSets = 400;

    // Tried from 0.05 to 0.2: about where it comes nearest, on simulated estates and on a folder of another program.
    private const double SetErrorMpa = 0.07;
    private const double DryBelowShareLeft = 1 / 3.0;
    private const double EffectiveRainShare = 0.9;
    private const int DaysBeforeFirstSet = 60;

    /// <summary>What it expects of every block that was read at midday, in the measure read last.</summary>
    /// <param name="request">What is known.</param>
    /// <param name="ahead">Valves that open after it.</param>
    /// <param name="leads">How many days ahead.</param>
    public static IEnumerable<Expectation> Of(PlanRequest request, IReadOnlyList<ValveOpening> ahead, IReadOnlyList<int> leads)
    {
        var plain = request.Stations.ToDictionary(s => s.Code, s => new PlainOutlook(request, s, Weather(s)));
        return request.Blocks.Where(b => MeasureOf(b) is not null).SelectMany(block => plain[block.StationCode].Of(block, ahead, leads));
    }

    /// <summary>What a block was last read in at midday; null where it never was.</summary>
    public static WaterPotentialMeasure? MeasureOf(PlanBlock block) => block.Readings.LastOrDefault(r => r.Measure != WaterPotentialMeasure.Predawn)?.Measure;

    // Measured, and what the last single forecast says of the days ahead.
    private static Dictionary<DateOnly, DailyWeather> Weather(PlanStation station)
    {
        var weather = station.Days.ToDictionary(d => d.Date);
        foreach (var day in station.Forecasts.Where(f => f.Member is null).MaxBy(f => f.IssuedAt)?.Days ?? [])
        {
            weather.TryAdd(day.Date, day);
        }

        return weather;
    }

    private IEnumerable<Expectation> Of(PlanBlock block, IReadOnlyList<ValveOpening> ahead, IReadOnlyList<int> leads)
    {
        var measure = MeasureOf(block)!.Value;
        var first = Local(block.Readings[0].TakenAt).AddDays(-DaysBeforeFirstSet);
        var days = request.Today.DayNumber - first.DayNumber + leads.Max() + 1;
        var drive = Drive(block, ahead, first, days);
        var sets = block.Readings.Where(r => r.Measure == measure)
            .GroupBy(r => Local(r.TakenAt))
            .Select(s => (Day: s.Key.DayNumber - first.DayNumber, Mpa: s.Average(r => r.TensionBar) / 10))
            .ToList();
        var courses = Enumerable.Range(0, ParameterSets).Select(i => Live(block, measure, Dice.Of(1, "plain", i), drive)).ToList();
        var misfit = courses.Select(c => sets.Sum(s => Math.Pow((c[s.Day] - s.Mpa) / SetErrorMpa, 2)) / 2).ToList();
        var weights = misfit.Select(m => Math.Exp(misfit.Min() - m)).ToList();
        return leads.Select(lead =>
        {
            var day = request.Today.AddDays(lead);
            var ranked = courses.Zip(weights, (c, weight) => (Bar: 10 * c[day.DayNumber - first.DayNumber], weight)).OrderBy(c => c.Bar).ToList();
            return new Expectation(
                block.Code,
                day,
                lead,
                new TensionBand(Quantile(ranked, 0.1), Quantile(ranked, 0.5), Quantile(ranked, 0.9)),
                sets[^1].Day >= request.Today.DayNumber - first.DayNumber - 8 ? 10 * sets[^1].Mpa : null);
        });
    }

    private static double Quantile(IReadOnlyList<(double Bar, double Weight)> ranked, double share)
    {
        var left = share * ranked.Sum(r => r.Weight);
        return ranked.First(r => (left -= r.Weight) <= 0).Bar;
    }

    // Tension by day under one set of parameters. [MPa]
    private static double[] Live(PlanBlock block, WaterPotentialMeasure measure, Dice dice, IReadOnlyList<Driven> days)
    {
        var holds = block.RootDepthM * block.AvailableWaterMmPerM * Math.Exp(dice.Normal(0, 0.4));
        var use = CropCoefficient.WilliamsAyarsSlope * Math.Exp(dice.Normal(0, 0.25));
        var offset = dice.Normal(0, 0.12);
        var response = Math.Exp(dice.Normal(0, 0.3));
        var climb = 0.9 * Math.Exp(dice.Normal(0, 0.4));
        var delivery = Math.Exp(dice.Normal(0, 0.1));
        var gone = holds * dice.Between(0, 0.35);
        var baseline = NonStressedBaseline.For(measure);
        var course = new double[days.Count];
        for (var day = 0; day < course.Length; day++)
        {
            var d = days[day];
            var left = 1 - (gone / holds);
            course[day] = baseline.InterceptMpa + offset + (response * baseline.SlopeMpaPerKpa * d.VpdKpa) + (climb * (1 - left));
            gone += (use * d.Shade * d.Et0Mm * Math.Min(1, left / DryBelowShareLeft)) - (EffectiveRainShare * d.RainMm) - (delivery * d.AppliedMm);
            gone = Math.Clamp(gone, 0, holds);
        }

        return course;
    }

    private List<Driven> Drive(PlanBlock block, IReadOnlyList<ValveOpening> ahead, DateOnly first, int days)
    {
        var rate = DripLine.ApplicationRateMmPerH(block.EmitterFlowLPerH, block.EmittersPerVine, block.RowSpacingM, block.VineSpacingM);
        var hours = request.Valves.Single(v => v.Code == block.ValveCode).Applied.Select(a => (a.StartedAt, a.Hours))
            .Concat(ahead.Where(s => s.Valve == block.ValveCode).Select(s => (s.StartedAt, s.Hours)))
            .ToLookup(a => Local(a.StartedAt), a => a.Hours);
        var driven = new List<Driven>();
        DailyWeather? last = null;
        for (var date = first; driven.Count < days; date = date.AddDays(1))
        {
            last = weather.GetValueOrDefault(date) ?? last ?? throw new InvalidDataException($"No weather for {date:yyyy-MM-dd}.");
            driven.Add(new Driven(
                ReferenceEvapotranspiration.Daily(last with { Date = date }, station.Site).Mm,
                VapourPressureDeficit.NearSolarNoonKpa(last),
                last.RainMm ?? 0,
                rate * hours[date].Sum(),
                Shade(block, date)));
        }

        return driven;
    }

    // The last canopy visit; the declared full canopy before any.
    private static double Shade(PlanBlock block, DateOnly date) =>
        block.CanopyLooks.LastOrDefault(v => v.Date <= date && v.ShadedFraction is not null)?.ShadedFraction
        ?? block.CanopyLooks.FirstOrDefault(v => v.ShadedFraction is not null)?.ShadedFraction
        ?? block.ShadedFraction
        ?? 0.3;

    private DateOnly Local(DateTimeOffset instant) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(instant, request.TimeZone).DateTime);

    private readonly record struct Driven(double Et0Mm, double VpdKpa, double RainMm, double AppliedMm, double Shade);
}
