using EstateWater.Agronomy.Weather;

namespace EstateWater.Planning.Weather;

/// <summary>A station's season so far without holes, and its coming days as ensemble members may meet them.</summary>
internal sealed class StationWeather
{
    private StationWeather(PlanStation station, IReadOnlyList<DailyWeather> season, IReadOnlyList<DailyWeather> lastSeason, MembersAhead ahead)
    {
        Station = station;
        Season = season;
        LastSeason = lastSeason;
        Ahead = ahead;
    }

    public PlanStation Station { get; }

    /// <summary>From the first measured day of the season to yesterday; days that were not measured are filled.</summary>
    public IReadOnlyList<DailyWeather> Season { get; }

    /// <summary>The season before, as far as it was measured; empty when it was not.</summary>
    public IReadOnlyList<DailyWeather> LastSeason { get; }

    /// <summary>Today and the horizon.</summary>
    public MembersAhead Ahead { get; }

    public static StationWeather Of(PlanStation station, DateOnly today, SeasonSpan season, DateTimeOffset asOf, int days)
    {
        var past = station.Days.Where(d => d.Date < today).ToList();
        var forecasts = station.Forecasts.Where(f => f.IssuedAt <= asOf).ToList();
        return new StationWeather(
            station,
            FilledDays.Between(past, forecasts, season.First, today),
            FilledDays.Between(past, [], season.FirstOfLast, season.First),
            MembersAhead.Of(station.Code, past, forecasts, today, days));
    }

    public double[] Et0Mm(IReadOnlyList<DailyWeather> days) => [.. days.Select(d => ReferenceEvapotranspiration.Daily(d, Station.Site).Mm)];
}

/// <summary>The growing season a day belongs to, and the one before.</summary>
/// <param name="FirstOfLast">First day of the season before.</param>
/// <param name="First">First day of the season: 1 July south of the equator, 1 January north of it, both in the vine's winter.</param>
internal sealed record SeasonSpan(DateOnly FirstOfLast, DateOnly First)
{
    public static SeasonSpan Of(DateOnly day, double latitudeDegrees)
    {
        var year = latitudeDegrees < 0 && day.Month < 7 ? day.Year - 1 : day.Year;
        var month = latitudeDegrees < 0 ? 7 : 1;
        return new SeasonSpan(new DateOnly(year - 1, month, 1), new DateOnly(year, month, 1));
    }
}
