using EstateWater.Agronomy.Weather;
using EstateWater.Planning.Weather;

namespace EstateWater.Planning.Seasons;

/// <summary>A station's weather from today to the season's end in a few versions, each as likely as the other.</summary>
/// <remarks>Through the horizon the forecast's versions; past it the same days of other years as the station measured them, heat and all.</remarks>
internal sealed class SeasonWeather
{
    /// <summary>A few are enough for a mean over many weeks and blocks.</summary>
    public const int Versions = 6;

    // The same year may serve twice, moved by some days.
    private static readonly int[] Moves = [0, -5, 5, -3, 3, -7];

    private SeasonWeather(IReadOnlyList<DailyWeather[]> versions, StationSite site)
    {
        Et0Mm = [.. versions.Select(v => v.Select(d => ReferenceEvapotranspiration.Daily(d, site).Mm).ToArray())];
        VpdKpa = [.. versions.Select(v => v.Select(VapourPressureDeficit.NearSolarNoonKpa).ToArray())];
        LightShare = [.. versions.Select(v => v.Select(d => MiddayLight.Share(d, site)).ToArray())];
        RainMm = [.. versions.Select(v => v.Select(d => d.RainMm ?? 0).ToArray())];
        IsHot = [.. versions.Select(v => v.Select(d => d.TMaxC >= HeatSpellRule.Default.ThresholdC).ToArray())];
    }

    /// <summary>By version, then day. [mm/d]</summary>
    public double[][] Et0Mm { get; }

    /// <summary>By version, then day; near solar noon. [kPa]</summary>
    public double[][] VpdKpa { get; }

    /// <summary>By version, then day: how far the light at noon opens stomata, 0–1.</summary>
    public double[][] LightShare { get; }

    /// <summary>By version, then day. [mm]</summary>
    public double[][] RainMm { get; }

    /// <summary>By version, then day: as hot as a heat spell's.</summary>
    public bool[][] IsHot { get; }

    /// <summary>So many days from today on.</summary>
    public static SeasonWeather Of(StationWeather weather, int days)
    {
        var today = weather.Ahead.Today;
        var measured = weather.Station.Days.Where(d => d.Date < today).ToDictionary(d => d.Date);
        var shifts = Shifts(measured, today, days);
        var silent = new OtherYears([.. measured.Values.OrderBy(d => d.Date)], today, weather.Station.Code);
        var ahead = weather.Ahead.Versions;
        return new SeasonWeather(
            [.. Enumerable.Range(0, Versions).Select(v =>
            {
                var known = ahead[((2 * v) + 1) * ahead.Count / (2 * Versions)];
                return shifts.Count > 0
                    ? Replay(known, measured, shifts[v % shifts.Count], today, days)
                    : [.. Enumerable.Range(0, days).Select(d => d < known.Length ? known[d] : silent.Day(today.AddDays(d), v * 3, known))];
            })],
            weather.Station.Site);
    }

    // Years that were measured from now to the season's end, spread over the record; then the same ones moved a little.
    private static List<int> Shifts(Dictionary<DateOnly, DailyWeather> measured, DateOnly today, int days)
    {
        bool Holds(int shift) => measured.ContainsKey(today.AddDays(-shift)) && measured.ContainsKey(today.AddDays(days - 1 - shift));
        var years = Enumerable.Range(1, 40).Select(year => (int)Math.Round(365.2425 * year)).Where(Holds).ToList();
        return years.Count >= Versions
            ? [.. Enumerable.Range(0, Versions).Select(v => years[v * years.Count / Versions])]
            : [.. Moves.SelectMany(move => years.Select(y => y + move)).Where(Holds).Take(Versions)];
    }

    private static DailyWeather[] Replay(DailyWeather[] known, Dictionary<DateOnly, DailyWeather> measured, int shift, DateOnly today, int days)
    {
        var replayed = new DailyWeather[days];
        var last = measured[today.AddDays(-shift)];
        for (var day = 0; day < days; day++)
        {
            // A day that was not measured is taken like the one before it.
            last = measured.GetValueOrDefault(today.AddDays(day - shift)) ?? last;
            replayed[day] = day < known.Length ? known[day] : last with { Date = today.AddDays(day) };
        }

        return replayed;
    }
}
