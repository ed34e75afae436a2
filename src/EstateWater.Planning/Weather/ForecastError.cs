using EstateWater.Agronomy.Weather;

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
    /// <summary>Later days of a forecast are as wrong as this one. [d]</summary>
    public const int LongestLead = 16;

    /// <summary>Neighbouring days of one forecast are wrong together: so many count as one.</summary>
    public const int DaysOfOneError = 4;

    private readonly double[] sigmaC = new double[LongestLead + 1];

    private ForecastError(IReadOnlyList<PastForecastError> past, double? mostC)
    {
        Count = past.Count;
        var errorsC = past.ToLookup(e => e.LeadDays, e => e.ByDayC);
        var scale = Scale(errorsC);
        for (var lead = 0; lead <= LongestLead; lead++)
        {
            var near = Enumerable.Range(lead - 1, 3).SelectMany(l => errorsC[l]).ToList();
            var before = Math.Min(mostC ?? double.PositiveInfinity, scale * UsualSigmaC(lead));
            sigmaC[lead] = Math.Sqrt(((before * before) + near.Sum(e => e * e)) / (1 + near.Count));
        }

        Persistence = Lasting(past);
    }

    /// <summary>Learns from every forecast that was issued and the days that followed.</summary>
    /// <param name="past">Measured days.</param>
    /// <param name="forecasts">As they are believed.</param>
    /// <param name="mostC">How far days lie from the station's normals: before any error is known, a forecast that fades to these is not wrong by more. Null where nobody knows. [°C]</param>
    public static ForecastError Of(IReadOnlyList<DailyWeather> past, IReadOnlyList<IssuedForecast> forecasts, double? mostC = null) =>
        new([.. Past(past, forecasts)], mostC);

    /// <summary>By how much each single forecast was too warm for each day that followed. [°C]</summary>
    public static IEnumerable<PastForecastError> Past(IReadOnlyList<DailyWeather> past, IReadOnlyList<IssuedForecast> forecasts)
    {
        var measured = past.ToDictionary(d => d.Date);
        return
            from forecast in forecasts
            where forecast.Member is null
            from day in forecast.Days
            let came = measured.GetValueOrDefault(day.Date)
            where came is not null
            select new PastForecastError(forecast.IssuedAt, forecast.LeadDays(day.Date), came, day.TMaxC - came.TMaxC, day.TMinC - came.TMinC);
    }

    /// <summary>How many past days were forecast and measured, all leads together.</summary>
    public int Count { get; }

    /// <summary>Standard deviation of the error of the highest temperature. [°C]</summary>
    public double SigmaC(int leadDays) => sigmaC[Math.Clamp(leadDays, 0, LongestLead)];

    /// <summary>Correlation of the errors of two neighbouring days of one forecast, 0–1.</summary>
    public double Persistence { get; }

    // Before any is known: what makes four neighbouring days count as one, (1 + r) / (1 − r) = 4, as good as a fortnight's forecast.
    private double Lasting(IReadOnlyList<PastForecastError> past)
    {
        const double usual = (DaysOfOneError - 1.0) / (DaysOfOneError + 1.0);
        const double imaginary = 14;
        var (together, apart) = (usual * imaginary, imaginary);
        foreach (var issue in past.GroupBy(e => e.IssuedAt))
        {
            var days = issue.OrderBy(e => e.LeadDays).Select(e => (Lead: e.LeadDays, InSd: e.ByDayC / SigmaC(e.LeadDays))).ToList();
            foreach (var (day, next) in days.Zip(days.Skip(1)).Where(pair => pair.Second.Lead == pair.First.Lead + 1))
            {
                together += day.InSd * next.InSd;
                apart += ((day.InSd * day.InSd) + (next.InSd * next.InSd)) / 2;
            }
        }

        return Math.Max(0, together / apart);
    }

    // How the station's errors compare with the usual ones, all leads together: this is known after one or two forecasts.
    private static double Scale(ILookup<int, double> errorsC)
    {
        const double imaginary = 1;
        var squares = errorsC.SelectMany(lead => lead.Select(e => e * e / (UsualSigmaC(lead.Key) * UsualSigmaC(lead.Key)))).ToList();
        return Math.Sqrt((imaginary + (squares.Sum() / DaysOfOneError)) / (imaginary + (squares.Count / DaysOfOneError)));
    }

    /// <summary>Before any past error is known. [°C]</summary>
    public static double UsualSigmaC(int leadDays) => Math.Sqrt((1.8 * 1.8) + (0.55 * 0.55 * Math.Max(0, leadDays - 1) * Math.Max(0, leadDays - 1)));

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

/// <summary>By how much one day of a single forecast was too warm.</summary>
/// <param name="IssuedAt">When the forecast was issued.</param>
/// <param name="LeadDays">Days from the issue to the day. [d]</param>
/// <param name="Measured">What came.</param>
/// <param name="ByDayC">Of the highest temperature. [°C]</param>
/// <param name="ByNightC">Of the lowest. [°C]</param>
internal readonly record struct PastForecastError(DateTimeOffset IssuedAt, int LeadDays, DailyWeather Measured, double ByDayC, double ByNightC);
