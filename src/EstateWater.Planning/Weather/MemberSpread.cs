using EstateWater.Agronomy.Weather;

namespace EstateWater.Planning.Weather;

/// <summary>Brings the spread of a forecast's members to what the station's forecasts were really wrong by.</summary>
/// <remarks>
/// The scale of Gneiting et al. (2005, Monthly Weather Review 133:1098–1118, nonhomogeneous regression), one factor for
/// all leads: members that scatter twice as far as past errors are drawn together, too narrow ones apart. Few past
/// errors move it little.
/// </remarks>
internal static class MemberSpread
{
    // Past days at which the station's own errors count as much as the members' word: a fortnight's forecast. Ours.
    private const double HalfTrusted = 14;
    private const int LongestLead = 10;

    public static List<DailyWeather[]> Calibrated(IReadOnlyList<IssuedForecast> members, ForecastError errors, DateOnly today)
    {
        var means = members.SelectMany(m => m.Days).GroupBy(d => d.Date).ToDictionary(g => g.Key, g => (TMaxC: g.Average(d => d.TMaxC), TMinC: g.Average(d => d.TMinC)));
        var factor = Factor(members, errors);
        return [.. members.Select(m => m.Days
            .Where(d => d.Date >= today)
            .OrderBy(d => d.Date)
            .Select(d => ForecastError.Warmer(d, (factor - 1) * (d.TMaxC - means[d.Date].TMaxC), (factor - 1) * (d.TMinC - means[d.Date].TMinC)))
            .ToArray())];
    }

    private static double Factor(IReadOnlyList<IssuedForecast> members, ForecastError errors)
    {
        var variance = members.SelectMany(m => m.Days)
            .GroupBy(d => members[0].LeadDays(d.Date))
            .Where(day => day.Key is >= 1 and <= LongestLead && day.Count() > 1)
            .Select(day => (Lead: day.Key, Own: Variance([.. day.Select(d => d.TMaxC)])))
            .ToList();
        var own = variance.Sum(v => v.Own);
        if (own <= 0)
        {
            return 1;
        }

        var past = variance.Sum(v => errors.SigmaC(v.Lead) * errors.SigmaC(v.Lead));
        return Math.Pow(past / own, 0.5 * errors.Count / (errors.Count + HalfTrusted));
    }

    private static double Variance(double[] values)
    {
        var mean = values.Average();
        return values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1);
    }
}
