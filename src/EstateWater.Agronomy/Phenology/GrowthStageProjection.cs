using System.Collections.Concurrent;
using EstateWater.Agronomy.Methods;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Agronomy.Phenology;

/// <summary>The growth stage of a block on any day: through what was observed, by thermal time in between and ahead.</summary>
/// <remarks>
/// <para>A season starts at winter bud. Between two observed stages progress is shared out by thermal time; after the last one it goes on with the
/// temperatures known, and with the calendar of a middling climate where none is. Never falls within a season.</para>
/// <para>Observations that fall from one date to a later one are pooled to their mean, as isotonic regression does.</para>
/// </remarks>
public sealed class GrowthStageProjection
{
    private readonly double latitudeDegrees;
    private readonly GrowthStageCurve curve;
    private readonly IReadOnlyDictionary<DateOnly, double> dailyMeanC;
    private readonly ILookup<int, (DateOnly Date, double ElStage)> observed;
    private readonly ConcurrentDictionary<int, double[]> seasons = new();

    /// <summary>Makes the projection of a block.</summary>
    /// <param name="latitudeDegrees">North positive. [degrees]</param>
    /// <param name="observed">Observed stages of any season, any order; may be empty. Stages 1 to 47.</param>
    /// <param name="dailyMeanC">(T_max + T_min)/2 by date, measured or forecast; null or with gaps where not known. [°C]</param>
    /// <param name="curve">How stages follow thermal time; null for the middle of the varieties.</param>
    /// <exception cref="ArgumentOutOfRangeException">A latitude or stage outside its range.</exception>
    public GrowthStageProjection(
        double latitudeDegrees,
        IEnumerable<(DateOnly Date, double ElStage)> observed,
        IReadOnlyDictionary<DateOnly, double>? dailyMeanC = null,
        GrowthStageCurve? curve = null)
    {
        ArgumentNullException.ThrowIfNull(observed);
        this.latitudeDegrees = WeatherInput.Latitude(latitudeDegrees);
        this.dailyMeanC = dailyMeanC ?? new Dictionary<DateOnly, double>();
        this.curve = curve ?? GrowthStageCurve.For(VarietyHeatNeeds.AnyVariety);
        this.observed = observed
            .Select(o => (o.Date, ElStage: Require.InRange(o.ElStage, GrowthStages.First, GrowthStages.Last, "as modified E-L number", "ElStage")))
            .ToLookup(o => Season.YearOf(o.Date, latitudeDegrees));
    }

    /// <summary>The stage on a day, 1 to 47.</summary>
    /// <param name="date">The day.</param>
    public double At(DateOnly date)
    {
        var year = Season.YearOf(date, latitudeDegrees);
        var progress = seasons.GetOrAdd(year, ProgressOfSeason);
        return curve.StageAt(progress[date.DayNumber - Season.FirstDay(year, latitudeDegrees).DayNumber]);
    }

    /// <summary>The first day of a season on which a stage is reached; null when it is not.</summary>
    /// <param name="elStage">1 to 47.</param>
    /// <param name="year">Year of the harvest.</param>
    /// <exception cref="ArgumentOutOfRangeException">A stage outside its range.</exception>
    public DateOnly? DateOf(double elStage, int year)
    {
        // A stage that was observed comes back from progress with the last bit changed.
        var wanted = curve.ProgressAt(elStage) - 1e-9;
        var day = Array.FindIndex(seasons.GetOrAdd(year, ProgressOfSeason), progress => progress >= wanted);
        return day < 0 ? null : Season.FirstDay(year, latitudeDegrees).AddDays(day);
    }

    private double[] ProgressOfSeason(int year)
    {
        var first = Season.FirstDay(year, latitudeDegrees);
        var thermalStart = GrapevineFloweringVeraison.StartOfSum(year, latitudeDegrees).DayNumber - first.DayNumber;
        var days = Season.LastDay(year, latitudeDegrees).DayNumber - first.DayNumber + 1;
        var increments = new double[days];
        for (var day = thermalStart; day < days; day++)
        {
            increments[day] = dailyMeanC.TryGetValue(first.AddDays(day), out var mean)
                ? GrapevineFloweringVeraison.OfDay(mean)
                : curve.TypicalProgressOfDay(day - thermalStart);
        }

        var progress = new double[days];
        var from = 0;
        foreach (var (date, elStage) in IsotonicStages.Of(observed[year]))
        {
            var to = date.DayNumber - first.DayNumber;
            ShareOut(progress, increments, from, to, curve.ProgressAt(elStage));
            from = to;
        }

        GoOn(progress, increments, from);
        return progress;
    }

    private static void ShareOut(double[] progress, double[] increments, int from, int to, double reached)
    {
        var start = progress[from];
        var total = increments[(from + 1)..(to + 1)].Sum();
        var sum = 0.0;
        for (var day = from + 1; day < to; day++)
        {
            sum += increments[day];
            progress[day] = total > 0 ? start + (sum / total * (reached - start)) : start;
        }

        progress[to] = reached;
    }

    private void GoOn(double[] progress, double[] increments, int from)
    {
        for (var day = from + 1; day < progress.Length; day++)
        {
            progress[day] = progress[day - 1] + (progress[day - 1] < curve.RipeCd ? increments[day] : GrowthStageCurve.PerDayAfterRipe);
        }
    }
}
