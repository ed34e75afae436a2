using EstateWater.Agronomy.Phenology;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Planning.Weather;

/// <summary>A station's season so far without holes, and its coming days as ensemble members may meet them.</summary>
internal sealed class StationWeather
{
    private readonly Dictionary<DateOnly, DailyWeather> measured;

    private StationWeather(PlanStation station, SeasonDrive? season, SeasonDrive? lastSeason, MembersAhead ahead)
    {
        Station = station;
        Season = season;
        LastSeason = lastSeason;
        Ahead = ahead;
        measured = station.Days.ToDictionary(d => d.Date);
        DailyMeanC = station.Days
            .Concat(ahead.Versions[ahead.Versions.Count / 2].Where(d => d.Date >= ahead.Today))
            .GroupBy(d => d.Date)
            .ToDictionary(d => d.Key, d => (d.First().TMaxC + d.First().TMinC) / 2);
    }

    /// <summary>Mean temperature by date, measured and one version of what is ahead. [°C]</summary>
    public IReadOnlyDictionary<DateOnly, double> DailyMeanC { get; }

    public PlanStation Station { get; }

    /// <summary>From the first measured day of the season to yesterday; null when none was measured.</summary>
    public SeasonDrive? Season { get; }

    /// <summary>The season before, as far as it was measured; null when it was not.</summary>
    public SeasonDrive? LastSeason { get; }

    /// <summary>Today and the horizon.</summary>
    public MembersAhead Ahead { get; }

    public static StationWeather Of(PlanStation station, DateOnly today, SeasonSpan season, DateTimeOffset asOf, int days)
    {
        var past = station.Days.Where(d => d.Date < today).ToList();
        var forecasts = station.Forecasts.Where(f => f.IssuedAt <= asOf).ToList();
        return new StationWeather(
            station,
            SeasonDrive.Of(FilledDays.ThisSeason(past, forecasts, season.First, today), station.Site),
            SeasonDrive.Of(FilledDays.PastSeason(past, season.FirstOfLast, season.First), station.Site),
            MembersAhead.Of(station.Code, past, forecasts, today, days));
    }

    /// <summary>Vapour pressure deficit near solar noon of a measured day; null where it was not measured. [kPa]</summary>
    public double? VpdKpaAt(DateOnly day) => measured.TryGetValue(day, out var weather) ? VapourPressureDeficit.NearSolarNoonKpa(weather) : null;
}

/// <summary>What a season's weather does to every block of a station, computed once for all of them.</summary>
/// <param name="FirstDay">First day of the arrays.</param>
/// <param name="Et0Mm">Reference evapotranspiration. [mm/d]</param>
/// <param name="VpdKpa">Vapour pressure deficit near solar noon. [kPa]</param>
/// <param name="LightShare">How far the light at noon opens stomata, 0–1.</param>
/// <param name="RainMm">Rain; none where it was not measured. [mm]</param>
internal sealed record SeasonDrive(DateOnly FirstDay, double[] Et0Mm, double[] VpdKpa, double[] LightShare, double[] RainMm)
{
    /// <summary>Of a run of days without holes; null when it is empty.</summary>
    public static SeasonDrive? Of(IReadOnlyList<DailyWeather> days, StationSite site) => days.Count == 0
        ? null
        : new SeasonDrive(
            days[0].Date,
            [.. days.Select(d => ReferenceEvapotranspiration.Daily(d, site).Mm)],
            [.. days.Select(VapourPressureDeficit.NearSolarNoonKpa)],
            [.. days.Select(d => MiddayLight.Share(d, site))],
            [.. days.Select(d => d.RainMm ?? 0)]);
}

/// <summary>The growing season a day belongs to, and the one before.</summary>
/// <param name="FirstOfLast">First day of the season before.</param>
/// <param name="First">First day of the season, in the vine's winter.</param>
internal sealed record SeasonSpan(DateOnly FirstOfLast, DateOnly First)
{
    public static SeasonSpan Of(DateOnly day, double latitudeDegrees)
    {
        var year = Season.YearOf(day, latitudeDegrees);
        return new SeasonSpan(Season.FirstDay(year - 1, latitudeDegrees), Season.FirstDay(year, latitudeDegrees));
    }
}
