using EstateWater.Agronomy.Weather;

namespace EstateWater.Planning.Weather;

/// <summary>How much warmer a station's forecasts are than what it then measures: a forecast is made for a square of land, the station stands in one place of it.</summary>
/// <remarks>
/// Mean of a normal quantity with known variance under a normal prior about nothing missed (Gelman et al., Bayesian Data
/// Analysis, Eq. 2.12): past errors count by their usual size at each lead, so that one forecast moves it little.
/// </remarks>
/// <param name="ByDayC">Of the highest temperature. [°C]</param>
/// <param name="ByNightC">Of the lowest. [°C]</param>
internal sealed record ForecastBias(double ByDayC, double ByNightC)
{
    // What a forecast may miss for one place before any is held against its days. [°C]; ours.
    private const double PriorSdC = 0.7;

    /// <summary>Learns from every single forecast that was issued and the days that followed.</summary>
    public static ForecastBias Of(IReadOnlyList<DailyWeather> past, IReadOnlyList<IssuedForecast> forecasts)
    {
        var (day, night, precision) = (0.0, 0.0, 1 / (PriorSdC * PriorSdC));
        foreach (var error in ForecastError.Past(past, forecasts))
        {
            var sigma = ForecastError.UsualSigmaC(error.LeadDays);
            var weight = 1 / (sigma * sigma * ForecastError.DaysOfOneError);
            day += weight * error.ByDayC;
            night += weight * error.ByNightC;
            precision += weight;
        }

        return new ForecastBias(day / precision, night / precision);
    }

    /// <summary>The forecasts without it.</summary>
    public IReadOnlyList<IssuedForecast> Correct(IReadOnlyList<IssuedForecast> forecasts) =>
        [.. forecasts.Select(f => f with { Days = [.. f.Days.Select(d => ForecastError.Warmer(d, -ByDayC, -ByNightC))] })];
}
