using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Agronomy.Outlook;

/// <summary>A block's coming days: tension of every member, whatever water is put on.</summary>
public sealed class BlockOutlook
{
    // How much of the last set's surprise is carried on, and for how long. Ours.
    private const double ResidualGain = 0.6;
    private const double ResidualDays = 10;

    // What the model cannot follow from day to day. [MPa]
    private const double ModelErrorMpa = 0.01;

    private readonly RootZoneEnsemble today;
    private readonly MemberTensions tensions;
    private readonly WeatherAhead weather;
    private readonly double shadedFraction;
    private readonly double[] modelError;
    private readonly (int Day, double Mpa)? residual;
    private readonly int todayIndex;

    /// <summary>Brings the fitted block up to today.</summary>
    /// <param name="block">As fitted; its season must reach the day before <see cref="WeatherAhead.FirstDay"/>.</param>
    /// <param name="weather">From today on.</param>
    /// <param name="measure">What the outlook speaks of.</param>
    /// <param name="shadedFraction">Of the coming days, 0–1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The season ends before yesterday.</exception>
    public BlockOutlook(FittedBlock block, WeatherAhead weather, WaterPotentialMeasure measure, double shadedFraction)
    {
        var season = block.Evidence.Season;
        todayIndex = season.IndexOf(weather.FirstDay);
        if (todayIndex < 0 || todayIndex > season.Days)
        {
            throw new ArgumentOutOfRangeException(nameof(weather), weather.FirstDay, "the season must reach the day before the first day ahead");
        }

        this.weather = weather;
        this.shadedFraction = shadedFraction;
        today = new RootZoneEnsemble(block.Evidence.Declared, block.Unknowns, Unknowns.StartOfSeason);
        for (var day = 0; day < todayIndex; day++)
        {
            today.Step(season.Et0Mm[day], season.RainMm[day], season.AppliedMm[day], season.ShadedFraction[day]);
        }

        tensions = new MemberTensions(block.Unknowns, measure);
        residual = block.LastResidual;
        var numbers = new NormalNumbers(block.Evidence.Code + " ahead");
        modelError = [.. Enumerable.Range(0, today.Members).Select(_ => ModelErrorMpa * numbers.Next())];
    }

    /// <summary>Tension by day ahead, then member, if so much is applied. [MPa]</summary>
    /// <param name="appliedMm">By day ahead: water of the evening of that day over the block's area. [mm]</param>
    public double[][] Tensions(IReadOnlyList<double> appliedMm)
    {
        var rootZone = today.Branch();
        var byDay = new double[weather.Days][];
        for (var day = 0; day < weather.Days; day++)
        {
            rootZone.Look();
            var values = new double[rootZone.Members];
            tensions.At(weather.VpdKpa[day], rootZone.RootShareLeft, values);
            var carried = residual is { } r ? ResidualGain * r.Mpa * Math.Exp(-(todayIndex + day - r.Day) / ResidualDays) : 0;
            for (var m = 0; m < values.Length; m++)
            {
                values[m] = Math.Max(0, values[m] + carried + modelError[m]);
            }

            byDay[day] = values;
            rootZone.Step(weather.Et0Mm[day], weather.RainMm[day], appliedMm[day], shadedFraction);
        }

        return byDay;
    }
}
