using EstateWater.Agronomy.Outlook;
using EstateWater.Agronomy.Statistics;
using EstateWater.Agronomy.Weather;

namespace EstateWater.Planning.Weather;

/// <summary>The coming days in several versions, each as likely as the other.</summary>
/// <remarks>
/// Members of the latest forecast where it has them. A single forecast is widened by an error that grows with the lead.
/// Past its last day, each version follows the station's own weather of the same time of another year.
/// </remarks>
internal sealed class MembersAhead
{
    private const int VersionsOfOne = 16;

    private MembersAhead(DateOnly today, IReadOnlyList<DailyWeather[]> versions, DailyWeather[]? singleRun)
    {
        Today = today;
        Versions = versions;
        SingleRun = singleRun;
    }

    public DateOnly Today { get; }

    /// <summary>Each from today through the horizon.</summary>
    public IReadOnlyList<DailyWeather[]> Versions { get; }

    /// <summary>The latest single forecast as it was issued, from today to its last day; null where there is none.</summary>
    public DailyWeather[]? SingleRun { get; }

    public static MembersAhead Of(string station, IReadOnlyList<DailyWeather> past, IReadOnlyList<IssuedForecast> forecasts, DateOnly today, int days)
    {
        var issued = Latest(forecasts);
        var usual = new OtherYears(past, today, station);
        var unbiased = ForecastBias.Of(past, forecasts).Correct(forecasts);
        var skill = ForecastSkill.Of(past, unbiased, usual);
        IReadOnlyList<IssuedForecast> expected = [.. unbiased.Select(f => skill.Faded(f, usual))];
        var latest = Latest(expected);
        var errors = ForecastError.Of(past, expected, usual.SpreadC(today));
        var versions = latest.Count switch
        {
            0 => [.. Enumerable.Range(0, VersionsOfOne).Select(_ => Array.Empty<DailyWeather>())],
            1 => WidenedForecast.Versions(latest[0], errors, today, station, VersionsOfOne),
            _ => MemberSpread.Calibrated(latest, errors, today),
        };
        var single = issued.Find(f => f.Member is null)?.Days.Where(d => d.Date >= today).OrderBy(d => d.Date).ToArray();
        return new MembersAhead(today, [.. versions.Select((v, i) => Complete(v, usual, i, today, days))], single);
    }

    /// <summary>Highest temperature that half the versions reach, by day.</summary>
    public double MedianTMaxC(int day) => Descriptive.Median([.. Versions.Select(v => v[day].TMaxC)]);

    /// <summary>Spreads the versions over the members of an outlook.</summary>
    public WeatherAhead ForMembers(StationSite site)
    {
        var days = Versions[0].Length;
        double[][] Spread(Func<DailyWeather, double> value)
        {
            var spread = new double[days][];
            for (var day = 0; day < days; day++)
            {
                var byVersion = Versions.Select(v => value(v[day])).ToArray();
                spread[day] = [.. Enumerable.Range(0, WeatherAhead.Members).Select(m => byVersion[m % byVersion.Length])];
            }

            return spread;
        }

        return new WeatherAhead(
            Today,
            Spread(d => ReferenceEvapotranspiration.Daily(d, site).Mm),
            Spread(VapourPressureDeficit.NearSolarNoonKpa),
            Spread(d => MiddayLight.Share(d, site)),
            Spread(d => d.RainMm ?? 0));
    }

    // The latest issue: its members and its single run, each as likely as the other.
    private static List<IssuedForecast> Latest(IReadOnlyList<IssuedForecast> forecasts)
    {
        if (forecasts.Count == 0)
        {
            return [];
        }

        var issued = forecasts.Max(f => f.IssuedAt);
        return [.. forecasts.Where(f => f.IssuedAt == issued).OrderBy(f => f.Member, StringComparer.Ordinal)];
    }

    private static DailyWeather[] Complete(DailyWeather[] version, OtherYears beyond, int index, DateOnly today, int days)
    {
        var known = version.ToDictionary(d => d.Date);
        return [.. Enumerable.Range(0, days).Select(i => known.GetValueOrDefault(today.AddDays(i)) ?? beyond.Day(today.AddDays(i), index, version))];
    }
}
