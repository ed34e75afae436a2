using EstateWater.Agronomy.Weather;

namespace EstateWater.Planning.Weather;

/// <summary>How much of what a station's forecasts say beyond the usual comes true, by lead day.</summary>
/// <remarks>
/// Measured on forecast, as model output statistics do (Glahn and Lowry 1972, J. Appl. Meteor. 11:1203–1211, from memory, to
/// be checked), both as departures from the station's normals: 1 / (1 + (d / h)²) of the departure at a lead of d days. The
/// form is ours, and so is h before any forecast is held against its days: two thirds are left after a week. The station's
/// own forecasts tell it better: the likeliest h of a grid. Days as hot as a heat spell's keep what is said of them: what the
/// plan warns of it also plans for, and a miss costs most there.
/// </remarks>
/// <param name="HalfLeftDays">h: half of the departure is left. [d]</param>
internal sealed record ForecastSkill(double HalfLeftDays)
{
    private const double Usual = 11;

    // Spread of its logarithm between places. Ours.
    private const double PriorSpread = 0.6;

    // So far below a heat spell's threshold fading is whole. [°C]; ours.
    private const double NearHotC = 2;

    private static readonly double[] Candidates = [5, 7, 9, 11, 14, 18, 24, 32, 50, 100];

    /// <summary>Learns from every single forecast that was issued and the days that followed.</summary>
    /// <param name="past">Measured days.</param>
    /// <param name="forecasts">Less what they usually miss (<see cref="ForecastBias"/>).</param>
    /// <param name="usual">The station's normals.</param>
    public static ForecastSkill Of(IReadOnlyList<DailyWeather> past, IReadOnlyList<IssuedForecast> forecasts, OtherYears usual)
    {
        var departures = ForecastError.Past(past, forecasts)
            .Where(e => e.LeadDays >= 1)
            .Select(e => (e.LeadDays, Measured: e.Measured.TMaxC - usual.Normal(e.Measured.Date)?.TMaxC, e.ByDayC))
            .Where(e => e.Measured is not null)
            .Select(e => (e.LeadDays, Measured: e.Measured!.Value, Forecast: e.Measured!.Value + e.ByDayC))
            .ToList();
        return new ForecastSkill(Candidates.MaxBy(half => LogLikelihood(new ForecastSkill(half), departures)));
    }

    /// <summary>Share of a departure from the usual that is left, 0–1.</summary>
    /// <param name="leadDays">0 or more; all of it is left on the day of issue.</param>
    public double ShareLeft(int leadDays) => 1 / (1 + Math.Pow(leadDays / HalfLeftDays, 2));

    /// <summary>A forecast with as much of its departures as is expected to come true, of hot days with all.</summary>
    public IssuedForecast Faded(IssuedForecast forecast, OtherYears usual) =>
        forecast with { Days = [.. forecast.Days.Select(d => Faded(d, forecast.LeadDays(d.Date), usual.Normal(d.Date)))] };

    private DailyWeather Faded(DailyWeather day, int leadDays, (double TMaxC, double TMinC)? normal)
    {
        var lost = (1 - ShareLeft(Math.Max(0, leadDays))) * Math.Clamp((HeatSpellRule.Default.ThresholdC - day.TMaxC) / NearHotC, 0, 1);
        return normal is var (byDayC, byNightC) ? ForecastError.Warmer(day, lost * (byDayC - day.TMaxC), lost * (byNightC - day.TMinC)) : day;
    }

    // Neighbouring days of one forecast are wrong together: four count as one.
    private static double LogLikelihood(ForecastSkill skill, IReadOnlyList<(int LeadDays, double Measured, double Forecast)> departures) =>
        -0.5 * (Math.Pow(Math.Log(skill.HalfLeftDays / Usual) / PriorSpread, 2)
            + departures.Sum(d => Math.Pow((d.Measured - (skill.ShareLeft(d.LeadDays) * d.Forecast)) / ForecastError.UsualSigmaC(d.LeadDays), 2) / ForecastError.DaysOfOneError));
}
