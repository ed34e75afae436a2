using EstateWater.Simulation.Numbers;

namespace EstateWater.Simulation.Weather;

/// <summary>A forecast as it was issued.</summary>
public sealed record Forecast(DateTimeOffset IssuedAt, string? Member, IReadOnlyList<DayWeather> Days);

/// <summary>
/// Issues forecasts that are wrong in the way forecasts are: the error of the maximum grows with the lead and persists
/// from one lead to the next; members scatter about the issue's own centre, not about what will happen.
/// </summary>
/// <param name="site">Where.</param>
/// <param name="climate">What is usual there.</param>
/// <param name="seed">Everything follows from it.</param>
/// <param name="errorScale">How wrong, over the usual; at 0 what is forecast is what happens.</param>
public sealed class ForecastOffice(Site site, Climate climate, ulong seed, double errorScale = 1)
{
    /// <summary>The single forecast issued in the morning of a day, and its ensemble members.</summary>
    /// <param name="truth">The days that will happen, the first being the day of issue.</param>
    /// <param name="issuedAt">When.</param>
    /// <param name="members">How many members beside the single forecast.</param>
    /// <param name="station">Whose forecast it is.</param>
    public IReadOnlyList<Forecast> Issue(IReadOnlyList<DayWeather> truth, DateTimeOffset issuedAt, int members, string station)
    {
        var issueDate = truth[0].Date;
        var centre = Perturbed(truth, Dice.Of(seed, "forecast", station, issueDate), errorScale, pullToUsual: true);
        var issued = new List<Forecast> { new(issuedAt, null, centre) };
        for (var member = 1; member <= members; member++)
        {
            var days = Perturbed(centre, Dice.Of(seed, "member", station, issueDate, member), 0.95 * errorScale, pullToUsual: false);
            issued.Add(new Forecast(issuedAt, FormattableString.Invariant($"{member:00}"), days));
        }

        return issued;
    }

    /// <summary>Standard deviation of the error of the maximum at a lead. [°C]</summary>
    public static double ErrorSdC(int leadDays) => Math.Min(3.2, Math.Sqrt((1.2 * 1.2) + (0.33 * leadDays * 0.33 * leadDays)));

    private List<DayWeather> Perturbed(IReadOnlyList<DayWeather> days, Dice dice, double scale, bool pullToUsual)
    {
        var standardError = dice.Normal();
        var result = new List<DayWeather>(days.Count);
        for (var lead = 0; lead < days.Count; lead++)
        {
            standardError = Math.Clamp((0.8 * standardError) + dice.Normal(0, 0.6), -2, 2);
            var day = days[lead];
            var weight = pullToUsual ? 1 / (1 + (errorScale * Math.Pow(lead / 13.0, 4))) : 1;
            var usual = climate.UsualTMaxC(day.Date, site.IsSouthern);
            var tMax = usual + (weight * (day.TMaxC - usual)) + (scale * ErrorSdC(lead) * standardError);
            result.Add(Shifted(day, tMax, lead, scale, dice));
        }

        return result;
    }

    private DayWeather Shifted(DayWeather day, double tMax, int lead, double scale, Dice dice)
    {
        var tMin = Math.Min(tMax - 3, day.TMinC + (0.4 * (tMax - day.TMaxC)) + dice.Normal(0, scale * (0.9 + (0.1 * lead))));
        var vapour = day.VapourPressureKPa * Math.Exp(dice.Normal(0, scale * (0.05 + (0.012 * lead))));
        var solar = day.SolarMjPerM2 * Math.Exp(dice.Normal(0, scale * (0.04 + (0.008 * lead))));
        return new DayWeather(
            day.Date,
            tMax,
            tMin,
            Math.Clamp(100 * vapour / DayWeather.Saturation(tMin), 6, 100),
            Math.Clamp(100 * vapour / DayWeather.Saturation(tMax), 6, 100),
            Math.Max(0.3, day.WindMPerS + dice.Normal(0, scale * (0.4 + (0.04 * lead)))),
            Math.Min(solar, 0.78 * Sun.ExtraterrestrialMj(day.Date, site.LatitudeDegrees)),
            Rain(day, lead, dice));
    }

    private double Rain(DayWeather day, int lead, Dice dice)
    {
        var missed = dice.Chance(errorScale * (0.1 + (0.04 * lead)));
        var invented = dice.Chance(errorScale * (0.02 + (0.008 * lead)) * 2 * Climate.WetShare(day.Date, site.IsSouthern));
        var amount = day.RainMm * Math.Exp(dice.Normal(0, errorScale * (0.3 + (0.06 * lead))));
        return missed ? 0 : amount + (invented ? dice.Exponential(2.5) : 0);
    }
}
