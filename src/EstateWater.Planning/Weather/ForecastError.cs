using EstateWater.Agronomy.Weather;
using MathNet.Numerics.Distributions;

namespace EstateWater.Planning.Weather;

/// <summary>What a station's single forecast may be wrong by, as its own past errors tell.</summary>
/// <remarks>
/// Before any is known: σ(d) = √(1.8² + (0.55 (d − 1))²) °C on the highest temperature at a lead of d days, a proposal
/// between published one-day errors (about 1.6 °C, Brooks et al., NSSL) and climate spread near day ten; a default, not
/// verified. All past errors together scale it; at each lead it then counts as one past error, and neighbouring leads
/// count with their own.
/// </remarks>
internal sealed class ForecastError
{
    private const int LongestLead = 16;

    // Of an error of the day's highest temperature that the night's lowest shares. Ours.
    private const double NightShare = 0.6;

    /// <summary>Neighbouring days of one forecast are wrong together: so many count as one.</summary>
    public const int DaysOfOneError = 4;

    private readonly double[] sigmaC = new double[LongestLead + 1];

    private ForecastError(ILookup<int, double> errorsC)
    {
        Count = errorsC.Sum(lead => lead.Count());
        var scale = Scale(errorsC);
        for (var lead = 0; lead <= LongestLead; lead++)
        {
            var near = Enumerable.Range(lead - 1, 3).SelectMany(l => errorsC[l]).ToList();
            var before = scale * UsualSigmaC(lead);
            sigmaC[lead] = Math.Sqrt(((before * before) + near.Sum(e => e * e)) / (1 + near.Count));
        }
    }

    /// <summary>Learns from every forecast that was issued and the days that followed.</summary>
    public static ForecastError Of(IReadOnlyList<DailyWeather> past, IReadOnlyList<IssuedForecast> forecasts) =>
        new(Past(past, forecasts).ToLookup(e => e.LeadDays, e => e.ByDayC));

    /// <summary>By how much each single forecast was too warm for each day that followed. [°C]</summary>
    public static IEnumerable<(int LeadDays, DailyWeather Measured, double ByDayC, double ByNightC)> Past(IReadOnlyList<DailyWeather> past, IReadOnlyList<IssuedForecast> forecasts)
    {
        var measured = past.ToDictionary(d => d.Date);
        return
            from forecast in forecasts
            where forecast.Member is null
            from day in forecast.Days
            let came = measured.GetValueOrDefault(day.Date)
            where came is not null
            select (forecast.LeadDays(day.Date), came, day.TMaxC - came.TMaxC, day.TMinC - came.TMinC);
    }

    /// <summary>How many past days were forecast and measured, all leads together.</summary>
    public int Count { get; }

    /// <summary>Standard deviation of the error of the highest temperature. [°C]</summary>
    public double SigmaC(int leadDays) => sigmaC[Math.Clamp(leadDays, 0, LongestLead)];

    // How the station's errors compare with the usual ones, all leads together: this is known after one or two forecasts.
    private static double Scale(ILookup<int, double> errorsC)
    {
        const double imaginary = 1;
        var squares = errorsC.SelectMany(lead => lead.Select(e => e * e / (UsualSigmaC(lead.Key) * UsualSigmaC(lead.Key)))).ToList();
        return Math.Sqrt((imaginary + (squares.Sum() / DaysOfOneError)) / (imaginary + (squares.Count / DaysOfOneError)));
    }

    /// <summary>Before any past error is known. [°C]</summary>
    public static double UsualSigmaC(int leadDays) => Math.Sqrt((1.8 * 1.8) + (0.55 * 0.55 * Math.Max(0, leadDays - 1) * Math.Max(0, leadDays - 1)));

    /// <summary>Versions of one forecast, evenly spread over what it may be wrong by; an error lasts through a version.</summary>
    public List<DailyWeather[]> Widen(IssuedForecast forecast, DateOnly today, string station, int versions)
    {
        var days = forecast.Days.Where(d => d.Date >= today).OrderBy(d => d.Date).ToArray();
        var widened = new List<DailyWeather[]>(versions);
        for (var v = 0; v < versions; v++)
        {
            // Warm and cold versions alternate, and the early error of a version says little of its late one.
            var early = Normal.InvCDF(0, 1, (v + 0.5) / versions);
            var late = Normal.InvCDF(0, 1, (((v * 7) + station.Length) % versions + 0.5) / versions);
            widened.Add([.. days.Select(d => Shift(d, forecast.LeadDays(d.Date), early, late))]);
        }

        return widened;
    }

    private DailyWeather Shift(DailyWeather day, int lead, double early, double late)
    {
        var turn = Math.Clamp((lead - 2) / 6.0, 0, 1);
        var z = ((1 - turn) * early) + (turn * late);
        z /= Math.Sqrt(((1 - turn) * (1 - turn)) + (turn * turn));
        var warmer = SigmaC(lead) * z;
        return Warmer(day, warmer, NightShare * warmer);
    }

    /// <summary>A day warmer by so much than expected. It is drier at the same vapour: humidity is given at the shifted temperature.</summary>
    public static DailyWeather Warmer(DailyWeather day, double byDayC, double byNightC)
    {
        var tMinC = Math.Min(day.TMinC + byNightC, day.TMaxC + byDayC);
        var rhMaxPct = Dry(day.RhMaxPct, day.TMinC, tMinC);
        var rhMinPct = Dry(day.RhMinPct, day.TMaxC, day.TMaxC + byDayC);
        return day with { TMaxC = day.TMaxC + byDayC, TMinC = tMinC, RhMaxPct = rhMaxPct, RhMinPct = rhMinPct > rhMaxPct ? rhMaxPct : rhMinPct };
    }

    private static double? Dry(double? rhPct, double fromC, double toC) => rhPct is { } rh
        ? Math.Clamp(rh * SaturationVapourPressure.AtKpa(fromC) / SaturationVapourPressure.AtKpa(toC), 1, 100)
        : null;
}
