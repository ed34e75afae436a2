using EstateWater.Agronomy.WaterStatus;

namespace EstateWater.Agronomy.Outlook;

/// <summary>A block's coming days: tension of every member, whatever water is put on.</summary>
public sealed class BlockOutlook
{
    private readonly RootZoneEnsemble today;
    private readonly MemberTensions tensions;
    private readonly WeatherAhead weather;
    private readonly IReadOnlyList<double> shadedFraction;
    private readonly double[][] beyondModel;

    /// <summary>Brings the fitted block up to today.</summary>
    /// <param name="block">As fitted; its season must reach the day before <see cref="WeatherAhead.FirstDay"/>.</param>
    /// <param name="weather">From today on.</param>
    /// <param name="measure">What the outlook speaks of.</param>
    /// <param name="shadedFraction">By day ahead, 0–1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The season ends before yesterday.</exception>
    public BlockOutlook(FittedBlock block, WeatherAhead weather, WaterPotentialMeasure measure, IReadOnlyList<double> shadedFraction)
    {
        var season = block.Evidence.Season;
        var todayIndex = season.IndexOf(weather.FirstDay);
        if (todayIndex < 0 || todayIndex > season.Days)
        {
            throw new ArgumentOutOfRangeException(nameof(weather), weather.FirstDay, "the season must reach the day before the first day ahead");
        }

        this.weather = weather;
        this.shadedFraction = shadedFraction;
        today = new RootZoneEnsemble(block.Evidence.Declared, block.Unknowns, Unknowns.StartOfSeason);
        today.LiveThrough(season, todayIndex);

        tensions = new MemberTensions(block.Unknowns, measure);
        beyondModel = DiscrepancyAhead.Of(block, measure, todayIndex, weather.Days);
    }

    /// <summary>Tension by day ahead, then member, if so much is applied. [MPa]</summary>
    /// <param name="appliedMm">By day ahead: water of the evening of that day over the block's area. [mm]</param>
    public double[][] Tensions(IReadOnlyList<double> appliedMm) => Trials().Tensions(appliedMm);

    /// <summary>For asking after many waterings that differ little.</summary>
    public OutlookTrials Trials() => new(today, weather, shadedFraction, Read);

    // Of a morning that was looked at.
    private void Read(RootZoneEnsemble morning, int day, double[] tensionMpa)
    {
        tensions.At(weather.VpdKpa[day], weather.LightShare[day], morning.RootShareLeft, tensionMpa);
        for (var m = 0; m < tensionMpa.Length; m++)
        {
            tensionMpa[m] = Math.Max(0, tensionMpa[m] + beyondModel[day][m]);
        }
    }
}
