using EstateWater.Agronomy.Methods;

namespace EstateWater.Agronomy.Weather;

/// <summary>Excess heat factor: how far three days stand above the usual and above the month before.</summary>
[Method("Excess heat factor", Source = "Nairn & Fawcett (2015), Int. J. Environ. Res. Public Health 12: 227–253", Check = "Test vectors of thermofeel; a month worked by hand")]
public static class ExcessHeatFactor
{
    private const int AcclimatisationDays = 30;

    /// <summary>EHF from its two indices; heat wave above 0. [K²]</summary>
    /// <param name="significanceK">EHI_sig: three-day mean less the 95th percentile of all daily means. [K]</param>
    /// <param name="acclimatisationK">EHI_accl: three-day mean less the mean of the thirty days before. [K]</param>
    /// <remarks>EHF = EHI_sig · max(1, EHI_accl).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside −80 to 80 K.</exception>
    public static double Of(double significanceK, double acclimatisationK) =>
        Require.InRange(significanceK, -80, 80, "K") * Math.Max(1, Require.InRange(acclimatisationK, -80, 80, "K"));

    /// <summary>EHF of the three days that start on a date; null when one of them, or of the thirty before, is missing. [K²]</summary>
    /// <param name="dailyMeanC">(T_max + T_min)/2 by date. [°C]</param>
    /// <param name="date">First of the three days.</param>
    /// <param name="percentile95C">T95: 95th percentile of all daily means of the base period. [°C]</param>
    /// <remarks>The three days look forward: today's value needs the forecast of the next two.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double? StartingOn(IReadOnlyDictionary<DateOnly, double> dailyMeanC, DateOnly date, double percentile95C)
    {
        ArgumentNullException.ThrowIfNull(dailyMeanC);
        WeatherInput.AirTemperature(percentile95C);
        return Mean(dailyMeanC, date, 3) is { } three && Mean(dailyMeanC, date.AddDays(-AcclimatisationDays), AcclimatisationDays) is { } month
            ? Of(three - percentile95C, three - month)
            : null;
    }

    private static double? Mean(IReadOnlyDictionary<DateOnly, double> dailyMeanC, DateOnly from, int days)
    {
        var sum = 0.0;
        for (var i = 0; i < days; i++)
        {
            if (!dailyMeanC.TryGetValue(from.AddDays(i), out var mean))
            {
                return null;
            }

            sum += WeatherInput.AirTemperature(mean, nameof(dailyMeanC));
        }

        return sum / days;
    }
}
